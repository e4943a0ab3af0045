// Masks: the built-in shapes, masks drawn as text, and how long a word they hold.

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include <letterlode/grid.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/naive.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;

namespace {

std::vector<std::string> drawn(const Mask& mask) {
    std::vector<std::string> rows;
    for (int row = 0; row < mask.size().rows; ++row) {
        rows.emplace_back();
        for (int column = 0; column < mask.size().columns; ++column)
            rows.back() += mask.open({row, column}) ? 'O' : '.';
    }
    return rows;
}

// The share of the rectangle that is open on a grid so fine that it is the shape's area.
double area(Shape shape) {
    const Size fine{2000, 2000};
    return static_cast<double>(shape_mask(shape, fine).open_count()) / static_cast<double>(fine.cells());
}

Refusal refused_mask(const std::string& text) {
    const auto mask = read_mask(text, "shed.txt");
    REQUIRE_FALSE(mask);
    CHECK(mask.refusal().reason == Refusal::Reason::unusable);
    CHECK_FALSE(mask.refusal().advice.empty());
    return mask.refusal();
}

}  // namespace

TEST_CASE("shapes are the same on their left and right, at every size up to sixty by sixty") {
    for (const Shape shape : all_shapes)
        for (int rows = 1; rows <= 60; ++rows)
            for (int columns = 1; columns <= 60; ++columns) {
                const Mask mask = shape_mask(shape, {rows, columns});
                for (int row = 0; row < rows; ++row)
                    for (int column = 0; column < columns / 2; ++column)
                        if (mask.open({row, column}) != mask.open({row, columns - 1 - column})) {
                            CAPTURE(name(shape), rows, columns, drawn(mask));
                            REQUIRE(false);
                        }
            }
}

TEST_CASE("ellipses and diamonds are the same above and below as well") {
    for (const Shape shape : {Shape::rectangle, Shape::ellipse, Shape::diamond})
        for (int rows = 1; rows <= 40; ++rows)
            for (int columns = 1; columns <= 40; ++columns) {
                const auto mask = drawn(shape_mask(shape, {rows, columns}));
                CAPTURE(name(shape), mask);
                REQUIRE(mask == std::vector<std::string>(mask.rbegin(), mask.rend()));
            }
}

TEST_CASE("every shape has an open cell at every size") {
    for (const Shape shape : all_shapes)
        for (int rows = 1; rows <= 40; ++rows)
            for (int columns = 1; columns <= 40; ++columns) {
                CAPTURE(name(shape), rows, columns);
                REQUIRE(shape_mask(shape, {rows, columns}).open_count() > 0);
            }
}

TEST_CASE(
    "shapes touch the four sides of their grid, unless a heart is stretched or a star's arms are thin") {
    for (const Shape shape : all_shapes)
        for (int rows = 1; rows <= 40; ++rows)
            for (int columns = 1; columns <= 40; ++columns) {
                const auto mask = drawn(shape_mask(shape, {rows, columns}));
                CAPTURE(name(shape), mask);
                if (shape == Shape::heart && (rows != columns || rows < 5)) continue;
                REQUIRE(mask.front().find('O') != std::string::npos);
                if (shape == Shape::star) continue;
                REQUIRE(mask.back().find('O') != std::string::npos);
                const auto touches = [](const std::string& row) { return row.front() == 'O'; };
                REQUIRE(std::any_of(mask.begin(), mask.end(), touches));
            }
}

TEST_CASE("small shapes look like their names") {
    CHECK(drawn(shape_mask(Shape::heart, {9, 9})) == std::vector<std::string>{".OOO.OOO.",  //
                                                                              "OOOOOOOOO",  //
                                                                              "OOOOOOOOO",  //
                                                                              "OOOOOOOOO",  //
                                                                              ".OOOOOOO.",  //
                                                                              "..OOOOO..",  //
                                                                              "..OOOOO..",  //
                                                                              "...OOO...",  //
                                                                              "....O...."});
    CHECK(drawn(shape_mask(Shape::diamond, {5, 5})) == std::vector<std::string>{"..O..",  //
                                                                                ".OOO.",  //
                                                                                "OOOOO",  //
                                                                                ".OOO.",  //
                                                                                "..O.."});
    CHECK(drawn(shape_mask(Shape::ellipse, {5, 7})) == std::vector<std::string>{".OOOOO.",  //
                                                                                "OOOOOOO",  //
                                                                                "OOOOOOO",  //
                                                                                "OOOOOOO",  //
                                                                                ".OOOOO."});
    CHECK(drawn(shape_mask(Shape::star, {9, 9})) == std::vector<std::string>{"....O....",  //
                                                                             "....O....",  //
                                                                             "...OOO...",  //
                                                                             "OOOOOOOOO",  //
                                                                             ".OOOOOOO.",  //
                                                                             "..OOOOO..",  //
                                                                             "..OOOOO..",  //
                                                                             "..OOOOO..",  //
                                                                             "..O...O.."});
}

TEST_CASE("shapes have the areas that geometry gives them") {
    CHECK(area(Shape::rectangle) == 1);
    CHECK(area(Shape::ellipse) == Approx(M_PI / 4).margin(0.001));
    CHECK(area(Shape::diamond) == Approx(0.5).margin(0.001));
    // Ten triangles of sides 1 and 0.55 with 36 degrees between, over the rectangle around the five points:
    // 2 sin 72 wide, 1 + cos 36 high.
    const double star =
        5 * 0.55 * std::sin(M_PI / 5) / (2 * std::sin(2 * M_PI / 5) * (1 + std::cos(M_PI / 5)));
    CHECK(area(Shape::star) == Approx(star).margin(0.001));
    // The heart encloses an ellipse of its dent's depth and is enclosed by the rectangle; no closed form is
    // needed to see that it has a body.
    CHECK(area(Shape::heart) > 0.6);
    CHECK(area(Shape::heart) < 0.75);
}

TEST_CASE("every row of a shape but the star's feet and the heart's lobes is one run of open cells") {
    for (const Shape shape : {Shape::rectangle, Shape::ellipse, Shape::diamond, Shape::heart, Shape::star})
        for (const Size size : {Size{15, 15}, Size{19, 21}, Size{20, 40}, Size{40, 20}}) {
            const auto rows = drawn(shape_mask(shape, size));
            for (std::size_t row = 0; row < rows.size(); ++row) {
                const bool may_part = (shape == Shape::heart && row * 4 < rows.size()) ||
                                      (shape == Shape::star && row * 4 > rows.size() * 3);
                const auto first = rows[row].find('O');
                // The feet of a star may be narrower than a cell.
                if (first == std::string::npos && shape == Shape::star && row + 1 == rows.size()) continue;
                REQUIRE(first != std::string::npos);
                const bool whole = rows[row].find('.', first) > rows[row].rfind('O');
                CAPTURE(name(shape), rows, row);
                CHECK((whole || may_part));
            }
        }
}

TEST_CASE("shapes have names by which they are found") {
    for (const Shape shape : all_shapes) CHECK(shape_named(name(shape)) == shape);
    CHECK_FALSE(shape_named("Heart"));
    CHECK_FALSE(shape_named(""));
}

TEST_CASE(
    "the longest word that a mask holds is that of brute force, for every mask of up to three by four") {
    using enum Direction;
    const std::vector<Directions> sets{
        Directions::all(),          directions_of({right}),         directions_of({up}),
        directions_of({down_left}), directions_of({up_left, left}), Directions()};
    for (const Size size : {Size{1, 1}, Size{1, 6}, Size{5, 1}, Size{2, 3}, Size{3, 4}, Size{4, 3}})
        for (const Mask& mask : every_mask(size))
            for (const Directions directions : sets) {
                const int expected = naive_longest_run(mask, directions);
                if (longest_run(mask, directions) != expected) {
                    CAPTURE(drawn(mask), expected);
                    REQUIRE(longest_run(mask, directions) == expected);
                }
            }
}

TEST_CASE("the longest word of random masks is that of brute force in each direction alone") {
    Random random(77);
    for (int round = 0; round < 60; ++round) {
        Mask mask({1 + static_cast<int>(random.below(14)), 1 + static_cast<int>(random.below(14))});
        for (int row = 0; row < mask.size().rows; ++row)
            for (int column = 0; column < mask.size().columns; ++column)
                mask.set({row, column}, random.below(6) != 0);
        for (const Direction direction : all_directions) {
            CAPTURE(drawn(mask), name(direction));
            REQUIRE(longest_run(mask, directions_of({direction})) ==
                    naive_longest_run(mask, directions_of({direction})));
        }
    }
}

TEST_CASE("no cell outside a mask is open") {
    const Mask mask({2, 3});
    CHECK(mask.open({1, 2}));
    CHECK_FALSE(mask.open({2, 0}));
    CHECK_FALSE(mask.open({0, 3}));
    CHECK_FALSE(mask.open({-1, 0}));
    CHECK_FALSE(mask.open({0, -1}));
    CHECK(mask.open_count() == 6);
}

TEST_CASE("a mask drawn as text is read with its short lines closed at the end") {
    CHECK(drawn(read_mask("OO.\nO\n.O#\n\u00B7 O\n", "").value()) ==
          std::vector<std::string>{"OO.", "O..", ".O.", "..O"});
    CHECK(drawn(read_mask("\xEF\xBB\xBFO.\r\nXé\r\n\r\n", "").value()) ==
          std::vector<std::string>{"O.", "OO"});
    CHECK(drawn(read_mask("O\n\nO", "").value()) == std::vector<std::string>{"O", ".", "O"});
}

TEST_CASE("a mask that cannot be read is refused with its file, line and column") {
    Refusal refusal = refused_mask("OO\nO+\n");
    CHECK(refusal.line == 2);
    CHECK(refusal.source == "shed.txt");
    CHECK_THAT(refusal.message, Contains("shed.txt:2: ") && Contains("column 2") && Contains("'+'"));
    CHECK_THAT(refused_mask("...\n###\n").message, Contains("no open cell"));
    CHECK_THAT(refused_mask("").message, Contains("nothing"));
    CHECK(refused_mask("O\nO\xC3\n").line == 2);
    CHECK_THAT(refused_mask("O\tO").message, Contains("column 2"));
    CHECK_THAT(refused_mask(std::string(20'001, 'O')).message,
               Contains("shed.txt: ") && Contains("too large"));
    std::string tall;
    for (int row = 0; row < 20'001; ++row) tall += "O\n";
    CHECK_THAT(refused_mask(tall).message, Contains("too large"));
}
