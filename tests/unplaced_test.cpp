// What a maker is told when words cannot be placed, held against brute force and against the engine's own
// word: advice that does not help would be worse than none.

#include <catch2/catch.hpp>

#include "puzzle/sizes.hpp"
#include "puzzle/unplaced.hpp"
#include "support/brute_force.hpp"
#include "support/grids.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;

namespace {

Recipe recipe_with(const std::vector<std::string>& words, Size size,
                   Directions directions = Directions::all()) {
    Recipe recipe;
    for (const auto& word : words) recipe.words.words.push_back({word, 0});
    recipe.size = size;
    recipe.directions = directions;
    recipe.default_avoid_list = false;
    recipe.effort = 2'000'000;
    return recipe;
}

bool can_place(const Job& job, const std::vector<std::uint32_t>& which, const Mask& mask) {
    std::vector<Letters> words;
    for (const auto word : which) words.push_back(job.words[word]);
    return naive_can_place(mask, job.directions, words, {});
}

Refusal refusal_of(const Recipe& recipe) {
    const auto made = make(recipe);
    REQUIRE(!made);
    return made.refusal();
}

}  // namespace

TEST_CASE("conflicting words cannot be placed together, and can when any one of them is left out") {
    Random random(31);
    int conflicts = 0;
    int reduced = 0;
    for (int round = 0; round < 3000; ++round) {
        std::vector<std::string> words;
        for (std::uint32_t word = 0, count = 2 + random.below(3); word < count; ++word) {
            std::string text;
            for (std::uint32_t letter = 0, letters = 2 + random.below(3); letter < letters; ++letter)
                text += static_cast<char>('A' + random.below(6));
            words.push_back(text);
        }
        const Size size{2 + static_cast<int>(random.below(2)), 3};
        const Recipe recipe = recipe_with(words, size);
        const auto job = check(recipe);
        const Mask mask(size);
        if (!job || !job->nested.brought.empty() || too_long_for(mask, *job)) continue;
        std::vector<std::uint32_t> all(words.size());
        for (std::uint32_t word = 0; word < all.size(); ++word) all[word] = word;
        if (can_place(*job, all, mask)) continue;

        std::uint64_t effort = 10'000'000;
        const Conflict conflict = find_conflict(recipe, *job, mask, effort, nullptr);
        CAPTURE(words, conflict.words);
        CHECK(effort < 10'000'000);
        REQUIRE(conflict.irreducible);
        REQUIRE(!can_place(*job, conflict.words, mask));
        for (const auto word : conflict.words) {
            auto rest = conflict.words;
            std::erase(rest, word);
            REQUIRE(can_place(*job, rest, mask));
        }
        ++conflicts;
        reduced += conflict.words.size() < words.size();
    }
    CHECK(conflicts > 100);
    CHECK(reduced > 10);
}

TEST_CASE("a conflict that could not be tried to its end is not called irreducible") {
    const Recipe recipe = recipe_with({"ABC", "DEF", "GHI", "JKL"}, Size{3, 3});
    const auto job = check(recipe);
    REQUIRE(job);
    std::uint64_t effort = 10;
    const Conflict conflict = find_conflict(recipe, *job, Mask({3, 3}), effort, nullptr);
    CHECK(!conflict.irreducible);
    CHECK(conflict.words.size() == 4);
}

TEST_CASE("a refusal names the words in conflict alone, and a larger grid that does hold all words") {
    const Recipe recipe = recipe_with({"ABC", "DEF", "GHI", "JKL", "AX"}, Size{3, 3});
    const Refusal refusal = refusal_of(recipe);
    CHECK(refusal.reason == Refusal::Reason::impossible);
    CHECK(refusal.words == std::vector<std::string>{"ABC", "DEF", "GHI", "JKL"});
    CHECK_THAT(refusal.message, Contains("any one of them left out"));
    REQUIRE(!refusal.advice.empty());
    CHECK_THAT(refusal.advice.front(), Contains("--grid 4x4"));
    CHECK(make(recipe_with({"ABC", "DEF", "GHI", "JKL", "AX"}, Size{4, 4})));
}

TEST_CASE("a refusal names the direction that would help") {
    using enum Direction;
    // Four words fill the four rows; the fifth is what their first letters can spell downward.
    const Recipe less =
        recipe_with({"ABCD", "EFGH", "IJKL", "MNOP", "AEIM"}, Size{4, 4}, directions_of({right}));
    const Refusal refusal = refusal_of(less);
    CHECK(refusal.reason == Refusal::Reason::impossible);
    bool told = false;
    for (const auto& advice : refusal.advice)
        told = told || advice.find("direction down besides") != std::string::npos;
    CHECK(told);
    CHECK(make(
        recipe_with({"ABCD", "EFGH", "IJKL", "MNOP", "AEIM"}, Size{4, 4}, directions_of({right, down}))));
}

TEST_CASE("a mask of the maker's own gets no advice on sizes") {
    using enum Direction;
    Recipe recipe = recipe_with({"ABCA", "XY"}, Size{1, 4}, directions_of({right}));
    recipe.mask = mask_of({"OOOO"});
    const Refusal refusal = refusal_of(recipe);
    CHECK(refusal.reason == Refusal::Reason::impossible);
    CHECK(refusal.words == std::vector<std::string>{"ABCA", "XY"});
    REQUIRE(!refusal.advice.empty());
    for (const auto& advice : refusal.advice) CHECK_THAT(advice, !Contains("--grid"));
}
