#pragma once
// What is measured with: lists of invented words, the same on every machine.

#include <cstdint>
#include <string>
#include <vector>

#include <letterlode/puzzle.hpp>

namespace lode::bench {

// Words of consonants and vowels in turn, of `least` to `most` letters, none of which stands in another.
std::vector<std::string> invented_words(int count, int least, int most, std::uint64_t seed);

Recipe recipe_of(const std::vector<std::string>& words, Size size);

// A grid of 300 x 300 with 300 words in it, made once.
const Puzzle& large_puzzle();

}  // namespace lode::bench
