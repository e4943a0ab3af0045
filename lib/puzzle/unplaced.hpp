#pragma once
// Why words could not be placed, and what would help: told to a maker who has been refused.

#include <cstdint>

#include <letterlode/puzzle.hpp>

#include "puzzle/placing.hpp"

namespace lode {

// The refusal for a search that ended as `impossible` or `unfinished`. Spends at most `effort` steps on top,
// on finding which words stand in each other's way, which demand is too much, and which larger grid, or which
// directions, would hold them all.
[[nodiscard]] Refusal explain_unplaced(const Recipe& recipe, const Job& job, const Mask& mask,
                                       const PlaceResult& result, std::uint64_t effort,
                                       const std::atomic<bool>* cancel);

// Words, by their places in the list, that cannot be placed together though any one of them left out lets the
// others be placed.
struct Conflict {
    std::vector<std::uint32_t> words;
    bool irreducible = true;  // false where the effort ran out before each word was tried
};
// For words that cannot all be placed, even without what fewer words may fail to meet: a leftover, a least
// number of crossings, shares of the directions. `effort` is lowered by what it costs.
[[nodiscard]] Conflict find_conflict(const Recipe& recipe, const Job& job, const Mask& mask,
                                     std::uint64_t& effort, const std::atomic<bool>* cancel);

}  // namespace lode
