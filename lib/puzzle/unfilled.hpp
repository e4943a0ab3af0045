#pragma once
// Why the cells between placed words could not be filled, and what would help: told to a maker who has been
// refused.

#include <cstdint>
#include <optional>
#include <vector>

#include <letterlode/puzzle.hpp>

#include "fill/fill.hpp"
#include "puzzle/placing.hpp"

namespace lode {

// Placements of all words that no filler completes: the last that was tried.
struct Unfilled {
    Grid placed;
    std::optional<Grid> kept;  // filler of an earlier puzzle
    std::vector<FillCause> causes;
    int tried = 1;              // placements of all words, each proved to have no filling
    bool are_all_ways = false;  // there is no other way to place the words
};

// Refused as impossible where there is no other way to place the words, otherwise as unfinished. Spends at
// most `effort` steps on finding what stands in the way and what would help.
[[nodiscard]] Refusal explain_unfilled(const Recipe& recipe, const Job& job, const Placing& placing,
                                       const Unfilled& unfilled, std::uint64_t effort,
                                       const std::atomic<bool>* cancel);

}  // namespace lode
