// Many puzzles, none refused, each judged by string searches that share nothing with the engine's finder.

#include <catch2/catch.hpp>

#include <letterlode/puzzle.hpp>

#include "support/dictionary.hpp"
#include "support/grids.hpp"
#include "support/judge.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Texts = std::vector<std::string>;

namespace {

// Makes the puzzle and says what is wrong with it.
Texts faults_of(const Recipe& recipe, const Texts& avoided) {
    const auto puzzle = make(recipe);
    if (!puzzle) return {"refused: " + puzzle.refusal().message};
    const Mask mask = recipe.mask ? *recipe.mask : shape_mask(recipe.shape, puzzle->recipe.size.value());
    Texts faults = faults_in(*puzzle, mask, avoided);
    if (!puzzle->audit.certified) faults.emplace_back("not certified");
    if (!recipe.directions &&
        puzzle->recipe.directions != Directions::forward(is_right_to_left(recipe.words.words.front().shown)))
        faults.emplace_back("other directions than forward ones");
    return faults;
}

void all_are_right(Recipe recipe, const Texts& avoided, std::uint64_t seeds) {
    for (recipe.seed = 1; recipe.seed <= seeds; ++recipe.seed) {
        CAPTURE(recipe.seed);
        CHECK(faults_of(recipe, avoided) == Texts{});
    }
}

}  // namespace

TEST_CASE("the judge of these puzzles finds planted faults") {
    const Puzzle puzzle = make(recipe_of({"CARROT", "LEEK"}, Size{12, 12})).value();
    const Mask mask({12, 12});
    CHECK(faults_in(puzzle, mask, {"WEED"}) == Texts{});

    const auto with_row = [&](const std::string& text) {
        // A row that no word touches, so that nothing else is changed.
        Puzzle faulty = puzzle;
        for (int row = 0; row < 12; ++row) {
            bool taken = false;
            for (const auto& word : puzzle.words)
                for (int at = 0; at < static_cast<int>(word.letters.size()); ++at)
                    taken = taken || moved(word.placed.first, word.placed.direction, at).row == row;
            if (taken) continue;
            for (std::size_t at = 0; at < text.size(); ++at)
                faulty.grid.grid[{row, static_cast<int>(at)}] = faulty.grid.alphabet.add(text.substr(at, 1));
            return faulty;
        }
        FAIL("every row is taken");
        return faulty;
    };
    CHECK(faults_in(with_row("XXLEEKXX"), mask, {}) == Texts{"LEEK stands 2 times"});
    CHECK(faults_in(with_row("TORRACXX"), mask, {}) == Texts{"CARROT stands 2 times"});
    CHECK(faults_in(with_row("XDEEWXXX"), mask, {"WEED"}) ==
          Texts{"the avoided word WEED stands in the grid"});

    Puzzle faulty = puzzle;
    const Cell first = puzzle.words[0].placed.first;
    faulty.grid.grid[first] = faulty.grid.alphabet.add("X");
    CHECK(faults_in(faulty, mask, {}).size() == 3);
    faulty = puzzle;
    faulty.words[1].placed.direction = opposite(faulty.words[1].placed.direction);
    CHECK_FALSE(faults_in(faulty, mask, {}).empty());
    faulty = puzzle;
    faulty.grid.grid[{7, 7}] = closed_cell;
    CHECK_FALSE(faults_in(faulty, mask, {}).empty());
    faulty = puzzle;
    faulty.recipe.directions = Directions();
    CHECK(faults_in(faulty, mask, {}).size() == 2);
    faulty = puzzle;
    faulty.words.pop_back();
    CHECK(faults_in(faulty, mask, {}) == Texts{"another number of words"});
}

TEST_CASE("a thousand puzzles of fifteen by fifteen with twenty English words in all directions are right") {
    // Words of 4 to 10 letters, drawn for each seed from a list of some 60,000. The default avoid list is on,
    // so words that hold one of its entries are drawn again.
    const Texts avoided = english_avoid_list();
    CHECK(avoided.size() > 40);
    CHECK(english_words(4, 10).size() > 40'000);
    for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
        Recipe recipe = recipe_of(drawn_list(english_words(4, 10), 20, avoided, seed), Size{15, 15}, seed);
        recipe.default_avoid_list = true;
        CAPTURE(seed);
        CHECK(faults_of(recipe, avoided) == Texts{});
    }
}

TEST_CASE("puzzles of every shape with English words are right") {
    const Texts avoided = english_avoid_list();
    for (const Shape shape : all_shapes)
        for (std::uint64_t seed = 1; seed <= 40; ++seed) {
            Recipe recipe = recipe_of(drawn_list(english_words(4, 8), 12, avoided, seed), Size{17, 17}, seed);
            recipe.default_avoid_list = true;
            recipe.shape = shape;
            CAPTURE(name(shape), seed);
            CHECK(faults_of(recipe, avoided) == Texts{});
        }
}

TEST_CASE("puzzles on a drawn mask with a window in it are right") {
    const Texts avoided = english_avoid_list();
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        Recipe recipe = recipe_of(drawn_list(english_words(4, 10), 20, avoided, seed), std::nullopt, seed);
        recipe.default_avoid_list = true;
        recipe.mask = read_mask(data_file("samples/shed-mask.txt"), "").value();
        CAPTURE(seed);
        CHECK(faults_of(recipe, avoided) == Texts{});
    }
}

TEST_CASE(
    "puzzles whose size and directions are left to the maker are right, whatever their words and aspect") {
    const Texts avoided = english_avoid_list();
    for (std::uint64_t seed = 1; seed <= 150; ++seed) {
        const int words = 1 + static_cast<int>(seed * 7 % 40);
        Recipe recipe = recipe_of(drawn_list(english_words(3, 14), words, avoided, seed), std::nullopt, seed);
        recipe.default_avoid_list = true;
        recipe.directions.reset();
        recipe.aspect = 0.5 + static_cast<double>(seed % 7) / 4;
        recipe.shape = all_shapes[seed % all_shapes.size()];
        CAPTURE(seed, words);
        CHECK(faults_of(recipe, avoided) == Texts{});
    }
}

TEST_CASE("puzzles with few directions, forward and backward, are right") {
    using enum Direction;
    const Texts avoided = english_avoid_list();
    const std::vector<Directions> sets{directions_of({right}), directions_of({right, down}),
                                       directions_of({up_left}), directions_of({left, up}),
                                       directions_of({down_left, up_right})};
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        Recipe recipe = recipe_of(drawn_list(english_words(4, 8), 10, avoided, seed), Size{15, 15}, seed);
        recipe.default_avoid_list = true;
        recipe.directions = sets[seed % sets.size()];
        CAPTURE(seed);
        CHECK(faults_of(recipe, avoided) == Texts{});
    }
}

TEST_CASE("palindromes and words that repeat themselves stand once, read from both ends") {
    Recipe recipe = recipe_of(
        {"LEVEL", "ROTOR", "ANANAS", "DEED", "NOON", "KAYAK", "COCOON", "MISSISSIPPI", "AA"}, Size{13, 13});
    recipe.directions.reset();
    all_are_right(recipe, {}, 100);
    recipe.directions = Directions::all();
    all_are_right(recipe, {}, 100);
}

TEST_CASE("puzzles in German, Greek, Hebrew and other scripts are right") {
    const auto list = [](const Texts& words, const std::string& locale) {
        Recipe recipe = recipe_of(words);
        recipe.text.locale = locale;
        recipe.directions.reset();
        return recipe;
    };
    all_are_right(
        list({"Möhre", "Rübe", "Grünkohl", "Süßkartoffel", "Radieschen", "Äpfel", "Weißkraut", "Öl"}, "de"),
        {}, 60);
    all_are_right(list({"καρότο", "ντομάτα", "μαρούλι", "πράσο", "κρεμμύδι", "άνηθος", "ΐον"}, "el"), {}, 60);
    all_are_right(list({"גזר", "חסה", "עגבנייה", "מלפפון", "בצל", "שום", "צנונית"}, "he"), {}, 60);
    all_are_right(list({"gulerod", "løg", "ærter", "rødbede", "grønkål"}, "da"), {}, 30);
    all_are_right(list({"havuç", "ıspanak", "İncir", "şeftali", "çilek"}, "tr"), {}, 30);
    all_are_right(list({"गाजर", "मूली", "पालक", "हिन्दी", "टमाटर"}, "hi"), {}, 30);
    all_are_right(list({"당근", "상추", "토마토", "고구마"}, "ko"), {}, 30);
    all_are_right(list({"にんじん", "きゅうり", "トマト", "たまねぎ"}, "ja"), {}, 30);
    all_are_right(list({"جزر", "خس", "طماطم", "بصل", "فجل"}, "ar"), {}, 30);
}
