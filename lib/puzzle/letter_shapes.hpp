#pragma once
// What letters look like, as far as a maker and a reader care: the counters that are to be weeded, and what
// is taken for what. By letter and not by font: Latin, Greek and Cyrillic letters and the digits 0 to 9, in
// both cases, as an ordinary sans serif draws them. A letter with marks is judged without them.

#include <string_view>

#include "fill/filler_rules.hpp"

namespace lode {

// How many counters the letter encloses: two in B, none in C. 0 for a letter of other scripts, too, of which
// nothing is known here.
[[nodiscard]] int counters_of(std::string_view letter);

// Which letters it is easily taken for. No groups for a letter of which nothing is known.
[[nodiscard]] LetterLook look_of(std::string_view letter);

}  // namespace lode
