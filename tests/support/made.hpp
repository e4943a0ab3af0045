#pragma once
// Puzzles and refusals that a test counts on.

#include <catch2/catch.hpp>
#include <letterlode/puzzle.hpp>

namespace lode::test {

// The puzzle, which must be made and certified.
inline Puzzle made(const Recipe& recipe) {
    auto puzzle = make(recipe);
    if (!puzzle) FAIL(puzzle.refusal().message);
    CHECK(puzzle->audit.certified);
    return std::move(puzzle).value();
}

// The refusal, for this reason, which must say why and a way out.
inline Refusal refused(const Recipe& recipe, Refusal::Reason reason) {
    const auto puzzle = make(recipe);
    REQUIRE_FALSE(puzzle);
    CHECK(puzzle.refusal().reason == reason);
    CHECK_FALSE(puzzle.refusal().message.empty());
    CHECK_FALSE(puzzle.refusal().advice.empty());
    return puzzle.refusal();
}

}  // namespace lode::test
