#pragma once
// How a puzzle is rated by what the options say of its letters.

#include <letterlode/puzzle.hpp>

#include "options.hpp"

namespace lode::cli {

// With --blank the letters have a size, and with --font they have their own looks. Refused as unusable:
// --viewing without a blank, and as the artwork is.
[[nodiscard]] Outcome<RatingRules> rating_rules(const Puzzle& puzzle, const Values& values);

}  // namespace lode::cli
