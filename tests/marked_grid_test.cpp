// The grid as it is printed under an audit.

#include <catch2/catch.hpp>

#include <letterlode/puzzle.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"
#include "support/unicode_files.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;

namespace {

Audit with_strays(const std::vector<Copy>& copies) {
    Audit audit;
    audit.words.push_back({"Kale", 1, copies, copies, {}});
    return audit;
}

}  // namespace

TEST_CASE("rows and columns are numbered, and letters of findings stand in brackets") {
    Audit audit = with_strays({{{0, 0}, Direction::down_right, 2}});
    audit.avoided.push_back({"slug", {{1, 1}, Direction::right, 2}});
    CHECK(marked_grid_text(lettered({"ABC", "D.F", "GHI"}), audit, Marking::brackets) ==
          "   1  2  3\n"
          "1 [A] B  C\n"
          "2  D [.](F)\n"
          "3  G  H  I\n"
          "[A] in a stray copy   (A) in an avoided word\n");
    CHECK(marked_grid_text(lettered({"AB"}), {}, Marking::brackets) == "   1  2\n1  A  B\n");
}

// ECMA-48, 8.3.117: SELECT GRAPHIC RENDITION; 1 bold, 4 underlined, 7 negative image, 31 and 35 colours, 0
// default.
TEST_CASE("on a terminal letters of findings are coloured, and told apart without colour") {
    Audit audit = with_strays({{{0, 0}, Direction::right, 1}});
    audit.avoided.push_back({"slug", {{0, 1}, Direction::right, 1}});
    CHECK(marked_grid_text(lettered({"ABC"}), audit, Marking::colours) ==
          "   1  2  3\n"
          "1\x20\x1b[1;7;31m A \x1b[0m\x1b[1;4;35m B \x1b[0m C\n"
          "\x1b[1;7;31m A \x1b[0m in a stray copy   \x1b[1;4;35m A \x1b[0m in an avoided word\n");
}

TEST_CASE("every marked letter is one of a finding, in its row and under its column's number") {
    Random random(31);
    for (int round = 0; round < 60; ++round) {
        const Size size{1 + static_cast<int>(random.below(40)), 1 + static_cast<int>(random.below(50))};
        LetteredGrid grid{a_to_z(), Grid(size, 0)};
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                grid.grid[{row, column}] = static_cast<Letter>(random.below(26));
        std::vector<Copy> copies;
        CellSet expected;
        for (int count = 0; count < 3; ++count) {
            const Cell first{static_cast<int>(random.below(static_cast<std::uint32_t>(size.rows))),
                             static_cast<int>(random.below(static_cast<std::uint32_t>(size.columns)))};
            const Direction direction = all_directions[random.below(8)];
            const auto cells = cells_from(size, first, direction, 1 + static_cast<int>(random.below(5)));
            if (cells.empty()) continue;
            copies.push_back({first, direction, static_cast<int>(cells.size())});
            expected.insert(cells.begin(), cells.end());
        }
        const auto lines = split(marked_grid_text(grid, with_strays(copies), Marking::brackets), '\n');
        REQUIRE(static_cast<int>(lines.size()) >= size.rows + 1);
        CellSet marked;
        for (int row = 0; row < size.rows; ++row) {
            const std::string& line = lines[static_cast<std::size_t>(row) + 1];
            CHECK(std::stoi(line) == row + 1);
            for (std::size_t at = line.find('['); at != std::string::npos; at = line.find('[', at + 1)) {
                // The number above ends over the letter.
                const std::string& numbers = lines.front();
                std::size_t start = at + 1;
                while (start > 0 && numbers[start - 1] != ' ') --start;
                const int column = std::stoi(numbers.substr(start, at + 2 - start)) - 1;
                CHECK(line[at + 1] == static_cast<char>('A' + grid.grid[{row, column}]));
                marked.emplace(row, column);
            }
        }
        CHECK(marked == expected);
    }
}

TEST_CASE("wide letters and letters of several characters keep their columns") {
    LetteredGrid grid{{}, Grid({2, 2})};
    grid.grid[{0, 0}] = grid.alphabet.add("\u65E5");
    grid.grid[{0, 1}] = grid.alphabet.add("A");
    grid.grid[{1, 0}] = grid.alphabet.add("E\u0301");
    grid.grid[{1, 1}] = grid.alphabet.add("LL");
    CHECK(marked_grid_text(grid, {}, Marking::brackets) ==
          "    1   2\n"
          "1  \u65E5  A\n"
          "2  E\u0301   LL\n");
}

TEST_CASE(
    "of a grid that is too large to look at the parts around findings are shown, and what is left is "
    "counted") {
    LetteredGrid grid{a_to_z(), Grid({300, 400}, 0)};
    CHECK(marked_grid_text(grid, {}, Marking::brackets).empty());
    const std::string one =
        marked_grid_text(grid, with_strays({{{99, 199}, Direction::right, 2}}), Marking::brackets);
    CHECK_THAT(one, Contains("Kale, row 100, column 200, right to row 100, column 201:\n") &&
                        Contains("100  A  A [A][A] A  A\n") && Contains("[A] in a stray copy"));
    CHECK_THAT(split(one, '\n').at(1), Contains("200") && !Contains("199"));
    std::vector<Copy> many;
    for (int row = 0; row < 25; ++row) many.push_back({{row * 10, 3}, Direction::right, 3});
    many.push_back({{0, 0}, Direction::right, 400});
    const std::string some = marked_grid_text(grid, with_strays(many), Marking::brackets);
    CHECK_THAT(some, Contains("row 91, column 4, right") && !Contains("row 101, column 4, right") &&
                         Contains("16 findings more are not drawn: the table above has them.\n"));
}
