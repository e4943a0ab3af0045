// What a recipe may demand of the placements: met in puzzles that are made, counted here from the placements
// alone; and named before any search where it contradicts itself, the list or the grid.

#include <catch2/catch.hpp>
#include <map>

#include <letterlode/puzzle.hpp>

#include "support/grids.hpp"
#include "support/judge.hpp"
#include "support/made.hpp"
#include "support/naive.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;
using Reason = Refusal::Reason;
using Texts = std::vector<std::string>;

namespace {

Texts herbs() {
    return {"Thyme",  "Mint",    "Rosemary", "Lavender", "Sage",
            "Chives", "Parsley", "Basil",    "Fennel",   "Sorrel"};
}

// By cell, how many words cover it.
std::map<std::pair<int, int>, int> cover_of(const Puzzle& puzzle) {
    std::map<std::pair<int, int>, int> cover;
    for (const auto& word : puzzle.words)
        for (const auto& cell : cells_from(puzzle.grid.grid.size(), word.placed.first, word.placed.direction,
                                           static_cast<int>(word.letters.size())))
            ++cover[cell];
    return cover;
}

std::size_t crossings_of(const Puzzle& puzzle) {
    std::size_t crossings = 0;
    for (const auto& [cell, words] : cover_of(puzzle)) crossings += words > 1;
    return crossings;
}

// What stands in the cells that no word covers, row by row.
std::string leftover_of(const Puzzle& puzzle, bool from_right = false) {
    const auto cover = cover_of(puzzle);
    const Size size = puzzle.grid.grid.size();
    std::string text;
    for (int row = 0; row < size.rows; ++row)
        for (int step = 0; step < size.columns; ++step) {
            const int column = from_right ? size.columns - 1 - step : step;
            const Letter letter = puzzle.grid.grid[{row, column}];
            if (letter != closed_cell && cover.count({row, column}) == 0)
                text += puzzle.grid.alphabet.text(letter);
        }
    return text;
}

int words_in(const Puzzle& puzzle, Direction direction) {
    int count = 0;
    for (const auto& word : puzzle.words) count += word.placed.direction == direction;
    return count;
}

}  // namespace

TEST_CASE("words cross as often as is asked for, or never") {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        Recipe recipe = recipe_of(herbs(), Size{11, 11}, seed);
        recipe.crossings.most = 0;
        CHECK(crossings_of(made(recipe)) == 0);
        recipe.crossings = {12, std::nullopt};
        CHECK(crossings_of(made(recipe)) >= 12);
        recipe.crossings = {3, 5};
        const auto crossings = crossings_of(made(recipe));
        CHECK(crossings >= 3);
        CHECK(crossings <= 5);
    }
}

TEST_CASE("words that are kept apart have no cells that touch") {
    for (std::uint32_t spacing = 1; spacing <= 2; ++spacing) {
        Recipe recipe = recipe_of(herbs());
        recipe.spacing = spacing;
        const Puzzle puzzle = made(recipe);
        const auto gap = static_cast<int>(spacing);
        for (const auto& one : puzzle.words)
            for (const auto& other : puzzle.words) {
                if (&one == &other) continue;
                for (const auto& [row, column] :
                     cells_from(puzzle.grid.grid.size(), one.placed.first, one.placed.direction,
                                static_cast<int>(one.letters.size())))
                    for (const auto& [there_row, there_column] :
                         cells_from(puzzle.grid.grid.size(), other.placed.first, other.placed.direction,
                                    static_cast<int>(other.letters.size())))
                        REQUIRE(std::max(std::abs(row - there_row), std::abs(column - there_column)) > gap);
            }
    }
}

TEST_CASE("directions get equal shares, or shares by weight, to within one word") {
    using enum Direction;
    Recipe recipe = recipe_of(herbs(), Size{13, 13});
    recipe.equal_shares = true;
    Puzzle puzzle = made(recipe);
    for (const Direction direction : all_directions) {
        CHECK(words_in(puzzle, direction) >= 1);  // ten words, eight directions
        CHECK(words_in(puzzle, direction) <= 2);
    }
    recipe.equal_shares = false;
    recipe.directions = directions_of({right, down, left});
    recipe.weights = DirectionWeights{};
    (*recipe.weights)[static_cast<unsigned>(right)] = 3;
    (*recipe.weights)[static_cast<unsigned>(down)] = 1;
    puzzle = made(recipe);
    CHECK((words_in(puzzle, right) == 7 || words_in(puzzle, right) == 8));
    CHECK((words_in(puzzle, down) == 2 || words_in(puzzle, down) == 3));
    CHECK(words_in(puzzle, left) == 0);
}

TEST_CASE("no more words read backward than are allowed") {
    using enum Direction;
    for (std::size_t most = 0; most <= 3; ++most) {
        Recipe recipe = recipe_of(herbs(), Size{12, 12});
        recipe.most_backward = most;
        const Puzzle puzzle = made(recipe);
        int backward = 0;
        for (const Direction direction : {left, up, up_left, down_left})
            backward += words_in(puzzle, direction);
        CHECK(backward <= static_cast<int>(most));
    }
    // From right to left it is the other four.
    Recipe recipe =
        recipe_of({"\u05D2\u05D6\u05E8", "\u05E6\u05E0\u05D5\u05DF", "\u05E1\u05DC\u05E7"}, Size{6, 6});
    recipe.most_backward = 0;
    const Puzzle puzzle = made(recipe);
    for (const Direction direction : {right, up, up_right, down_right})
        CHECK(words_in(puzzle, direction) == 0);
}

TEST_CASE("a pinned word stands where it is pinned") {
    using enum Direction;
    Recipe recipe = recipe_of(herbs(), Size{10, 10});
    recipe.pins = {{"thyme", {{2, 0}, right}}, {"Mint", {{3, 9}, left}}};
    const Puzzle puzzle = made(recipe);
    CHECK(puzzle.words[0].placed == Placement{{2, 0}, right});
    CHECK(puzzle.words[1].placed == Placement{{3, 9}, left});
}

TEST_CASE("exactly so many cells are left over, and a message fills them in reading order") {
    for (const std::size_t leftover : {8u, 6u, 5u}) {
        Recipe recipe = recipe_of(herbs(), Size{8, 8});
        recipe.leftover = leftover;
        CHECK(leftover_of(made(recipe)).size() == leftover);
    }
    Recipe recipe = recipe_of(herbs(), Size{9, 8});
    recipe.message = "Well done, gardener!";
    CHECK(leftover_of(made(recipe)) == "WELLDONEGARDENER");
    // The size is chosen so that it can be met.
    recipe.size.reset();
    for (const char* message : {"Grow well", "Plant in spring", "Water often"}) {
        recipe.message = message;
        std::string letters;
        for (const char* letter = message; *letter; ++letter)
            if (*letter != ' ') letters += static_cast<char>(*letter & ~0x20);
        CHECK(leftover_of(made(recipe)) == letters);
    }
}

TEST_CASE("what a message spells by chance is a conflict for the placements") {
    // Whole in one row the message would spell SAGE a second time: it has to be broken.
    Recipe recipe = recipe_of({"MINT", "SAGE", "DILL"}, Size{2, 8});
    recipe.message = "SAGE";
    int made_ones = 0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        recipe.seed = seed;
        const auto puzzle = make(recipe);
        if (!puzzle) {
            CHECK(puzzle.refusal().reason != Reason::unusable);
            continue;
        }
        ++made_ones;
        CHECK(faults_in(*puzzle, Mask({2, 8}), {}) == Texts{});
        CHECK(leftover_of(*puzzle) == "SAGE");
    }
    CHECK(made_ones == 20);

    // Two words that fill their rows leave one whole row to the message, which then spells the third.
    using enum Direction;
    Recipe rows = recipe_of({"MINT", "SAGE"}, Size{3, 4});
    rows.directions = directions_of({right});
    rows.message = "SAGE";
    const Refusal refusal = refused(rows, Reason::impossible);
    bool told = false;
    for (const auto& advice : refusal.advice) told = told || advice.find("Without --message") == 0;
    CHECK(told);
}

TEST_CASE("a message of a script that runs from right to left is read from the right") {
    Recipe recipe = recipe_of({"\u05D2\u05D6\u05E8", "\u05E1\u05DC\u05E7"}, Size{3, 3});
    recipe.message = "\u05D8\u05D5\u05D1";
    recipe.directions.reset();
    CHECK(leftover_of(made(recipe), true) == "\u05D8\u05D5\u05D1");
}

TEST_CASE("one name corrected moves no other word where none has to") {
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        const Puzzle first = made(recipe_of(herbs(), Size{12, 12}, seed));
        Recipe again = first.recipe;
        again.words = list_of({"Thymes", "Mint", "Rosemary", "Lavender", "Sage", "Chives", "Parsley", "Basil",
                               "Fennel", "Sorrel", "Dill"});
        again.earlier = earlier_of(first, true);
        const Puzzle second = made(again);
        for (std::size_t word = 1; word < 10; ++word)
            CHECK(same_cells(second.words[word].placed, first.words[word].placed,
                             static_cast<int>(first.words[word].letters.size())));
    }
}

TEST_CASE("as few words move as can be: one where one stands in the way of the only place") {
    using enum Direction;
    // BASIL can only stand in the first row, where MINT stands; FENNEL can stay.
    Recipe before = recipe_of({"MINT", "DILL"}, Size{3, 5});
    before.directions = directions_of({right});
    before.pins = {{"MINT", {{0, 0}, right}}, {"DILL", {{1, 1}, right}}};
    const Puzzle first = made(before);
    Recipe after = first.recipe;
    after.pins = {{"BASIL", {{0, 0}, right}}};
    after.words = list_of({"MINT", "DILL", "BASIL"});
    after.earlier = earlier_of(first, false);
    const Puzzle second = made(after);
    CHECK(second.words[1].placed == first.words[1].placed);
    CHECK(second.words[0].placed.first.row == 2);
}

TEST_CASE("a pin whose word was taken out goes with it, and one that never was is named") {
    using enum Direction;
    Recipe before = recipe_of({"MINT", "DILL"}, Size{5, 5});
    before.pins = {{"MINT", {{0, 0}, right}}, {"DILL", {{1, 1}, right}}};
    const Puzzle first = made(before);
    Recipe after = first.recipe;
    after.words = list_of({"SAGE", "DILL"});
    after.earlier = earlier_of(first, false);
    CHECK(made(after).words[1].placed == Placement{{1, 1}, right});
    after.pins.push_back({"MYNT", {{4, 0}, right}});
    CHECK_THAT(refused(after, Reason::unusable).message, Contains("'MYNT'"));
}

TEST_CASE("kept filler that is no letter never gets into a grid") {
    Recipe recipe = recipe_of({"MINT"}, Size{2, 4});
    for (const char* letter : {"AB", "<", "a", " ", "\xFF", "\x01"}) {
        recipe.earlier = Earlier{{}, {"A", "B", letter, "", "", "", "", ""}};
        CAPTURE(letter);
        CHECK_THAT(refused(recipe, Reason::unusable).message, Contains("filler"));
    }
    recipe.earlier = Earlier{{}, {"A", "B", "\u00C9", "", "", "", "", ""}};
    CHECK(make(recipe));
}

TEST_CASE("a message of more different letters than a grid can hold is refused") {
    Recipe recipe = recipe_of({"MINT"});
    for (std::uint32_t point = 0x4E00; point < 0x4E00 + 20'000; ++point) {
        for (const int shift : {12, 6, 0})
            recipe.message += static_cast<char>((shift == 12 ? 0xE0 : 0x80) |
                                                (point >> shift & (shift == 12 ? 0xF : 0x3F)));
    }
    for (std::uint32_t point = 0x20000; point < 0x20000 + 20'000; ++point)
        for (const int shift : {18, 12, 6, 0})
            recipe.message += static_cast<char>((shift == 18 ? 0xF0 : 0x80) |
                                                (point >> shift & (shift == 18 ? 0x7 : 0x3F)));
    CHECK_THAT(refused(recipe, Reason::unusable).message, Contains("different letters"));
}

TEST_CASE("demands that contradict each other are named before any search") {
    using enum Direction;
    const auto says = [](const auto& change, Reason reason, const Texts& parts) {
        Recipe recipe = recipe_of(herbs(), Size{10, 10});
        change(recipe);
        recipe.effort = 0;  // no search at all
        const Refusal refusal = refused(recipe, reason);
        for (const auto& part : parts) CHECK_THAT(refusal.message, Contains(part));
    };
    const auto contradiction = [&](const Texts& parts, const auto& change) {
        says(change, Reason::unusable, parts);
    };
    const auto out_of_reach = [&](const Texts& parts, const auto& change) {
        says(change, Reason::impossible, parts);
    };
    contradiction({"'Dill'", "none of the list"}, [](Recipe& r) { r.pins = {{"Dill", {{0, 0}, right}}}; });
    contradiction({"'Sage'", "outside the grid", "column 11"}, [](Recipe& r) {
        r.pins = {{"Sage", {{0, 7}, right}}};
    });
    contradiction({"'Sage'", "closed cell", "row 1, column 1"}, [](Recipe& r) {
        r.mask = Mask({10, 10});
        r.mask->set({0, 0}, false);
        r.pins = {{"Sage", {{0, 0}, right}}};
    });
    contradiction({"'Sage'", "'Mint'", "different letters", "row 1, column 1"}, [](Recipe& r) {
        r.pins = {{"Sage", {{0, 0}, right}}, {"Mint", {{0, 0}, down}}};
    });
    contradiction({"'SAGE'", "two places"}, [](Recipe& r) {
        r.pins = {{"Sage", {{0, 0}, right}}, {"SAGE", {{1, 0}, right}}};
    });
    contradiction({"'Sage'", "up", "directions"}, [](Recipe& r) {
        r.directions = directions_of({right});
        r.pins = {{"Sage", {{9, 0}, up}}};
    });
    contradiction({"'Sage'", "'Sorrel'", "may not"}, [](Recipe& r) {
        r.crossings.most = 0;
        r.pins = {{"Sage", {{0, 0}, right}}, {"Sorrel", {{0, 0}, down}}};
    });
    contradiction({"'Sage'", "'Mint'", "too near"}, [](Recipe& r) {
        r.spacing = 2;
        r.pins = {{"Sage", {{0, 0}, right}}, {"Mint", {{2, 0}, right}}};
    });
    contradiction({"100", "left over"}, [](Recipe& r) { r.leftover = 100; });
    contradiction({"4000", "left over"}, [](Recipe& r) { r.leftover = 4000; });
    contradiction({"'Hello'", "5 letters", "4 cells"}, [](Recipe& r) {
        r.message = "Hello";
        r.leftover = 4;
    });
    contradiction({"no letter"}, [](Recipe& r) { r.message = "!!"; });
    contradiction({"at most 2", "At least 3"}, [](Recipe& r) { r.crossings = {3, 2}; });
    contradiction({"apart", "cross"}, [](Recipe& r) {
        r.spacing = 1;
        r.crossings.least = 1;
    });
    contradiction({"spacing of 21"}, [](Recipe& r) { r.spacing = 21; });
    contradiction({"up", "none of the grid's"}, [](Recipe& r) {
        r.directions = directions_of({right});
        r.weights = DirectionWeights{};
        (*r.weights)[static_cast<unsigned>(up)] = 1;
    });
    contradiction({"10 words", "backward", "at most 2"}, [](Recipe& r) {
        r.directions = directions_of({left});
        r.most_backward = 2;
    });
    contradiction({"message", "'weed'"}, [](Recipe& r) {
        r.message = "No weeds";
        r.avoid = {"weed"};
    });
    out_of_reach({"59 letters", "95 cells"}, [](Recipe& r) { r.leftover = 5; });
    // So many cells can have letters of two words: A 2, E 5, H 1, I 1, L 2, M 1, N 2, O 1, R 3, S 3, T 1, V
    // 1, Y 1.
    out_of_reach({"in 24 cells", "not in 30"}, [](Recipe& r) { r.crossings.least = 30; });
    out_of_reach({"'Rosemary'", "8 cells"}, [](Recipe& r) { r.leftover = 95; });
    out_of_reach({"may not cross"}, [](Recipe& r) {
        r.crossings.most = 0;
        r.leftover = 50;
    });
}

TEST_CASE("a recipe with demands comes back from JSON as it was") {
    using enum Direction;
    Recipe recipe = recipe_of(herbs());
    recipe.tight = true;
    recipe.nested = Nested::separate;
    recipe.crossings = {2, 9};
    recipe.spacing = 0;
    recipe.leftover = 7;
    recipe.message = "Hello 42";
    recipe.pins = {{"Mint", {{3, 9}, left}}};
    recipe.weights = DirectionWeights{3, 1, 0, 0, 0, 0, 0, 2};
    recipe.most_backward = 4;
    recipe.earlier = Earlier{{{"Sage", {{1, 2}, down}}}, {"A", "", "B"}};
    recipe.choices = 3;
    const std::string json = to_json(recipe);
    const auto read = recipe_from_json(json, "recipe.json");
    if (!read) FAIL(read.refusal().message);
    CHECK(to_json(*read) == json);
    CHECK(read->pins == recipe.pins);
    CHECK(read->weights == recipe.weights);
    CHECK(read->earlier->filler == recipe.earlier->filler);
    CHECK(read->crossings.most == recipe.crossings.most);
    recipe.weights.reset();
    recipe.equal_shares = true;
    CHECK(recipe_from_json(to_json(recipe), "")->equal_shares);
}

TEST_CASE("choices are different puzzles from seeds that follow each other, on any number of threads") {
    const auto checked = CheckedRecipe::open(recipe_of(herbs(), Size{10, 10}));
    REQUIRE(checked);
    const auto one = make_choices(*checked, 5, 8);
    const auto many = make_choices(*checked, 5, 8, {{}, nullptr, 4});
    REQUIRE(one);
    REQUIRE(many);
    REQUIRE(one->size() == 8);
    REQUIRE(many->size() == 8);
    for (std::size_t at = 0; at < 8; ++at) {
        CHECK((*one)[at].recipe.seed == 5 + at);
        CHECK(to_json((*one)[at]) == to_json((*many)[at]));
        CHECK(to_json((*one)[at]) == to_json(made((*one)[at].recipe)));
    }
    // A grid that one word fills has no second choice but its turning round.
    const auto few = CheckedRecipe::open(recipe_of({"AB"}, Size{1, 2}));
    REQUIRE(few);
    CHECK(make_choices(*few, 1, 5)->size() == 2);
    // What is impossible is so for every seed.
    const auto none = CheckedRecipe::open(recipe_of({"ABC", "DEF", "GHI", "JKL"}, Size{3, 3}));
    REQUIRE(none);
    CHECK(make_choices(*none, 1, 5).refusal().reason == Reason::impossible);
}

TEST_CASE("a tight grid is no larger than the comfortable one, and is found again by its size") {
    for (const Shape shape : {Shape::rectangle, Shape::heart}) {
        Recipe recipe = recipe_of(herbs());
        recipe.shape = shape;
        recipe.effort = 5'000'000;
        const Puzzle comfortable = made(recipe);
        recipe.tight = true;
        const Puzzle tight = made(recipe);
        const auto open = [](const Puzzle& puzzle) {
            return shape_mask(puzzle.recipe.shape, *puzzle.recipe.size).open_count();
        };
        CHECK(open(tight) < open(comfortable));
        // 59 letters, of which the words can share some.
        CHECK(open(tight) <= 64);
        CHECK(to_json(made(tight.recipe)) == to_json(tight));
    }
}
