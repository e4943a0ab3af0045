// Versions for a class: alike in difficulty, no word at the same place, each certified.

#include <algorithm>
#include <set>

#include <catch2/catch.hpp>
#include <letterlode/puzzle.hpp>

#include "support/recipes.hpp"

using namespace lode;

namespace {

Recipe garden(Size size) {
    Recipe recipe = test::recipe_of(
        {"Basil", "Sage", "Thyme", "Mint", "Chives", "Tarragon", "Dill", "Oregano", "Fennel", "Sorrel"});
    recipe.size = size;
    return recipe;
}

std::size_t words_at_the_same_place(const Puzzle& a, const Puzzle& b) {
    std::size_t count = 0;
    for (const PlacedWord& one : a.words)
        for (const PlacedWord& other : b.words)
            if (one.shown == other.shown && one.placed.first == other.placed.first &&
                one.placed.direction == other.placed.direction)
                ++count;
    return count;
}

}  // namespace

TEST_CASE("six versions are certified, lie within 10 percent and share no place") {
    const auto checked = CheckedRecipe::open(garden({15, 15}));
    REQUIRE(checked);
    const auto versions = make_versions(*checked, 7, 6);
    REQUIRE(versions);
    REQUIRE(versions->puzzles.size() == 6);
    REQUIRE(versions->fixations.size() == 6);
    CHECK(versions->shared_places == 0);
    std::set<std::uint64_t> seeds;
    for (std::size_t i = 0; i < 6; ++i) {
        const Puzzle& puzzle = versions->puzzles[i];
        CHECK(audit(puzzle)->certified);
        CHECK(puzzle.words.size() == 10);
        CHECK(rate(puzzle)->difficulty.fixations == versions->fixations[i]);
        seeds.insert(puzzle.recipe.seed);
        for (std::size_t j = 0; j < i; ++j) CHECK(words_at_the_same_place(puzzle, versions->puzzles[j]) == 0);
        // Each can be made again by its seed alone.
        CHECK(to_json(*make(puzzle.recipe)) == to_json(puzzle));
    }
    CHECK(seeds.size() == 6);
    CHECK(*seeds.begin() >= 7);
    const auto [least, most] = std::minmax_element(versions->fixations.begin(), versions->fixations.end());
    CHECK(*most <= 1.1 * *least);
}

TEST_CASE("versions do not depend on the number of threads") {
    const auto checked = CheckedRecipe::open(garden({12, 12}));
    REQUIRE(checked);
    const auto one = make_versions(*checked, 1, 5);
    MakeControl control;
    control.threads = 4;
    const auto many = make_versions(*checked, 1, 5, control);
    REQUIRE(one);
    REQUIRE(many);
    CHECK(one->tried == many->tried);
    CHECK(to_json(std::span(one->puzzles)) == to_json(std::span(many->puzzles)));
}

TEST_CASE("where places must be shared, versions share few of them and say how many") {
    // Each word lies in one of two rows: of six versions some must agree.
    Recipe recipe = test::recipe_of({"Basil", "Sage"});
    recipe.size = Size{2, 5};
    recipe.directions = *read_directions("right");
    const auto checked = CheckedRecipe::open(recipe);
    REQUIRE(checked);
    const auto versions = make_versions(*checked, 1, 6);
    REQUIRE(versions);
    std::size_t shared = 0;
    for (std::size_t i = 0; i < 6; ++i)
        for (std::size_t j = 0; j < i; ++j)
            shared += words_at_the_same_place(versions->puzzles[i], versions->puzzles[j]);
    CHECK(versions->shared_places == shared);
    CHECK(shared > 0);
}

TEST_CASE("too few puzzles near each other are a refusal that names how many there are") {
    Recipe recipe = test::recipe_of({"Basil"});
    recipe.size = Size{1, 5};
    recipe.directions = *read_directions("right");
    const auto checked = CheckedRecipe::open(recipe);
    REQUIRE(checked);
    const auto versions = make_versions(*checked, 1, 3);
    REQUIRE_FALSE(versions);
    CHECK(versions.refusal().reason == Refusal::Reason::unfinished);
    CHECK(versions.refusal().message.find("at most 1") != std::string::npos);
    CHECK_THROWS_AS(make_versions(*checked, 1, 0), std::invalid_argument);
    CHECK_THROWS_AS(make_versions(*checked, 1, 27), std::invalid_argument);
}

TEST_CASE("a cancelled search for versions is unfinished") {
    const auto checked = CheckedRecipe::open(garden({15, 15}));
    REQUIRE(checked);
    const std::atomic<bool> cancel = true;
    MakeControl control;
    control.cancel = &cancel;
    const auto versions = make_versions(*checked, 1, 4, control);
    REQUIRE_FALSE(versions);
    CHECK(versions.refusal().reason == Refusal::Reason::unfinished);
}

TEST_CASE("a grid made elsewhere becomes a puzzle whose words stand where they are found") {
    Recipe recipe = test::recipe_of({"Mint", "Sage", "Dill", "Age"});
    const auto segmenter = Segmenter::open(recipe.text);
    auto grid = read_grid("MINTX\nXSAGE\nLLIDX\n", "grid", *segmenter);
    REQUIRE(grid);
    const auto puzzle = puzzle_of(*grid, recipe);
    REQUIRE(puzzle);
    CHECK(puzzle->audit.certified);
    REQUIRE(puzzle->words.size() == 4);
    CHECK(puzzle->words[0].placed == Placement{{0, 0}, Direction::right});
    CHECK(puzzle->words[1].placed == Placement{{1, 1}, Direction::right});
    CHECK(puzzle->words[2].placed == Placement{{2, 3}, Direction::left});
    CHECK(puzzle->words[3].placed == Placement{{1, 2}, Direction::right});
    CHECK(puzzle->words[3].inside == "Sage");
    CHECK(puzzle->recipe.size == Size{3, 5});

    const auto missing = puzzle_of(*read_grid("MINTX\nXSAGE\nXXXXX\n", "grid", *segmenter), recipe);
    REQUIRE(missing);
    CHECK_FALSE(missing->audit.certified);
    CHECK(missing->words.size() == 3);
}
