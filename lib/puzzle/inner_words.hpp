#pragma once
// Which of some sequences of letters stand inside which words, read from either end.

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

#include <letterlode/text.hpp>

namespace lode {

// Calls found(inner, outer, copies) for every pair where sought[inner] can be read in words[outer], forward
// or backward, and says how many sets of cells it can be read in. Stops where found returns false. Cost: the
// square of each word's length, whatever the number of sequences sought.
void find_inner_words(
    std::span<const Letters> sought, std::span<const Letters> words,
    const std::function<bool(std::size_t inner, std::size_t outer, std::size_t copies)>& found);

}  // namespace lode
