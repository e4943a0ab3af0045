// The simulated reader against a second one that walks, and what a difficulty must be like.

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include <letterlode/puzzle.hpp>
#include <letterlode/score.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/made.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;

namespace {

// The rules of score.hpp, walked cell by cell from every row in turn; written from them alone.
std::int64_t walked(const Grid& grid, const Letters& word, const Reader& reader) {
    // Columns and rows as steps in the order in which the reader tries them, and what a letter costs there.
    struct Way {
        int down, across;
        std::int64_t cost;
    };
    const int on = reader.right_to_left ? -1 : 1;
    const auto cost = [&](bool stacked, bool backward) {
        return reader.compare * (stacked ? reader.stacked : 100) * (backward ? reader.backward : 100) /
               10'000;
    };
    const std::vector<Way> ways{{0, on, cost(false, false)}, {1, 0, cost(true, false)},
                                {1, on, cost(true, false)},  {-1, on, cost(true, false)},
                                {0, -on, cost(false, true)}, {-1, 0, cost(true, true)},
                                {-1, -on, cost(true, true)}, {1, -on, cost(true, true)}};
    const int rows = grid.size().rows, columns = grid.size().columns;
    const auto letter = [&](int row, int column) -> int {
        if (row < 0 || row >= rows || column < 0 || column >= columns) return -1;
        const Letter there = grid[{row, column}];
        return there >= empty_cell ? -1 : there;
    };
    std::int64_t sum = 0;
    for (int begin = 0; begin < rows; ++begin) {
        bool has_letters = false;
        for (int column = 0; column < columns; ++column) has_letters |= letter(begin, column) >= 0;
        if (!has_letters) continue;
        bool found = false;
        for (int past = 0; past < rows && !found; ++past)
            for (int at = 0; at < columns && !found; ++at) {
                const int row = (begin + past) % rows;
                const int column = reader.right_to_left ? columns - 1 - at : at;
                if (letter(row, column) < 0) continue;
                sum += reader.scan;
                if (letter(row, column) != word[0]) continue;
                sum += reader.stop;
                for (const Way& way : ways) {
                    if (found || letter(row + way.down, column + way.across) != word[1]) continue;
                    std::size_t agreed = 2;
                    while (agreed < word.size()) {
                        const int steps = static_cast<int>(agreed);
                        const int next = letter(row + way.down * steps, column + way.across * steps);
                        if (next < 0) break;
                        sum += way.cost;
                        if (next != word[agreed]) break;
                        ++agreed;
                    }
                    found = agreed == word.size();
                }
            }
    }
    return sum;
}

std::vector<SoughtWord> sought(const Puzzle& puzzle) {
    std::vector<SoughtWord> words;
    for (const auto& word : puzzle.words) {
        Letters letters;
        for (const auto& letter : word.letters) letters.push_back(puzzle.grid.alphabet.find(letter).value());
        words.push_back({word.shown, letters, word.placed, !word.inside.empty()});
    }
    return words;
}

Puzzle any_puzzle(std::uint64_t seed, Size size, int count, Directions directions) {
    Random random(seed);
    Recipe recipe = recipe_of({}, size);
    while (static_cast<int>(recipe.words.words.size()) < count) {
        std::string word;
        const auto length = 4 + random.below(5);
        for (std::uint32_t at = 0; at < length; ++at) word += static_cast<char>('A' + random.below(20));
        recipe.words.words.push_back({word, 0});
    }
    recipe.directions = directions;
    recipe.seed = seed;
    return made(recipe);
}

const RatingPart& part_named(const Difficulty& difficulty, const std::string& wanted) {
    return *std::find_if(difficulty.parts.begin(), difficulty.parts.end(),
                         [&](const RatingPart& part) { return part.part == wanted; });
}

Grid mirrored(const Grid& grid) {
    Grid other(grid.size());
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column)
            other[{row, grid.size().columns - 1 - column}] = grid[{row, column}];
    return other;
}

}  // namespace

TEST_CASE("the reader that is counted costs what a reader costs who walks") {
    Random random(71);
    for (int round = 0; round < 400; ++round) {
        const Size size{1 + static_cast<int>(random.below(7)), 1 + static_cast<int>(random.below(7))};
        const std::uint32_t letters = 1 + random.below(4);
        LetteredGrid grid{{}, Grid(size, closed_cell)};
        for (const char* letter : {"A", "B", "C", "D"}) grid.alphabet.add(letter);
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                if (random.below(6) > 0)
                    grid.grid[{row, column}] = static_cast<Letter>(random.below(letters));
        Reader reader;
        reader.right_to_left = random.below(2) == 1;
        std::vector<SoughtWord> words;
        for (int count = 0; count < 5; ++count) {
            Letters word;
            for (std::uint32_t length = 2 + random.below(4); length > 0; --length)
                word.push_back(static_cast<Letter>(random.below(5)));  // 4 is a letter that the grid lacks
            words.push_back({text_of(word), word});
        }
        std::int64_t beginnings = 0;
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                if (grid.grid[{row, column}] != closed_cell) {
                    ++beginnings;
                    break;
                }
        const auto difficulty = rate_difficulty(grid, words, reader);
        REQUIRE(difficulty);
        for (std::size_t word = 0; word < words.size(); ++word) {
            CAPTURE(rows_of(grid.grid), words[word].shown, reader.right_to_left);
            const auto expected = walked(grid.grid, words[word].letters, reader);
            CHECK(std::llround(difficulty->words[word].fixations * 1000 * static_cast<double>(beginnings)) ==
                  expected);
        }
    }
}

TEST_CASE("by hand: a word in the first row, from each of two rows") {
    // From row 1: A scanned, a stop at it, B seen, C compared: 0.125 + 1 + 0.25. From row 2: three letters
    // more.
    const auto one =
        rate_difficulty(lettered({"ABC", "DEF"}), std::vector<SoughtWord>{{"abc", word_of("ABC")}});
    CHECK(one->fixations == Approx((1.375 + 1.75) / 2));
    CHECK(one->level == Level::glance);
    // Down: the third letter at 2.39 times the effort; backward in a row: at 1.5 times.
    CHECK(rate_difficulty(lettered({"A", "B", "C"}), std::vector<SoughtWord>{{"abc", word_of("ABC")}})
              ->fixations == Approx((3 * (0.125 + 1 + 0.597) + 3 * 0.125) / 3));
    CHECK(rate_difficulty(lettered({"CBA"}), std::vector<SoughtWord>{{"abc", word_of("ABC")}})->fixations ==
          Approx(0.125 * 3 + 1 + 0.375));
    // Not there: all is scanned, with a stop and a false start of two letters.
    const auto none = rate_difficulty(lettered({"ABX"}), std::vector<SoughtWord>{{"abc", word_of("ABC")}});
    CHECK(none->fixations == Approx(0.125 * 3 + 1 + 0.25));
    CHECK(part_named(*none, "false starts of two letters").value == 1);
    CHECK_FALSE(none->words.front().is_found);
    CHECK(one->words.front().is_found);
}

TEST_CASE("a mirrored grid is as difficult for a mirrored reader") {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const Puzzle puzzle = any_puzzle(seed, {11, 13}, 12, Directions::all());
        auto words = sought(puzzle);
        const auto one = rate_difficulty(puzzle.grid, words);
        for (SoughtWord& word : words) {
            const Cell by = step(word.placed->direction);
            word.placed->first.column = 12 - word.placed->first.column;
            for (const Direction direction : all_directions)
                if (step(direction) == Cell{by.row, -by.column}) {
                    word.placed->direction = direction;
                    break;
                }
        }
        Reader reader;
        reader.right_to_left = true;
        const auto other = rate_difficulty({puzzle.grid.alphabet, mirrored(puzzle.grid.grid)}, words, reader);
        CHECK(one->fixations == other->fixations);
        REQUIRE(one->parts.size() == other->parts.size());
        for (std::size_t part = 0; part < one->parts.size(); ++part)
            CHECK(one->parts[part].value == other->parts[part].value);
    }
}

TEST_CASE("words turned round in the same cells are harder to find, on average over 200 puzzles") {
    double forward = 0, backward = 0;
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        const Puzzle puzzle = any_puzzle(seed, {10, 10}, 10, Directions::forward());
        auto words = sought(puzzle);
        LetteredGrid turned = puzzle.grid;
        // The list is turned round, and with it every word in the grid: the cells are the same, the letters
        // too.
        for (SoughtWord& word : words) {
            word.placed->first =
                moved(word.placed->first, word.placed->direction, static_cast<int>(word.letters.size()) - 1);
            word.placed->direction = opposite(word.placed->direction);
            std::reverse(word.letters.begin(), word.letters.end());
        }
        forward += rate_difficulty(puzzle.grid, sought(puzzle))->fixations;
        const auto other = rate_difficulty(turned, words);
        backward += other->fixations;
        CHECK(part_named(*other, "backward words").value == 100);
    }
    CHECK(backward > forward);
}

TEST_CASE("the parts say how the words lie") {
    const LetteredGrid grid = lettered({"KALE", "XEXX", "XEXX", "XKXX"});
    std::vector<SoughtWord> words{{"kale", word_of("KALE"), Placement{{0, 0}, Direction::right}},
                                  {"keea", word_of("KEEA"), Placement{{3, 1}, Direction::up}}};
    const auto difficulty = rate_difficulty(grid, words);
    CHECK(part_named(*difficulty, "letters in the grid").value == 16);
    CHECK(part_named(*difficulty, "words").value == 2);
    CHECK(part_named(*difficulty, "length of words").value == 4);
    CHECK(part_named(*difficulty, "directions").value == 2);
    CHECK(part_named(*difficulty, "backward words").value == 50);
    CHECK(part_named(*difficulty, "words not in a row").value == 50);
    CHECK(part_named(*difficulty, "crossings").value == 1);
    for (const RatingPart& part : difficulty->parts) {
        CAPTURE(part.part);
        CHECK_FALSE(part.unit.empty());
        CHECK_FALSE(part.source.empty());
    }
}

// By the definition: filler all X (9 of 9), words with each letter once more: X 1 of 13 (A 3, E 4, K 3, L 2,
// X 1).
TEST_CASE("filler of other letters than the words differs from them by the bits of the definition") {
    const LetteredGrid grid = lettered({"KALE", "XEXX", "XEXX", "XKXX"});
    std::vector<SoughtWord> words{{"kale", word_of("KALE"), Placement{{0, 0}, Direction::right}},
                                  {"keea", word_of("KEEA"), Placement{{3, 1}, Direction::up}}};
    CHECK(part_named(*rate_difficulty(grid, words), "difference of filler and words").value ==
          Approx(std::log2(13.0)));
    // Filler that repeats the words' letters in their shares tells nothing.
    std::vector<SoughtWord> one{{"ab", word_of("AB"), Placement{{0, 0}, Direction::right}}};
    CHECK(part_named(*rate_difficulty(lettered({"AB", "BA"}), one), "difference of filler and words").value ==
          Approx(0).margin(1e-12));
}

TEST_CASE("levels have bounds, and what cannot be rated is refused") {
    CHECK(level_of(0) == Level::glance);
    CHECK(level_of(10) == Level::stroll);
    CHECK(level_of(59.9) == Level::search);
    CHECK(level_of(1e9) == Level::patience);
    CHECK(name(Level::patience) == "patience");
    CHECK_FALSE(rate_difficulty({a_to_z(), Grid({2001, 2000}, 0)}, {}));
    // Of one letter alone, words of hundreds are compared at every cell.
    CHECK_FALSE(rate_difficulty({a_to_z(), Grid({1500, 1500}, 0)},
                                std::vector<SoughtWord>{{"a", Letters(1'000, 0)}}));
    CHECK_THROWS_AS(rate_difficulty(lettered({"AB"}), std::vector<SoughtWord>{{"a", word_of("A")}}),
                    std::invalid_argument);
    CHECK(rate_difficulty(lettered({".."}), std::vector<SoughtWord>{{"ab", word_of("AB")}})->fixations == 0);
}
