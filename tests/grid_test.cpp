// Cells, directions, sizes, and grids drawn as text.

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include <letterlode/grid.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"
#include "support/unicode_files.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;

namespace {

const Segmenter& upper() {
    static const Segmenter segmenter = segmenter_of("root");
    return segmenter;
}

Refusal refused_grid(const std::string& text) {
    const auto grid = read_grid(text, "bed.txt", upper());
    REQUIRE_FALSE(grid);
    CHECK(grid.refusal().reason == Refusal::Reason::unusable);
    CHECK_FALSE(grid.refusal().advice.empty());
    return grid.refusal();
}

}  // namespace

TEST_CASE("the eight directions lead to the eight neighbours, and each has its opposite") {
    std::set<std::pair<int, int>> neighbours;
    for (const Direction direction : all_directions) {
        const Cell there = moved({5, 5}, direction, 1);
        neighbours.emplace(there.row - 5, there.column - 5);
        CHECK(moved(there, opposite(direction), 1) == Cell{5, 5});
        CHECK(moved({5, 5}, direction, 3) == moved(moved({5, 5}, direction, 2), direction, 1));
        CHECK(opposite(opposite(direction)) == direction);
        CHECK(direction_named(name(direction)) == direction);
    }
    CHECK(neighbours.size() == 8);
    CHECK(neighbours.count({0, 0}) == 0);
}

TEST_CASE("directions go where their names say, rows downward and columns to the right") {
    const auto step_named = [](const std::string& name) { return step(direction_named(name).value()); };
    CHECK(step_named("right") == Cell{0, 1});
    CHECK(step_named("left") == Cell{0, -1});
    CHECK(step_named("down") == Cell{1, 0});
    CHECK(step_named("up") == Cell{-1, 0});
    CHECK(step_named("down-right") == Cell{1, 1});
    CHECK(step_named("up-left") == Cell{-1, -1});
    CHECK(step_named("down-left") == Cell{1, -1});
    CHECK(step_named("up-right") == Cell{-1, 1});
}

TEST_CASE("the forward directions of a script are half of all, and its mirror image has the others") {
    using enum Direction;
    CHECK(Directions::forward() == directions_of({right, down, down_right, up_right}));
    CHECK(Directions::forward(true) == directions_of({left, down, down_left, up_left}));
    for (const Direction direction : all_directions) CHECK(Directions::all().contains(direction));
    CHECK(Directions().empty());
}

TEST_CASE("directions are read from a list of names or from all") {
    using enum Direction;
    CHECK(read_directions("all").value() == Directions::all());
    CHECK(read_directions("right").value() == directions_of({right}));
    CHECK(read_directions("up-left,down,up-left").value() == directions_of({up_left, down}));
}

TEST_CASE("a list of directions that holds anything else is refused and the part is named") {
    for (const auto& [list, part] :
         std::vector<std::pair<std::string, std::string>>{{"right,east", "'east'"},
                                                          {"", "No direction"},
                                                          {",", "''"},
                                                          {"right,", "''"},
                                                          {"Right", "'Right'"},
                                                          {"right, down", "' down'"},
                                                          {"all,right", "'all'"},
                                                          {"down_right", "'down_right'"}}) {
        CAPTURE(list);
        const auto read = read_directions(list);
        REQUIRE_FALSE(read);
        CHECK(read.refusal().reason == Refusal::Reason::unusable);
        CHECK_THAT(read.refusal().message, Contains(part));
        CHECK_FALSE(read.refusal().advice.empty());
    }
}

TEST_CASE("sizes are columns by rows") {
    CHECK(read_size("15x12").value() == Size{12, 15});
    CHECK(read_size("1X1").value() == Size{1, 1});
    CHECK(read_size("20000x5000").value() == Size{5000, 20000});
    CHECK(Size{5000, 20000}.cells() == max_cells);
}

TEST_CASE("sizes without cells, too large, or that are no sizes are refused") {
    for (const auto& [text, fault] : std::vector<std::pair<std::string, std::string>>{
             {"0x3", "no cells"},
             {"3x0", "no cells"},
             {"-4x4", "no cells"},
             {"100000x100000", "too large"},
             {"20000x5001", "too large"},
             {"20001x1", "too large"},
             {"9223372036854775807x9223372036854775807", "too large"},
             {"9223372036854775808x1", "no size"},
             {"", "no size"},
             {"x", "no size"},
             {"15", "no size"},
             {"15x", "no size"},
             {"x15", "no size"},
             {"15x15x15", "no size"},
             {" 15x15", "no size"},
             {"15 x 15", "no size"},
             {"15.0x15", "no size"},
             {"+15x15", "no size"},
             {"0x10x10", "no size"},
             {std::string("15x15\0", 6), "no size"}}) {
        CAPTURE(text);
        const auto size = read_size(text);
        REQUIRE_FALSE(size);
        CHECK(size.refusal().reason == Refusal::Reason::unusable);
        CHECK_THAT(size.refusal().message, Contains(fault));
        CHECK_FALSE(size.refusal().advice.empty());
    }
}

TEST_CASE("two placements cover the same cells where the naive cells are the same") {
    const Size size{4, 4};
    std::vector<Placement> all;
    for (int row = 0; row < 4; ++row)
        for (int column = 0; column < 4; ++column)
            for (const Direction direction : all_directions)
                if (!cells_from(size, {row, column}, direction, 3).empty())
                    all.push_back({{row, column}, direction});
    for (const auto& a : all)
        for (const auto& b : all) {
            auto cells_a = cells_from(size, a.first, a.direction, 3);
            auto cells_b = cells_from(size, b.first, b.direction, 3);
            std::sort(cells_a.begin(), cells_a.end());
            std::sort(cells_b.begin(), cells_b.end());
            REQUIRE(same_cells(a, b, 3) == (cells_a == cells_b));
        }
}

TEST_CASE("a grid drawn as text is read as it was written") {
    Random random(8);
    const std::vector<std::string> letters{"A", "É", "Ω", "א", "LL", "Ñ", "7", "क्ष"};
    for (int round = 0; round < 50; ++round) {
        const Size size{1 + static_cast<int>(random.below(9)), 2 + static_cast<int>(random.below(9))};
        LetteredGrid grid{{}, Grid(size)};
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                grid.grid[{row, column}] =
                    random.below(5) == 0
                        ? closed_cell
                        : grid.alphabet.add(
                              letters[random.below(static_cast<std::uint32_t>(letters.size()))]);
        const std::string text = grid_text(grid.grid, grid.alphabet);
        CAPTURE(text);
        const auto read = read_grid(text, "", upper());
        REQUIRE(read);
        CHECK(read->grid.size() == size);
        CHECK(grid_text(read->grid, read->alphabet) == text);
    }
}

TEST_CASE("letters of a grid may stand with blanks between or without, in either case") {
    const std::string right = grid_text(read_grid("A B C\nD E F\n", "", upper())->grid,
                                        read_grid("A B C\nD E F\n", "", upper())->alphabet);
    for (const char* text :
         {"ABC\nDEF", "abc\ndef\n", "  A B C  \n D E F", "A\tB\tC\nD\tE\tF\n", "\n\nABC\nDEF\n\n \n",
          "\xEF\xBB\xBF"
          "ABC\r\nDEF\r\n",
          "A  B C\nD E   F", "ABC \nDEF"}) {
        CAPTURE(text);
        const auto grid = read_grid(text, "", upper());
        REQUIRE(grid);
        CHECK(grid_text(grid->grid, grid->alphabet) == right);
    }
}

TEST_CASE("where blanks part the cells, several characters fill one cell") {
    const auto grid = read_grid("LL A\nN LL", "", upper());
    REQUIRE(grid);
    CHECK(grid->grid.size() == Size{2, 2});
    CHECK(grid->alphabet.text(grid->grid[{0, 0}]) == "LL");
    CHECK(read_grid("LLA\nNLL", "", upper())->grid.size() == Size{2, 3});
}

TEST_CASE("three marks draw a closed cell") {
    const auto grid = read_grid("A.B\n#CD\nE\u00B7F", "", upper());
    REQUIRE(grid);
    CHECK(grid->grid[{0, 1}] == closed_cell);
    CHECK(grid->grid[{1, 0}] == closed_cell);
    CHECK(grid->grid[{2, 1}] == closed_cell);
    CHECK(grid_text(grid->grid, grid->alphabet) == "A . B\n. C D\nE . F\n");
}

TEST_CASE("a grid of more different letters than an alphabet has room for is refused") {
    std::string text;
    unsigned letters = 0;
    for (const auto& [first, last] :
         {std::pair{0x4E00u, 0x9FFBu}, std::pair{0x3400u, 0x4DBEu}, std::pair{0x20000u, 0x2A6DDu}})
        for (unsigned point = first; point <= last; ++point) {
            text += utf8_of(point);
            if (++letters % 1000 == 0) text += '\n';
        }
    REQUIRE(letters > max_letters + 1000);
    text.resize(text.rfind('\n'));
    const Refusal refusal = refused_grid(text);
    CHECK_THAT(refusal.message, Contains("65520 different letters"));
    CHECK(refusal.line == 66);
}

TEST_CASE("a grid that cannot be read is refused with its file, line, row and column") {
    Refusal refusal = refused_grid("ABC\nDE\nFGH\n");
    CHECK(refusal.line == 2);
    CHECK(refusal.source == "bed.txt");
    CHECK_THAT(refusal.message,
               Contains("bed.txt:2: ") && Contains("row 2") && Contains("2 cells") && Contains("3"));

    refusal = refused_grid("\n\nABC\nD!F\n");
    CHECK(refusal.line == 4);
    CHECK_THAT(refusal.message, Contains("row 2, column 2") && Contains("'!'"));

    refusal = refused_grid("ABC\n\nDEF\n");
    CHECK(refusal.line == 2);
    CHECK_THAT(refusal.message, Contains("blank line"));

    refusal = refused_grid(
        "ABC\nD\xFF"
        "F\n");
    CHECK(refusal.line == 2);
    CHECK_THAT(refusal.message, Contains("UTF-8"));

    CHECK_THAT(refused_grid("").message, Contains("bed.txt: ") && Contains("nothing"));
    CHECK_THAT(refused_grid(" \n\t\n").message, Contains("nothing"));
    CHECK_THAT(refused_grid(std::string("A\0B", 3)).message, Contains("column 2"));
    CHECK_THAT(refused_grid("A\x1B[31m").message, Contains("column 2"));
    CHECK_THAT(refused_grid("A☃").message, Contains("column 2") && Contains("☃"));
    CHECK_THAT(refused_grid(std::string(20'001, 'A')).message, Contains("too large"));
}
