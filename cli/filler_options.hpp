#pragma once
// Options that say how the cells outside all words are filled.

#include <letterlode/puzzle.hpp>

#include "options.hpp"

namespace lode::cli {

// --filler, --filler-text, --longest-run, --look-alikes.
void add_filler_options(po::options_description& options);

// Changes what the options name; the recipe has its locale and case already. Refused as unusable.
[[nodiscard]] Outcome<Recipe> with_filler_options(Recipe recipe, const Values& values);

// Says on standard error where filler is to be as the language has it, and nobody counted that language.
void note_missing_letter_table(const Recipe& recipe);

}  // namespace lode::cli
