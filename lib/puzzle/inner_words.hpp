#pragma once
// Which of some sequences of letters stand inside which words, read from either end.

#include <cstddef>
#include <functional>
#include <span>

#include <letterlode/text.hpp>

namespace lode {

enum class InnerCopies { one, several };

// Calls found(inner, outer, copies) once for every pair where sought[inner] can be read in words[outer],
// forward or backward, and says whether in one set of cells or in several; outer words in order. Stops where
// found returns false. Cost: the letters of all sequences and of all words, and what is found.
void find_inner_words(
    std::span<const Letters> sought, std::span<const Letters> words,
    const std::function<bool(std::size_t inner, std::size_t outer, InnerCopies copies)>& found);

}  // namespace lode
