// From a recipe to a certified puzzle, or to a refusal that says why there is none.

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <set>

#include <letterlode/puzzle.hpp>

#include "support/grids.hpp"
#include "support/judge.hpp"
#include "support/made.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;
using Reason = Refusal::Reason;
using Texts = std::vector<std::string>;

namespace {

Refusal unusable(const Recipe& recipe) {
    return refused(recipe, Reason::unusable);
}

std::string text_of_grid(const Puzzle& puzzle) {
    return grid_text(puzzle.grid.grid, puzzle.grid.alphabet);
}

Texts garden() {
    return {"Carrot", "Parsnip", "Beetroot", "Radish",   "Onion",   "Leek",
            "Chard",  "Kale",    "Lettuce",  "Bok-choy", "Jalapeño"};
}

// So many words in so small a grid that effort runs out.
Recipe crowded() {
    Texts words;
    for (char first = 'A'; first <= 'H'; ++first)
        for (char last = 'A'; last <= 'H'; ++last)
            if (first != last && words.size() < 26)
                words.push_back(std::string{first, 'X', static_cast<char>('I' + (first - 'A')),
                                            static_cast<char>('Q' + (last - 'A') % 7), last});
    return recipe_of(words, Size{9, 9});
}

}  // namespace

TEST_CASE("puzzles of every shape are right in the eyes of another judge") {
    const Texts avoided = english_avoid_list();
    for (const Shape shape : all_shapes)
        for (std::uint64_t seed = 1; seed <= 5; ++seed) {
            Recipe recipe = recipe_of(garden(), std::nullopt, seed);
            recipe.shape = shape;
            recipe.default_avoid_list = true;
            const Puzzle puzzle = made(recipe);
            CAPTURE(name(shape), seed, text_of_grid(puzzle));
            CHECK(faults_in(puzzle, shape_mask(shape, puzzle.recipe.size.value()), avoided) == Texts{});
            CHECK(puzzle.audit.certified);
        }
}

TEST_CASE("the same recipe gives the same puzzle, and another seed gives another") {
    const Recipe recipe = recipe_of(garden(), Size{12, 12}, 5);
    CHECK(to_json(made(recipe)) == to_json(made(recipe)));
    Recipe other = recipe;
    other.seed = 6;
    CHECK(text_of_grid(made(other)) != text_of_grid(made(recipe)));
}

TEST_CASE("a puzzle's own recipe makes it again, its size and directions written in") {
    for (const double aspect : {0.5, 1.0, 2.0}) {
        Recipe recipe = recipe_of(garden());
        recipe.aspect = aspect;
        recipe.directions.reset();
        const Puzzle puzzle = made(recipe);
        REQUIRE(puzzle.recipe.size);
        CHECK(puzzle.recipe.size == puzzle.grid.grid.size());
        CHECK(puzzle.recipe.directions == Directions::forward());
        CHECK(to_json(made(puzzle.recipe)) == to_json(puzzle));
    }
}

TEST_CASE("a size that is left to the maker is near the aspect and neither crammed nor empty") {
    double letters = 0;
    for (const auto& word : garden())
        letters += static_cast<double>(segmenter_of().spell(word).letters.size());
    for (const Shape shape : all_shapes)
        for (const double aspect : {0.5, 0.8, 1.0, 1.25, 3.0}) {
            Recipe recipe = recipe_of(garden());
            recipe.shape = shape;
            recipe.aspect = aspect;
            const Size size = made(recipe).recipe.size.value();
            const double open = static_cast<double>(shape_mask(shape, size).open_count());
            CAPTURE(name(shape), aspect, size.rows, size.columns);
            CHECK(letters / open <= 0.6);
            CHECK(letters / open > 0.3);
            CHECK(static_cast<double>(size.columns) / size.rows == Approx(aspect).epsilon(0.2));
        }
}

TEST_CASE("words run forward in their script where no directions are given") {
    Recipe recipe = recipe_of({"שלום", "גינה", "פרחים"});
    recipe.directions.reset();
    const Puzzle puzzle = made(recipe);
    CHECK(puzzle.recipe.directions == Directions::forward(true));
    for (const auto& word : puzzle.words) CHECK(Directions::forward(true).contains(word.placed.direction));
}

TEST_CASE("filler comes from the words' own language and case") {
    const auto letters_in = [](const Puzzle& puzzle) {
        std::set<std::string> letters;
        for (const Letter letter : puzzle.grid.grid.letters())
            letters.insert(puzzle.grid.alphabet.text(letter));
        return letters;
    };
    const auto all_of = [](const std::set<std::string>& letters, const auto& test) {
        return std::all_of(letters.begin(), letters.end(), test);
    };
    Recipe recipe = recipe_of({"rose", "lily"}, Size{20, 20});
    CHECK(all_of(letters_in(made(recipe)), [](const auto& l) { return l >= "A" && l <= "Z"; }));
    CHECK(letters_in(made(recipe)).size() > 20);
    recipe.text.letters = LetterCase::lower;
    CHECK(all_of(letters_in(made(recipe)), [](const auto& l) { return l >= "a" && l <= "z"; }));
    recipe.text.letters = LetterCase::keep;
    CHECK(all_of(letters_in(made(recipe)), [](const auto& l) { return l >= "a" && l <= "z"; }));
    recipe.words = list_of({"ROSE", "LILY"});
    CHECK(all_of(letters_in(made(recipe)), [](const auto& l) { return l >= "A" && l <= "Z"; }));
    recipe.words = list_of({"Rose", "Lily"});
    CHECK(letters_in(made(recipe)).count("q") == 1);
    CHECK(letters_in(made(recipe)).count("Q") == 1);

    recipe = recipe_of({"Öl", "Gras"}, Size{20, 20});
    recipe.text.locale = "de";
    CHECK(letters_in(made(recipe)).count("Ü") == 1);
    recipe = recipe_of({"роза", "лилия"}, Size{20, 20});
    CHECK(letters_in(made(recipe)) == std::set<std::string>{"Р", "О", "З", "А", "Л", "И", "Я"});
    recipe.text.locale = "ru";
    CHECK(letters_in(made(recipe)).count("Щ") == 1);
}

TEST_CASE("the avoid list is that of the locale's language, whatever the region and the tag's case") {
    CHECK(avoid_list("en").size() == english_avoid_list().size());
    for (const char* tag : {"root", "und", "en-GB", "en_US", "EN-gb", "eng"}) {
        CAPTURE(tag);
        CHECK(avoid_list(tag) == avoid_list("en"));
        CHECK(has_avoid_list(tag));
    }
    CHECK(avoid_list("de-AT").size() > 15);
    CHECK(avoid_list("de-AT") == avoid_list("de"));
    CHECK(avoid_list("de") != avoid_list("en"));
    for (const char* tag : {"cy", "sr-Latn", "no such", ""}) {
        CAPTURE(tag);
        CHECK(avoid_list(tag).empty());
        CHECK_FALSE(has_avoid_list(tag));
    }
}

TEST_CASE("bad words are refused with file, line and word") {
    CHECK_THAT(unusable(recipe_of({"Rake", "X"})).message, Contains("beds.txt:2: ") && Contains("'X'"));
    CHECK_THAT(unusable(recipe_of({"Rake", "Hoe☃"})).message, Contains("beds.txt:2: ") && Contains("☃"));
    CHECK_THAT(unusable(recipe_of({"Rake", "Hoe", "rake"})).message,
               Contains("beds.txt:3: ") && Contains("line 1"));
    CHECK_THAT(unusable(recipe_of({})).message, Contains("beds.txt: ") && Contains("no word"));
    CHECK_THAT(unusable(recipe_of({"Rake", "Ho\x01"})).message, Contains("beds.txt:2: "));
}

TEST_CASE("a word that would stand more than once inside others is refused, and all of them are named") {
    for (const Texts& words : std::vector<Texts>{
             {"Ann", "Anna"}, {"Ana", "Ananas"}, {"Ann", "Anne", "Joann"}, {"Ed", "Shed", "Bedding"}}) {
        Texts listed{"Hoe"};
        listed.insert(listed.end(), words.begin(), words.end());
        const Refusal refusal = unusable(recipe_of(listed));
        CAPTURE(refusal.message);
        CHECK(refusal.words == words);
        CHECK_THAT(refusal.message, Contains("beds.txt:2: "));
        for (const auto& word : words) CHECK_THAT(refusal.message, Contains("'" + word + "'"));
        CHECK_THAT(refusal.advice.front(), Contains("--nested separate"));
    }
}

TEST_CASE("an avoided word inside a listed one is refused unless it is allowed") {
    Recipe recipe = recipe_of({"Rake", "Scrapheap"}, Size{12, 12});
    recipe.avoid = {"crap"};
    Refusal refusal = unusable(recipe);
    CHECK_THAT(refusal.message, Contains("beds.txt:2: ") && Contains("'Scrapheap'") && Contains("'crap'"));
    CHECK(refusal.words == Texts{"Scrapheap", "crap"});
    recipe.avoid = {"PARÇ"};
    refusal = unusable(recipe);
    CHECK_THAT(refusal.message, Contains("'PARÇ'"));
    recipe.allow = {"parc"};
    const Puzzle puzzle = made(recipe);
    CHECK(puzzle.audit.certified);
    CHECK_FALSE(puzzle.audit.allowed.empty());
    // All of them at once.
    recipe.words = list_of({"Scrapheap", "Rake", "Parcel"});
    recipe.allow.clear();
    CHECK_THAT(unusable(recipe).message, Contains("beds.txt:1: ") && Contains("beds.txt:3: "));
}

TEST_CASE("a word too long for the grid in the given directions is refused with what would fit") {
    using enum Direction;
    Recipe recipe = recipe_of({"Rake", "Wheelbarrow"}, Size{4, 10});
    Refusal refusal = unusable(recipe);
    CHECK(refusal.line == 2);
    CHECK_THAT(refusal.message, Contains("beds.txt:2: ") && Contains("'Wheelbarrow'") &&
                                    Contains("11 letters") && Contains("10x4") && Contains("at most 10"));
    recipe.size = Size{4, 11};
    CHECK(made(recipe).audit.certified);
    recipe.directions = directions_of({down, down_right});
    CHECK_THAT(unusable(recipe).message, Contains("at most 4"));
    recipe.size.reset();
    recipe.mask = mask_of({"OOOOOO.OOOOOO", "OOOOOOOOOO..."});
    recipe.directions = Directions::all();
    CHECK_THAT(unusable(recipe).message, Contains("at most 10"));
}

TEST_CASE("sizes, masks and aspects that make no grid are refused") {
    for (const Size size :
         {Size{3, 0}, Size{0, 3}, Size{-1, 5}, Size{100'000, 100'000}, Size{4001, 4000}, Size{1, 20'001}}) {
        CAPTURE(size.rows, size.columns);
        unusable(recipe_of({"Rake"}, size));
    }
    Recipe recipe = recipe_of({"Rake"});
    for (const double aspect : {0.0, -1.0, 0.009, 101.0, std::numeric_limits<double>::infinity(),
                                std::numeric_limits<double>::quiet_NaN()}) {
        recipe.aspect = aspect;
        CAPTURE(aspect);
        CHECK_THAT(unusable(recipe).message, Contains("aspect"));
    }
    recipe.aspect = 1;
    recipe.mask = Mask();
    unusable(recipe);
    recipe.mask = Mask({5, 5}, false);
    unusable(recipe);
    recipe.mask = Mask({4001, 4000});
    CHECK_THAT(unusable(recipe).message, Contains("too large"));
}

TEST_CASE("no direction and no language are refused") {
    Recipe recipe = recipe_of({"Rake"});
    recipe.directions = Directions();
    CHECK_THAT(unusable(recipe).message, Contains("direction"));
    recipe = recipe_of({"Rake"});
    recipe.text.locale = "no such";
    CHECK_THAT(unusable(recipe).message, Contains("'no such'"));
}

TEST_CASE("words without a place are proved impossible, and are named with a grid that would hold them") {
    const Refusal refusal = refused(recipe_of({"ABCD", "EFGH", "IJKL"}, Size{2, 4}), Reason::impossible);
    CHECK(refusal.words == Texts{"ABCD", "EFGH", "IJKL"});
    CHECK_THAT(refusal.message, Contains("3 words") && Contains("4x2"));
    CHECK_THAT(refusal.advice.front(), Contains("--grid 5x3"));
}

TEST_CASE("where the letters allow no filler that is what the refusal says") {
    // Two letters alone: beside both of them neither may stand.
    const Refusal refusal = refused(recipe_of({"בא"}, Size{2, 2}), Reason::unfinished);
    CHECK_THAT(refusal.message, Contains("can hold no letter") && Contains("'בא' once more"));
    CHECK_THAT(refusal.advice.front(), Contains("--locale"));
}

TEST_CASE("a small effort ends as unfinished, never as impossible, and within its bound") {
    Recipe recipe = crowded();
    for (const std::uint64_t effort :
         std::vector<std::uint64_t>{0, 1, 2, 10, 100, 1000, 10'000, 100'000, 1'000'000}) {
        recipe.effort = effort;
        std::uint64_t last = 0;
        MakeControl control;
        control.progress = [&](std::uint64_t spent, std::uint64_t bound) {
            CHECK(spent >= last);
            CHECK(spent <= bound);
            CHECK(bound == effort);
            last = spent;
        };
        const auto puzzle = make(recipe, control);
        CAPTURE(effort);
        if (puzzle) continue;
        CHECK(puzzle.refusal().reason == Reason::unfinished);
        CHECK_THAT(puzzle.refusal().message, Contains(std::to_string(effort) + " steps"));
    }
    // Placed at once, but no step is left for the filler.
    recipe = recipe_of({"RAKE"}, Size{6, 6});
    recipe.effort = 20;
    CHECK_THAT(refused(recipe, Reason::unfinished).message, Contains("20 steps"));
}

TEST_CASE("a making that is cancelled stops and says that it was") {
    std::atomic<bool> cancel = true;
    MakeControl control;
    control.cancel = &cancel;
    for (const Recipe& recipe : {recipe_of({"Rake"}), recipe_of({"Rake"}, Size{5, 5}), crowded()}) {
        const auto puzzle = make(recipe, control);
        REQUIRE_FALSE(puzzle);
        CHECK(puzzle.refusal().reason == Reason::unfinished);
        CHECK_THAT(puzzle.refusal().message, Contains("Interrupted"));
    }

    // In the middle of placing, and in the middle of filling a grid that has room for a million letters.
    cancel = false;
    Recipe endless = crowded();
    endless.size = Size{8, 8};
    endless.effort = std::numeric_limits<std::uint64_t>::max();
    std::uint64_t spent = 0;
    control.progress = [&](std::uint64_t so_far, std::uint64_t) {
        spent = so_far;
        if (so_far > 200'000) cancel = true;
    };
    const auto puzzle = make(endless, control);
    REQUIRE_FALSE(puzzle);
    CHECK_THAT(puzzle.refusal().message, Contains("Interrupted"));
    CHECK(spent > 200'000);
    CHECK(spent < 300'000);
}

TEST_CASE("a puzzle is printed with its grid, its words and its key") {
    Recipe recipe = recipe_of({"Lamb's ear"}, Size{1, 8});
    recipe.directions = directions_of({Direction::right});
    const Puzzle puzzle = made(recipe);
    CHECK(puzzle_text(puzzle) == "L A M B S E A R\n\nLamb's ear\n");
    CHECK(key_text(puzzle) == "Lamb's ear  row 1, column 1, right\n");
    CHECK_THAT(audit_text(puzzle.audit), Contains("1      1  row 1, column 1, right to row 1, column 8") &&
                                             Contains("Certified: the word stands in the grid once"));
    Puzzle faulty = puzzle;
    faulty.grid.grid[{0, 0}] = faulty.grid.alphabet.add("X");
    CHECK_THAT(audit_text(audit(faulty).value()),
               Contains("MISSING") && Contains("Not certified: 1 missing"));
}

TEST_CASE("a key tells the message, and of a word inside another only where it stands there") {
    Puzzle puzzle;
    puzzle.grid = lettered({"ANNE", "NXXX", "NXXX"});
    puzzle.recipe.words = list_of({"Ann", "Anne"});
    puzzle.words = {{"Ann", {"A", "N", "N"}, {{0, 0}, Direction::right}, "Anne"},
                    {"Anne", {"A", "N", "N", "E"}, {{0, 0}, Direction::right}}};
    CHECK_THAT(key_text(puzzle), Contains("Ann   row 1, column 1, right, inside Anne\n"));
    puzzle.words.front().placed = {{0, 0}, Direction::down};
    CHECK_THAT(key_text(puzzle), Contains("Ann   row 1, column 1, down\n") && !Contains("spell"));
    puzzle.recipe.message = "Well grown";
    CHECK_THAT(key_text(puzzle), Contains("The other cells spell, row by row: Well grown\n"));
    puzzle.recipe.filler_after_message = true;
    CHECK_THAT(key_text(puzzle), Contains("Well grown\nFiller follows it.\n"));

    // With a place of its own it crosses like any other word.
    const auto crossings = [&] {
        const auto rating = rate(puzzle).value();
        for (const RatingPart& part : rating.difficulty.parts)
            if (part.part == "crossings") return part.value;
        return -1.0;
    };
    CHECK(crossings() == 0);
    puzzle.recipe.nested = Nested::separate;
    CHECK(crossings() == 1);
}

TEST_CASE("a verdict does not speak of words to avoid where none were looked for") {
    Recipe recipe = recipe_of({"Rose", "Lily"}, Size{6, 6});
    recipe.default_avoid_list = false;
    CHECK_THAT(verdict_text(made(recipe).audit), Contains("no words to avoid were looked for"));
    recipe.avoid = {"slug"};
    CHECK_THAT(verdict_text(made(recipe).audit), Contains("and no avoided word stands in it"));
}
