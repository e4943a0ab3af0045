#pragma once
// Instances that are known to have a solution: words are laid, and their places forgotten.

#include "contest.hpp"
#include "random/random.hpp"

namespace lode::bench {

// Words that cross, until they have so many letters in all.
[[nodiscard]] Instance planted_letters(Size size, std::size_t letters, Random& random);

// Words that cross and leave over exactly so many cells, which is demanded.
[[nodiscard]] Instance planted_cover(Size size, std::size_t leftover, Random& random);

// Words that tile the rows of a square of ten; crossings are forbidden, and nothing is left over.
[[nodiscard]] Instance planted_tiling(Random& random);

}  // namespace lode::bench
