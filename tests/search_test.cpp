// The ways in which the finder searches against each other: the same copies in the same order, whatever the
// grid's size, the processor, the number of threads, and what makes a search hard.

#include <algorithm>
#include <atomic>
#include <catch2/catch.hpp>

#include <letterlode/find.hpp>

#include "random/random.hpp"
#include "support/every_means.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"

using namespace lode;
using namespace lode::test;

namespace {

struct Given {
    std::size_t word;
    Copy copy;
    friend bool operator==(const Given&, const Given&) = default;
};

std::vector<Given> given_by(const Matcher& matcher, const Grid& grid, const SearchMeans& means = {},
                            const SearchRules& rules = {}) {
    std::vector<Given> given;
    matcher.search_by(
        means, grid,
        [&](std::size_t word, const Copy& copy) {
            given.push_back({word, copy});
            return true;
        },
        rules);
    return given;
}

Grid random_grid(Size size, std::uint32_t letters, Random& random, std::uint32_t holes_in_hundred = 0) {
    Grid grid(size);
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column)
            grid[{row, column}] = random.below(100) < holes_in_hundred
                                      ? closed_cell
                                      : static_cast<Letter>(random.below(letters));
    return grid;
}

Letters random_word(std::size_t length, std::uint32_t letters, Random& random) {
    Letters word(length);
    for (Letter& letter : word) letter = static_cast<Letter>(random.below(letters));
    return word;
}

// Words of all lengths to `most`, palindromes and words of one letter among them.
std::vector<Letters> random_words(std::size_t count, std::size_t most, std::uint32_t letters,
                                  Random& random) {
    std::vector<Letters> words;
    while (words.size() < count) {
        Letters word = random_word(1 + random.below(static_cast<std::uint32_t>(most)), letters, random);
        if (random.below(8) == 0) std::copy(word.begin(), word.end(), word.rbegin());
        if (random.below(12) == 0) std::fill(word.begin(), word.end(), word.front());
        words.push_back(word);
    }
    return words;
}

// Writes words into the grid, wherever they fit, so that long ones are there to be found.
void hide(Grid& grid, const std::vector<Letters>& words, Random& random) {
    const auto [rows, columns] = grid.size();
    for (const Letters& word : words) {
        const Cell first{static_cast<int>(random.below(static_cast<std::uint32_t>(rows))),
                         static_cast<int>(random.below(static_cast<std::uint32_t>(columns)))};
        const Direction direction = all_directions[random.below(8)];
        if (!grid.inside(moved(first, direction, static_cast<int>(word.size()) - 1))) continue;
        for (std::size_t at = 0; at < word.size(); ++at)
            grid[moved(first, direction, static_cast<int>(at))] = word[at];
    }
}

bool in_order(const std::vector<Given>& given) {
    const auto key = [](const Given& one) {
        return std::tuple(one.copy.first.row, one.copy.first.column, one.copy.direction, one.copy.length,
                          one.word);
    };
    return std::is_sorted(given.begin(), given.end(),
                          [&](const Given& a, const Given& b) { return key(a) < key(b); });
}

void all_agree(const std::vector<Letters>& words, const Grid& grid) {
    const Matcher matcher(words);
    const auto expected = given_by(matcher, grid, {false, nullptr, 0});
    CHECK(in_order(expected));
    for (const Means& means : every_means()) {
        CAPTURE(means.name, grid.size().rows, grid.size().columns, words.size());
        REQUIRE(given_by(matcher, grid, means.means) == expected);
    }
}

}  // namespace

TEST_CASE("every means gives the same copies in the same order, in grids of any shape") {
    Random random(31);
    for (int round = 0; round < 40; ++round) {
        const Size size{1 + static_cast<int>(random.below(90)), 1 + static_cast<int>(random.below(150))};
        const std::uint32_t letters = 1 + random.below(26);
        Grid grid = random_grid(size, letters, random, random.below(2) * 10);
        const auto words = random_words(1 + random.below(60), 1 + random.below(40), letters, random);
        hide(grid, words, random);
        all_agree(words, grid);
    }
}

TEST_CASE("every means finds what the naive finder finds, in every set of directions") {
    Random random(32);
    for (unsigned set = 0; set < 256; ++set) {
        Directions directions;
        for (const Direction direction : all_directions)
            if ((set >> static_cast<unsigned>(direction) & 1) != 0) directions.insert(direction);
        const Grid grid = random_grid({6, 7}, 2, random);
        const auto words = random_words(12, 5, 2, random);
        // By cells: those of the placements in these directions that read as the word.
        std::set<std::pair<std::size_t, CellSet>> expected;
        for (std::size_t word = 0; word < words.size(); ++word)
            for (int row = 0; row < 6; ++row)
                for (int column = 0; column < 7; ++column)
                    for (const Direction direction : all_directions) {
                        const auto cells = cells_from({6, 7}, {row, column}, direction,
                                                      static_cast<int>(words[word].size()));
                        if (!directions.contains(direction) || cells.empty()) continue;
                        bool reads = true;
                        for (std::size_t at = 0; at < cells.size(); ++at)
                            reads = reads && grid[{cells[at].first, cells[at].second}] == words[word][at];
                        if (reads) expected.emplace(word, CellSet(cells.begin(), cells.end()));
                    }
        const Matcher matcher(words);
        for (const Means& means : every_means()) {
            SearchRules rules;
            rules.directions = directions;
            const auto given = given_by(matcher, grid, means.means, rules);
            std::set<std::pair<std::size_t, CellSet>> found;
            for (const auto& [word, copy] : given) {
                CHECK(directions.contains(copy.direction));
                CellSet cells;
                for (int at = 0; at < copy.length; ++at) {
                    const Cell cell = moved(copy.first, copy.direction, at);
                    cells.emplace(cell.row, cell.column);
                }
                found.emplace(word, cells);
            }
            CAPTURE(set, means.name, rows_of(grid));
            REQUIRE(found == expected);
            REQUIRE(given.size() == expected.size());
        }
    }
}

TEST_CASE(
    "lists of more than thirty-one letters, of letters with great numbers and of thousands of words are "
    "searched alike") {
    Random random(33);
    for (const std::uint32_t letters : {31u, 32u, 33u, 64u, 65u, 300u, 5'000u}) {
        Grid grid = random_grid({40, 50}, letters, random, 5);
        const auto words = random_words(200, 12, letters, random);
        hide(grid, words, random);
        all_agree(words, grid);
    }
    // Letters that only the grid has, and numbers at the end of what a letter can be.
    Grid grid = random_grid({30, 30}, 200, random);
    std::vector<Letters> words;
    for (int word = 0; word < 20; ++word) words.push_back(random_word(4, 3, random));
    words.push_back({static_cast<Letter>(max_letters - 1), 0});
    grid[{3, 3}] = static_cast<Letter>(max_letters - 1);
    grid[{3, 4}] = 0;
    hide(grid, words, random);
    all_agree(words, grid);

    Grid large = random_grid({300, 400}, 26, random);
    const auto many = random_words(4'000, 9, 26, random);
    hide(large, many, random);
    all_agree(many, large);
}

TEST_CASE("words longer than the part that is compared by codes are compared to their ends") {
    Random random(34);
    Grid grid = random_grid({120, 130}, 4, random);
    std::vector<Letters> words;
    for (std::size_t length = 28; length <= 100; ++length) {
        words.push_back(random_word(length, 4, random));
        // And one that only its last letter tells from it.
        words.push_back(words.back());
        words.back().back() = static_cast<Letter>((words.back().back() + 1) % 4);
    }
    hide(grid, words, random);
    all_agree(words, grid);
    CHECK_FALSE(given_by(Matcher(words), grid).empty());
}

TEST_CASE("where a grid is full of near copies the search changes its means and gives nothing twice") {
    const auto one_letter = [](std::size_t length) { return Letters(length, 0); };
    // One letter everywhere: by formula, rows R, columns C, a word of L equal letters stands in
    // R (C-L+1) + C (R-L+1) + 2 (R-L+1) (C-L+1) places, each of them once.
    const auto places = [](long long rows, long long columns, long long length) {
        const long long a = std::max(0LL, rows - length + 1), b = std::max(0LL, columns - length + 1);
        return rows * b + columns * a + 2 * a * b;
    };
    for (const std::size_t length : {5u, 100u, 300u, 301u}) {
        const Matcher matcher(std::vector<Letters>{one_letter(length)});
        long long copies = 0;
        matcher.search(Grid({300, 280}, 0), [&](std::size_t, const Copy&) { return ++copies, true; });
        CHECK(copies == places(300, 280, static_cast<long long>(length)));
    }
    all_agree({one_letter(200), one_letter(150), one_letter(4), {0, 1, 0, 0}}, Grid({160, 210}, 0));

    // As people make them, but for a part of one letter: the change comes in the middle, and another behind
    // it.
    Random random(35);
    Grid grid = random_grid({1'500, 90}, 20, random);
    for (int row = 100; row < 250; ++row)
        for (int column = 0; column < 90; ++column) grid[{row, column}] = 0;
    auto words = random_words(60, 8, 20, random);
    words.push_back(one_letter(80));
    words.push_back(one_letter(60));
    all_agree(words, grid);
    const Matcher matcher(words);
    const auto expected = given_by(matcher, grid, {false, nullptr, 0});
    for (const int block_rows : {1, 7, 16, 64})
        CHECK(given_by(matcher, grid, {true, nullptr, block_rows}) == expected);

    // Very many words with the same beginnings, and grids that repeat.
    std::vector<Letters> alike;
    for (int word = 0; word < 3'000; ++word) {
        alike.push_back({0, 1, 0, 1, 0, 1});
        const auto tail = random_word(5, 2, random);
        alike.back().insert(alike.back().end(), tail.begin(), tail.end());
    }
    Grid stripes({70, 80});
    for (int row = 0; row < 70; ++row)
        for (int column = 0; column < 80; ++column) stripes[{row, column}] = static_cast<Letter>(column % 2);
    all_agree(alike, stripes);
}

TEST_CASE("any number of threads gives the same copies in the same order, on the thread that asked") {
    Random random(36);
    Grid grid = random_grid({230, 170}, 8, random);
    const auto words = random_words(300, 9, 8, random);
    hide(grid, words, random);
    const Matcher matcher(words);
    const auto expected = given_by(matcher, grid, {false, nullptr, 0});
    for (const unsigned threads : {1u, 2u, 3u, 8u, 300u})
        for (const int block_rows : {1, 5, 40, 1'000}) {
            SearchRules rules;
            rules.control.threads = threads;
            CAPTURE(threads, block_rows);
            REQUIRE(given_by(matcher, grid, {true, nullptr, block_rows}, rules) == expected);
        }
    // Where the means change, too.
    const Matcher hard(std::vector<Letters>{Letters(90, 0), Letters(7, 0), {0, 1}});
    Grid half = grid;
    for (int row = 120; row < 230; ++row)
        for (int column = 0; column < 170; ++column) half[{row, column}] = 0;
    const auto expected_of_half = given_by(hard, half, {false, nullptr, 0});
    for (const unsigned threads : {1u, 4u}) {
        SearchRules rules;
        rules.control.threads = threads;
        CHECK(given_by(hard, half, {true, nullptr, 9}, rules) == expected_of_half);
    }
}

TEST_CASE("a search gives so many copies at the most, the first ones") {
    Random random(37);
    const Grid grid = random_grid({60, 60}, 3, random);
    const auto words = random_words(10, 4, 3, random);
    const Matcher matcher(words);
    const auto all = given_by(matcher, grid);
    REQUIRE(all.size() > 1'000);
    for (const Means& means : every_means())
        for (const unsigned threads : {1u, 3u})
            for (const std::size_t most :
                 {std::size_t{0}, std::size_t{1}, std::size_t{500}, all.size(), all.size() + 1}) {
                SearchRules rules;
                rules.most = most;
                rules.control.threads = threads;
                std::size_t calls = 0;
                const bool came_to_the_end = matcher.search_by(
                    means.means, grid, [&](std::size_t, const Copy&) { return ++calls, true; }, rules);
                CAPTURE(means.name, most);
                CHECK(calls == std::min(most, all.size()));
                CHECK(came_to_the_end == (most >= all.size()));
                const auto given = given_by(matcher, grid, means.means, rules);
                CHECK(std::equal(given.begin(), given.end(), all.begin()));
            }
}

TEST_CASE(
    "a search tells how far it is, stops when it is cancelled, and lets its caller's exceptions through") {
    Random random(38);
    const Grid grid = random_grid({300, 20}, 3, random);
    const Matcher matcher(random_words(10, 4, 3, random));
    for (const Means& means : every_means())
        for (const unsigned threads : {1u, 3u}) {
            CAPTURE(means.name, threads);
            SearchRules rules;
            rules.control.threads = threads;
            std::vector<int> told;
            int last_row = 0;
            rules.control.progress = [&](int done, int rows) {
                CHECK(rows == 300);
                CHECK(last_row < done);  // what was given so far begins above
                told.push_back(done);
            };
            const auto see_row = [&](std::size_t, const Copy& copy) {
                CHECK((told.empty() || copy.first.row >= told.back()));
                last_row = copy.first.row;
                return true;
            };
            CHECK(matcher.search_by(means.means, grid, see_row, rules));
            CHECK(std::is_sorted(told.begin(), told.end()));
            REQUIRE_FALSE(told.empty());
            CHECK(told.back() == 300);

            std::atomic<bool> cancelled = true;
            rules.control.cancel = &cancelled;
            rules.control.progress = nullptr;
            CHECK_FALSE(matcher.search_by(
                means.means, grid, [](std::size_t, const Copy&) { return true; }, rules));
            rules.control.cancel = nullptr;
            const auto fail = [](std::size_t, const Copy&) -> bool {
                throw std::runtime_error("seen enough");
            };
            CHECK_THROWS_AS(matcher.search_by(means.means, grid, fail, rules), std::runtime_error);
        }
}

TEST_CASE("the loops of every processor pick the same windows and encode the same letters") {
    Random random(39);
    const auto every = every_find_loops();
    REQUIRE(every.size() >= 1);
    CHECK(every.back()->name == "plain");
    for (int round = 0; round < 60; ++round) {
        const std::uint32_t letters = 1 + random.below(40);
        const auto list = random_words(1 + random.below(300), 10, letters, random);
        const SoughtWords words(list);
        const WindowIndex index(words, 3 + random.below(2));
        const Grid grid = random_grid({1, 300}, letters + 20, random, 5);
        const std::size_t count = 1 + random.below(299);
        const auto codes_by = [&](const FindLoops& loops) {
            std::vector<LetterCode> codes(300);
            loops.encode(grid.letters().data(), count, 300, words.code_of(), codes.data());
            codes.resize(count);
            return codes;
        };
        const auto expected_codes = codes_by(*every.back());
        std::vector<LetterCode> cells(4'000);
        for (LetterCode& cell : cells)
            cell = static_cast<LetterCode>(random.below(std::min(letters + 1, 32u)));
        const std::size_t taken = 1 + random.below(picked_cells);
        const std::vector<std::ptrdiff_t> steps{1, 1 + static_cast<std::ptrdiff_t>(random.below(500)), 31};
        const auto picked_by = [&](const FindLoops& loops) {
            std::vector<Picked> picked(steps.size());
            loops.pick(cells.data(), taken, steps, index.filter(), index.bits(), picked.data());
            std::vector<std::uint32_t> noted;
            for (const Picked& axis : picked) {
                noted.push_back(static_cast<std::uint32_t>(axis.count));
                noted.insert(noted.end(), axis.place, axis.place + axis.count);
                noted.insert(noted.end(), axis.rank, axis.rank + axis.count);
            }
            return noted;
        };
        for (const FindLoops* const loops : every) {
            CAPTURE(round, loops->name);
            CHECK(codes_by(*loops) == expected_codes);
            if (!index.empty()) CHECK(picked_by(*loops) == picked_by(*every.back()));
        }
    }
}
