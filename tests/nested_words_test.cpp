// The rule for words inside words, row by row as the design decides it, for puzzles made and for grids
// checked.

#include <catch2/catch.hpp>

#include <letterlode/puzzle.hpp>

#include "support/grids.hpp"
#include "support/judge.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;
using Texts = std::vector<std::string>;
using Counts = std::vector<int>;

namespace {

Recipe list_of_names(const Texts& words, Nested rule, std::uint64_t seed = 1) {
    Recipe recipe = recipe_of(words, Size{8, 8}, seed);
    recipe.nested = rule;
    return recipe;
}

// Makes puzzles from several seeds, has each judged from outside, and gives the expected copies by word.
Counts expected_in(const Texts& words, Nested rule) {
    Counts expected;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const auto puzzle = make(list_of_names(words, rule, seed));
        if (!puzzle) FAIL(puzzle.refusal().message);
        CAPTURE(words, seed, grid_text(puzzle->grid.grid, puzzle->grid.alphabet));
        CHECK(faults_in(*puzzle, Mask({8, 8}), {}) == Texts{});
        CHECK(puzzle->audit.certified);
        expected.clear();
        for (const auto& finding : puzzle->audit.words) {
            expected.push_back(finding.expected);
            CHECK(finding.copies.size() == static_cast<std::size_t>(finding.expected));
        }
        // The grid alone, without its placements, is judged the same.
        const auto again = audit(puzzle->grid, puzzle->recipe);
        REQUIRE(again);
        CHECK(again->certified);
    }
    return expected;
}

Refusal refused(const Texts& words, Nested rule) {
    const Recipe recipe = list_of_names(words, rule);
    const auto made = make(recipe);
    REQUIRE_FALSE(made);
    const auto checked = audit(lettered({"ANNAB", "OTTOX"}), recipe);
    REQUIRE_FALSE(checked);
    CHECK(checked.refusal().message == made.refusal().message);
    CHECK(made.refusal().reason == Refusal::Reason::unusable);
    return made.refusal();
}

Texts inside_of(const Texts& words, Nested rule) {
    const auto puzzle = make(list_of_names(words, rule));
    REQUIRE(puzzle);
    Texts inside;
    for (const auto& word : puzzle->words) inside.push_back(word.inside);
    return inside;
}

}  // namespace

TEST_CASE("a word inside one other counts there once, or is placed too and expected twice") {
    CHECK(expected_in({"ANNE", "ANN", "HOE"}, Nested::inside) == Counts{1, 1, 1});
    CHECK(expected_in({"ANNE", "ANN", "HOE"}, Nested::separate) == Counts{1, 2, 1});
    CHECK(inside_of({"ANNE", "ANN", "HOE"}, Nested::inside) == Texts{"", "ANNE", ""});
    CHECK(inside_of({"ANNE", "ANN", "HOE"}, Nested::separate) == Texts{"", "ANNE", ""});
}

TEST_CASE(
    "a word inside another twice, or inside two others, is refused, or is placed too and all are expected") {
    for (const Texts& words : {Texts{"ANNA", "ANN"}, Texts{"ANANAS", "ANA"}, Texts{"ANNE", "JOANN", "ANN"}})
        CHECK(refused(words, Nested::inside).words.size() == words.size());
    // ANNA holds ANN from both of its ends; itself it is one copy from either end.
    CHECK(expected_in({"ANNA", "ANN"}, Nested::separate) == Counts{1, 3});
    CHECK(expected_in({"ANANAS", "ANA"}, Nested::separate) == Counts{1, 3});
    CHECK(expected_in({"ANNE", "JOANN", "ANN"}, Nested::separate) == Counts{1, 1, 3});
}

TEST_CASE("two words that are each other backward share one place, or have two and are expected twice each") {
    CHECK(expected_in({"STAR", "RATS", "HOE"}, Nested::inside) == Counts{1, 1, 1});
    CHECK(expected_in({"STAR", "RATS", "HOE"}, Nested::separate) == Counts{2, 2, 1});
    CHECK(inside_of({"STAR", "RATS", "HOE"}, Nested::inside) == Texts{"", "STAR", ""});
    const auto puzzle = make(list_of_names({"STAR", "RATS"}, Nested::inside));
    REQUIRE(puzzle);
    CHECK(same_cells(puzzle->words[0].placed, puzzle->words[1].placed, 4));
    CHECK(puzzle->words[0].placed != puzzle->words[1].placed);
}

TEST_CASE("chains of nested words are counted each by its own count") {
    CHECK(expected_in({"AN", "ANN", "ANNE"}, Nested::inside) == Counts{1, 1, 1});
    CHECK(expected_in({"AN", "ANN", "ANNE"}, Nested::separate) == Counts{3, 2, 1});
    CHECK(inside_of({"AN", "ANN", "ANNE"}, Nested::inside) == Texts{"ANNE", "ANNE", ""});
    // STARS holds STAR forward and RATS backward, each once.
    CHECK(expected_in({"STAR", "RATS", "STARS"}, Nested::inside) == Counts{1, 1, 1});
    CHECK(expected_in({"STAR", "RATS", "STARS"}, Nested::separate) == Counts{3, 3, 1});
    // A chain with a fork is no chain.
    CHECK(refused({"AN", "ANNE", "JOAN"}, Nested::inside).words == Texts{"AN", "ANNE", "JOAN"});
}

TEST_CASE("the same letters twice in a list are refused by either rule") {
    for (const Nested rule : {Nested::inside, Nested::separate})
        CHECK_THAT(refused({"ANNE", "Anne"}, rule).message, Contains("'Anne'"));
}

TEST_CASE("a nested word is no crossing and does not come too near") {
    for (const Texts& words : {Texts{"ANNE", "ANN", "AN"}, Texts{"STAR", "RATS", "HOE"}}) {
        Recipe recipe = list_of_names(words, Nested::inside);
        recipe.crossings.most = 0;
        CHECK(make(recipe));
        recipe.spacing = 1;
        CHECK(make(recipe));
    }
    Recipe recipe = list_of_names({"ANNE", "ANN"}, Nested::inside);
    recipe.crossings.least = 1;
    const auto none = make(recipe);
    REQUIRE_FALSE(none);
    CHECK(none.refusal().reason == Refusal::Reason::impossible);
}

TEST_CASE("check names the stray copy beside the one inside another word, wherever it stands") {
    // ANN stands inside ANNE in the second row; the one above it is the stray.
    Recipe recipe = recipe_of({"ANNE", "ANN"});
    const auto found = audit(lettered({"ANNX", "XXXX", "ANNE"}), recipe);
    REQUIRE(found);
    CHECK_FALSE(found->certified);
    REQUIRE(found->words[1].copies.size() == 2);
    CHECK(found->words[1].inside == Texts{"", "ANNE"});
    REQUIRE(found->words[1].stray.size() == 1);
    CHECK(found->words[1].stray[0].first == Cell{0, 0});

    recipe.nested = Nested::separate;
    CHECK(audit(lettered({"ANNX", "XXXX", "ANNE"}), recipe)->certified);
    // Only the one inside: its own is missing.
    const auto lacking = audit(lettered({"XXXX", "ANNE"}), recipe);
    CHECK(lacking->missing == Texts{"ANN"});
    CHECK_FALSE(lacking->certified);
}

TEST_CASE("a pin for a nested word places the word that holds it") {
    using enum Direction;
    Recipe recipe = list_of_names({"JOANNE", "ANN"}, Nested::inside);
    recipe.pins = {{"ANN", {{0, 4}, right}}};
    auto puzzle = make(recipe);
    REQUIRE(puzzle);
    CHECK(puzzle->words[0].placed == Placement{{0, 2}, right});
    CHECK(puzzle->words[1].placed == Placement{{0, 4}, right});

    Recipe turned = list_of_names({"STAR", "RATS"}, Nested::inside);
    turned.pins = {{"RATS", {{2, 2}, down}}};
    puzzle = make(turned);
    REQUIRE(puzzle);
    CHECK(puzzle->words[0].placed == Placement{{5, 2}, up});
}

TEST_CASE("a list of words that nearly all hold each other is refused soon") {
    Texts words;
    for (std::size_t length = 2; length < 1'000; ++length) words.emplace_back(length, 'A');
    CHECK_THAT(refused(words, Nested::separate).message, Contains("Too many"));
}
