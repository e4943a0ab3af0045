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
