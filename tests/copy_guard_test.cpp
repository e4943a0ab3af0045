// The guard that place and fill ask after every letter, against a naive finder.

#include <set>

#include <catch2/catch.hpp>

#include "grid/copy_guard.hpp"
#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"

using namespace lode;
using namespace lode::test;

namespace {

using Seen = std::multiset<std::tuple<std::size_t, int, int, Direction>>;

Letters each_as_itself(std::size_t letters) {
    Letters same(letters);
    for (std::size_t letter = 0; letter < letters; ++letter) same[letter] = static_cast<Letter>(letter);
    return same;
}

Seen seen_through(const CopyGuard& guard, const Grid& grid, Cell cell) {
    Seen seen;
    CHECK(guard.through(grid, cell, [&](std::size_t word, const Placement& copy) {
        seen.emplace(word, copy.first.row, copy.first.column, copy.direction);
        return true;
    }));
    return seen;
}

// Every placement of every word that reads as the word, once its letters are seen as others, and covers the
// cell.
Seen naive_through(const std::vector<Letters>& words, const Letters& seen_as, const Grid& grid, Cell cell) {
    Seen seen;
    for (std::size_t word = 0; word < words.size(); ++word)
        for (int row = 0; row < grid.size().rows; ++row)
            for (int column = 0; column < grid.size().columns; ++column)
                for (const Direction direction : all_directions) {
                    bool covers = false;
                    const auto cells = cells_from(grid.size(), {row, column}, direction,
                                                  static_cast<int>(words[word].size()));
                    bool reads = !cells.empty();
                    for (std::size_t at = 0; at < cells.size() && reads; ++at) {
                        const Cell here{cells[at].first, cells[at].second};
                        covers = covers || here == cell;
                        reads = grid[here] < seen_as.size() && seen_as[grid[here]] == words[word][at];
                    }
                    if (reads && covers) seen.emplace(word, row, column, direction);
                }
    return seen;
}

// Of the whole grid as well: what is seen through any of its cells, each copy once.
void same_as_naive(const CopyGuard& guard, const std::vector<Letters>& words, const Letters& seen_as,
                   const Grid& grid) {
    Seen everywhere;
    CHECK(guard.everywhere(grid, [&](std::size_t word, const Placement& copy) {
        everywhere.emplace(word, copy.first.row, copy.first.column, copy.direction);
        return true;
    }));
    std::set<Seen::value_type> all;
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            if (grid[{row, column}] >= seen_as.size()) continue;
            const auto expected = naive_through(words, seen_as, grid, {row, column});
            all.insert(expected.begin(), expected.end());
            if (seen_through(guard, grid, {row, column}) != expected) {
                CAPTURE(rows_of(grid), row, column);
                REQUIRE(seen_through(guard, grid, {row, column}) == expected);
            }
        }
    if (everywhere != Seen(all.begin(), all.end())) {
        CAPTURE(rows_of(grid));
        REQUIRE(everywhere == Seen(all.begin(), all.end()));
    }
}

void same_as_naive(const std::vector<Letters>& words, const Letters& seen_as, const Grid& grid) {
    same_as_naive(CopyGuard(words, seen_as), words, seen_as, grid);
}

}  // namespace

TEST_CASE("the guard sees every copy through a cell, in every small grid over two letters and none") {
    const auto words = every_word(2, 2, 3);
    for (const Size size : {Size{1, 4}, Size{3, 2}, Size{2, 3}})
        every_grid(size, {0, 1, empty_cell},
                   [&](const Grid& grid) { same_as_naive(words, each_as_itself(2), grid); });
    every_grid({3, 3}, {0, 1}, [&](const Grid& grid) { same_as_naive(words, each_as_itself(2), grid); });
}

TEST_CASE("the guard sees every copy through a cell of random grids with closed and empty cells") {
    Random random(31);
    for (int round = 0; round < 40; ++round) {
        Grid grid({1 + static_cast<int>(random.below(8)), 1 + static_cast<int>(random.below(8))});
        const std::uint32_t letters = 2 + random.below(3);
        for (int row = 0; row < grid.size().rows; ++row)
            for (int column = 0; column < grid.size().columns; ++column) {
                const auto draw = random.below(10);
                grid[{row, column}] = draw == 0   ? closed_cell
                                      : draw == 1 ? empty_cell
                                                  : static_cast<Letter>(random.below(letters));
            }
        std::vector<Letters> words;
        for (int word = 0; word < 20; ++word) {
            words.emplace_back(2 + random.below(6));
            for (Letter& letter : words.back()) letter = static_cast<Letter>(random.below(letters));
        }
        CAPTURE(round);
        same_as_naive(words, each_as_itself(letters), grid);
    }
}

TEST_CASE("the guard reads letters as others, such as letters without their marks") {
    // Letters 2 and 3 are seen as 0 and 1, which words are written in; letter 4 stands in no word.
    const Letters seen_as{0, 1, 0, 1, 4};
    Random random(5);
    for (int round = 0; round < 30; ++round) {
        Grid grid({5, 5});
        for (int row = 0; row < 5; ++row)
            for (int column = 0; column < 5; ++column)
                grid[{row, column}] = static_cast<Letter>(random.below(5));
        same_as_naive(every_word(2, 2, 4), seen_as, grid);
    }
}

TEST_CASE("the guard of one alphabet sees the same copies through the letters of another") {
    // Words in letters 0 to 3; of the grid's letters some are seen as one of them, and some as none.
    const Letters seen_as{3, closed_cell, 1, 0, 1, 7, 2};
    Random random(9);
    for (int round = 0; round < 30; ++round) {
        std::vector<Letters> words;
        for (int word = 0; word < 15; ++word) {
            words.emplace_back(2 + random.below(4));
            for (Letter& letter : words.back()) letter = static_cast<Letter>(random.below(4));
        }
        Grid grid({6, 7});
        for (int row = 0; row < 6; ++row)
            for (int column = 0; column < 7; ++column)
                grid[{row, column}] = static_cast<Letter>(random.below(7));
        same_as_naive(CopyGuard(words, {}).seen_as(seen_as), words, seen_as, grid);
    }
}

TEST_CASE("the guard keeps its word with alphabets of more letters than it tells apart") {
    Random random(6);
    const std::size_t letters = 3000;
    std::vector<Letters> words;
    for (int word = 0; word < 60; ++word) {
        words.emplace_back(2 + random.below(3));
        for (Letter& letter : words.back()) letter = static_cast<Letter>(2990 + random.below(10));
    }
    Grid grid({9, 9});
    for (int row = 0; row < 9; ++row)
        for (int column = 0; column < 9; ++column)
            grid[{row, column}] = static_cast<Letter>(2990 + random.below(10));
    same_as_naive(words, each_as_itself(letters), grid);
}

TEST_CASE("a guard over no words sees nothing, and stops where its caller says so") {
    const Grid grid = grid_of({"AAA"});
    CHECK(seen_through(CopyGuard(), grid, {0, 0}).empty());
    CHECK(seen_through(CopyGuard(std::vector<Letters>{}, each_as_itself(1)), grid, {0, 0}).empty());
    const CopyGuard guard(std::vector<Letters>{word_of("AA")}, each_as_itself(1));
    int calls = 0;
    CHECK_FALSE(guard.through(grid, {0, 1}, [&](std::size_t, const Placement&) { return ++calls < 3; }));
    CHECK(calls == 3);
    CHECK(seen_through(guard, grid, {0, 1}).size() == 4);
}
