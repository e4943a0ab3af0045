// The finder against a naive one in small worlds, and against general string searches and formulas in large.

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>

#include <letterlode/find.hpp>

#include "random/random.hpp"
#include "support/every_means.hpp"
#include "support/grids.hpp"
#include "support/lines.hpp"
#include "support/naive.hpp"

using namespace lode;
using namespace lode::test;

namespace {

struct Found {
    std::vector<std::set<CellSet>> copies;  // by word
    std::size_t calls = 0;
};

Found found_in(const Matcher& matcher, const Grid& grid, std::size_t words, const Means& means = {}) {
    Found found{std::vector<std::set<CellSet>>(words), 0};
    matcher.search_by(means.means, grid,
                      [&](std::size_t word, const Copy& copy) {
                          found.copies.at(word).insert(cells_of(copy));
                          ++found.calls;
                          return true;
                      },
                      {});
    return found;
}

void same_as_naive(Size size, const Letters& cells, const std::vector<Letters>& words) {
    const Matcher matcher(words);
    const auto every_means_of_this_machine = every_means();
    every_grid(size, cells, [&](const Grid& grid) {
        std::vector<std::set<CellSet>> expected;
        std::size_t copies = 0;
        for (const Letters& word : words) copies += expected.emplace_back(naive_copies(grid, word)).size();
        for (const Means& means : every_means_of_this_machine) {
            const Found found = found_in(matcher, grid, words.size(), means);
            // Each copy once: a palindrome not from both its ends, a single letter not in eight directions.
            if (found.copies != expected || found.calls != copies) {
                CAPTURE(rows_of(grid), means.name);
                for (std::size_t word = 0; word < words.size(); ++word) {
                    CAPTURE(text_of(words[word]));
                    REQUIRE(found.copies[word] == expected[word]);
                }
                REQUIRE(found.calls == copies);
            }
        }
    });
}

Grid random_grid(Size size, std::uint32_t letters, Random& random) {
    Grid grid(size);
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column)
            grid[{row, column}] = static_cast<Letter>(random.below(letters));
    return grid;
}

}  // namespace

TEST_CASE(
    "every word of up to three letters is found in every grid of up to three by three over two letters") {
    const auto words = every_word(2, 1, 3);
    CHECK(words.size() == 14);
    for (int rows = 1; rows <= 3; ++rows)
        for (int columns = 1; columns <= 3; ++columns) same_as_naive({rows, columns}, word_of("AB"), words);
}

TEST_CASE("no word is read across a closed cell in any grid of up to two by four") {
    const auto words = every_word(2, 1, 4);
    same_as_naive({1, 4}, {0, 1, closed_cell, empty_cell}, words);
    same_as_naive({4, 1}, {0, 1, closed_cell}, words);
    same_as_naive({2, 4}, {0, 1, closed_cell}, words);
    same_as_naive({3, 3}, {0, closed_cell}, every_word(1, 1, 3));
}

TEST_CASE(
    "random grids of many sizes hold the same copies for the finder, the naive one and std::string::find") {
    Random random(2024);
    for (int round = 0; round < 60; ++round) {
        const Size size{1 + static_cast<int>(random.below(12)), 1 + static_cast<int>(random.below(12))};
        const std::uint32_t letters = 2 + random.below(4);
        Grid grid = random_grid(size, letters, random);
        for (int hole = 0; hole < 3; ++hole)
            grid[{static_cast<int>(random.below(static_cast<std::uint32_t>(size.rows))),
                  static_cast<int>(random.below(static_cast<std::uint32_t>(size.columns)))}] = closed_cell;
        std::vector<Letters> words;
        for (int word = 0; word < 30; ++word) {
            words.emplace_back(1 + random.below(5));
            for (Letter& letter : words.back()) letter = static_cast<Letter>(random.below(letters));
        }
        const Matcher matcher(words);
        const auto lines = lines_of({a_to_z(), grid});
        for (const Means& means : every_means()) {
            const Found found = found_in(matcher, grid, words.size(), means);
            for (std::size_t word = 0; word < words.size(); ++word) {
                CAPTURE(round, means.name, rows_of(grid), text_of(words[word]));
                REQUIRE(found.copies[word] == naive_copies(grid, words[word]));
                std::vector<std::string> letters_of_word;
                for (const Letter letter : words[word]) letters_of_word.push_back(a_to_z().text(letter));
                REQUIRE(found.copies[word] == copies_by_string_find(lines, letters_of_word));
            }
        }
    }
}

TEST_CASE("words beyond ASCII are found where ICU's string search finds them") {
    // Letters of one, two and three bytes, with marks, decomposed, and of two characters in one cell.
    const std::vector<std::string> texts{"E", "É", "e", "Ω", "א", "G\u0308", "क्षि", "LL", "L", "ß"};
    Alphabet alphabet;
    for (const auto& text : texts) alphabet.add(text);
    Random random(11);
    for (int round = 0; round < 40; ++round) {
        const LetteredGrid grid{
            alphabet,
            random_grid({8, 9}, static_cast<std::uint32_t>(texts.size() - 2 * random.below(4)), random)};
        const auto lines = lines_of(grid);
        std::vector<Letters> words;
        for (int word = 0; word < 12; ++word) {
            words.emplace_back(2 + random.below(2));
            for (Letter& letter : words.back()) letter = static_cast<Letter>(random.below(10));
        }
        const Found found = found_in(Matcher(words), grid.grid, words.size());
        for (std::size_t word = 0; word < words.size(); ++word) {
            std::vector<std::string> letters;
            for (const Letter letter : words[word]) letters.push_back(alphabet.text(letter));
            CAPTURE(round, letters);
            // L in a cell of its own beside L reads to a string search like LL in one cell: such words are
            // left to the naive finder.
            REQUIRE(found.copies[word] == naive_copies(grid.grid, words[word]));
            if (std::any_of(letters.begin(), letters.end(),
                            [](const auto& l) { return l == "L" || l == "LL"; }))
                continue;
            REQUIRE(found.copies[word] == copies_by_icu(lines, letters));
        }
    }
}

TEST_CASE("he, she and hers are found in ushers along each of the eight directions, and his is not") {
    // Aho and Corasick, "Efficient string matching", Communications of the ACM 18(6), 1975: in "ushers" she
    // and he end at letter 4, hers at letter 6.
    const std::vector<Letters> words{word_of("HE"), word_of("SHE"), word_of("HIS"), word_of("HERS")};
    const Matcher matcher(words);
    const Letters text = word_of("USHERS");
    for (const Direction direction : all_directions) {
        Grid grid({13, 13}, static_cast<Letter>('Z' - 'A'));
        const Cell start{6, 6};
        for (int at = 0; at < 6; ++at) grid[moved(start, direction, at)] = text[static_cast<std::size_t>(at)];
        for (const Means& means : every_means()) {
            std::map<std::size_t, std::vector<Cell>> ends;
            const auto note = [&](std::size_t word, const Copy& copy) {
                CHECK(copy.direction == direction);
                ends[word].push_back(copy.last());
                return true;
            };
            matcher.search_by(means.means, grid, note, {});
            CAPTURE(name(direction), means.name);
            CHECK(ends == std::map<std::size_t, std::vector<Cell>>{{0, {moved(start, direction, 3)}},
                                                                   {1, {moved(start, direction, 3)}},
                                                                   {3, {moved(start, direction, 5)}}});
        }
    }
}

TEST_CASE("copies come by their first cell in reading order, and a word in the list twice is found twice") {
    const std::vector<Letters> words{word_of("AB"), word_of("AB"), word_of("BA")};
    std::vector<std::pair<int, int>> firsts;
    std::vector<int> times(3);
    Matcher(words).search(grid_of({"ABA", "BAB"}), [&](std::size_t word, const Copy& copy) {
        firsts.emplace_back(copy.first.row, copy.first.column);
        ++times[word];
        return true;
    });
    CHECK(std::is_sorted(firsts.begin(), firsts.end()));
    CHECK(times[0] == times[1]);
    CHECK(times[0] == static_cast<int>(naive_copies(grid_of({"ABA", "BAB"}), word_of("AB")).size()));
}

TEST_CASE("a search stops where its caller has seen enough") {
    const std::vector<Letters> words{word_of("A")};
    int calls = 0;
    CHECK_FALSE(
        Matcher(words).search(grid_of({"AAA"}), [&](std::size_t, const Copy&) { return ++calls < 2; }));
    CHECK(calls == 2);
    CHECK(Matcher(words).search(grid_of({"BBB"}), [](std::size_t, const Copy&) { return false; }));
}

TEST_CASE("a matcher takes no words but no empty word") {
    CHECK(Matcher(std::vector<Letters>{}).search(grid_of({"AB"}), [](std::size_t, const Copy&) {
        return false;
    }));
    CHECK(Matcher(std::vector<Letters>{word_of("A")}).search(Grid(), [](std::size_t, const Copy&) {
        return false;
    }));
    CHECK_THROWS_AS(Matcher(std::vector<Letters>{word_of("A"), {}}), std::invalid_argument);
}

TEST_CASE("a palindrome is one copy from both its ends, and ANN stands in ANNA twice") {
    const auto grid = grid_of({"ANNA"});
    CHECK(found_in(Matcher(std::vector<Letters>{word_of("ANNA")}), grid, 1).calls == 1);
    CHECK(found_in(Matcher(std::vector<Letters>{word_of("ANN")}), grid, 1).copies[0] ==
          std::set<CellSet>{{{0, 0}, {0, 1}, {0, 2}}, {{0, 1}, {0, 2}, {0, 3}}});
}

TEST_CASE("a word can stand in as many places as the closed formulas say") {
    // Rows R, columns C, length L, a = max(R-L+1, 0), b = max(C-L+1, 0): right R b; right and down R b + C a;
    // with one diagonal R b + C a + a b; eight 2 (R b + C a + 2 a b). Checked by brute force elsewhere; the
    // values for 15x15 and 12x20 are such computed ones. Each place is written into an empty grid, and the
    // finder must see the word there once.
    const auto places = [](Size size, Directions directions, int length) {
        Letters word(static_cast<std::size_t>(length));
        for (std::size_t at = 0; at < word.size(); ++at) word[at] = static_cast<Letter>(at);
        const Matcher matcher(std::vector<Letters>{word});
        long long seen = 0;
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                for (const Direction direction : all_directions) {
                    const auto cells = cells_from(size, {row, column}, direction, length);
                    if (!directions.contains(direction) || cells.empty()) continue;
                    Grid grid(size);
                    for (std::size_t at = 0; at < cells.size(); ++at)
                        grid[{cells[at].first, cells[at].second}] = word[at];
                    matcher.search(grid, [&](std::size_t, const Copy& copy) {
                        if (copy == Copy{{row, column}, direction, length}) ++seen;
                        return true;
                    });
                }
        return seen;
    };
    using enum Direction;
    CHECK(places({15, 15}, directions_of({right}), 8) == 120);
    CHECK(places({15, 15}, directions_of({right, down}), 8) == 240);
    CHECK(places({15, 15}, directions_of({right, down, down_right}), 8) == 304);
    CHECK(places({15, 15}, Directions::forward(), 8) == 368);
    CHECK(places({15, 15}, Directions::all(), 8) == 736);
    CHECK(places({10, 10}, Directions::all(), 5) == 384);
    CHECK(places({12, 20}, Directions::all(), 7) == 912);

    for (int rows = 1; rows <= 6; ++rows)
        for (int columns = 1; columns <= 6; ++columns)
            for (int length = 2; length <= 6; ++length) {
                const long long a = std::max(rows - length + 1, 0);
                const long long b = std::max(columns - length + 1, 0);
                CAPTURE(rows, columns, length);
                CHECK(naive_placements({rows, columns}, Directions::all(), length) ==
                      2 * (rows * b + columns * a + 2 * a * b));
                // A palindrome has half as many copies: a grid of one letter holds them all.
                const Letters same(static_cast<std::size_t>(length), 0);
                CHECK(static_cast<long long>(
                          found_in(Matcher(std::vector<Letters>{same}), Grid({rows, columns}, 0), 1).calls) ==
                      rows * b + columns * a + 2 * a * b);
            }
}

TEST_CASE("the words of all lengths of a square grid are as many as in OEIS A035005 and A034720") {
    // A035005: 0 12 56 152 320 580; with the n^2 single letters added, A034720: 1 16 65 168 345 616. A grid
    // of one letter holds a word of each length and each place twice, from both its ends.
    const std::vector<std::size_t> a035005{0, 12, 56, 152, 320, 580};
    const std::vector<std::size_t> a034720{1, 16, 65, 168, 345, 616};
    for (int side = 1; side <= 6; ++side) {
        std::vector<Letters> words;
        for (int length = 2; length <= side; ++length) words.emplace_back(length, Letter{0});
        const Grid grid({side, side}, 0);
        const auto n = static_cast<std::size_t>(side);
        const std::size_t longer = 2 * found_in(Matcher(words), grid, words.size()).calls;
        CHECK(longer == a035005[n - 1]);
        CHECK(longer + found_in(Matcher(std::vector<Letters>{Letters{0}}), grid, 1).calls == a034720[n - 1]);
    }
}
