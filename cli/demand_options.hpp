#pragma once
// Options that demand something of the placements.

#include <letterlode/puzzle.hpp>

#include "options.hpp"

namespace lode::cli {

void add_demand_options(po::options_description& options);

// Sets in a recipe what the options say.
[[nodiscard]] Outcome<Recipe> with_demand_options(Recipe recipe, const Values& values);

// The recipe of an earlier puzzle, with its places, and with `keep filler` its filler, to be kept.
[[nodiscard]] Outcome<Recipe> recipe_from_earlier(const Values& values);

// Which words stand elsewhere than in the earlier puzzle: a line for a person; empty where there was none.
[[nodiscard]] std::string moved_words(const Puzzle& puzzle);

}  // namespace lode::cli
