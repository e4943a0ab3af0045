#pragma once
// Which words of a list stand inside others, which of them get a place of their own, and how many copies of
// each a grid is to hold.

#include <cstdint>
#include <optional>
#include <vector>

#include <letterlode/puzzle.hpp>

#include "place/demands.hpp"

namespace lode {

struct NestedWords {
    // Words by their place in the list.
    std::vector<std::uint32_t> placed;   // those that get a place of their own
    std::vector<std::uint32_t> brought;  // the others, which stand inside one of those
    std::vector<int> expected;           // copies of each word
    std::vector<InnerCopy> copies;       // which the placed words bring with them
    // Of each word, the longest that holds it, if any.
    std::vector<std::optional<std::uint32_t>> outer;
};

// Refused as unusable, naming file, line and both words: under Nested::inside a word that would stand more
// than once inside others; and more nesting than any list of words has.
[[nodiscard]] Outcome<NestedWords> nest(const WordList& list, const std::vector<Letters>& words, Nested rule);

}  // namespace lode
