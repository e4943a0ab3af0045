#pragma once
// The options that a recipe is made from: make and check share them, with the same defaults.

#include <string>

#include <boost/program_options/options_description.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/puzzle.hpp>

#include "options.hpp"

namespace lode::cli {

// --locale, --letters, --avoid, --allow.
void add_text_options(po::options_description& options);
// --grid, --shape, --directions, --seed, --effort, --recipe.
void add_grid_options(po::options_description& options);

// Changes what the options name, and leaves the rest of the recipe. Refused as unusable.
[[nodiscard]] Outcome<Recipe> with_text_options(Recipe recipe, const Values& values);
[[nodiscard]] Outcome<Recipe> with_grid_options(Recipe recipe, const Values& values);

// Says on standard error where a language has no avoid list, so that nobody takes silence for a check.
void note_missing_avoid_list(const Recipe& recipe);

// Reads a list of words from a file or standard input.
[[nodiscard]] Outcome<WordLines> read_list(const std::string& path);

// Whether a text begins as a JSON object does.
[[nodiscard]] bool is_json(const std::string& text);

}  // namespace lode::cli
