// Ornaments: symmetry and bounds by their boxes, overlaps and thin places by polyclipping.

#include "art/ornament.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>

#include "art/spine.hpp"
#include "support/path_measures.hpp"

using namespace lode;

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr auto ornaments = {Ornament::leaf, Ornament::curl, Ornament::diamond};

struct Case {
    double size;
    double line;
    double gap;
};
// What is promised at the least, and panels from small to large.
const std::vector<Case> cases{{40, 1, 1}, {50, 1.25, 0.8}, {25, 0.5, 0.25}};

void check_for_film(const Path& path, const Case& c) {
    CHECK(measures::overlap(path) < 1e-3);
    // Separate pieces without holes.
    for (const Contour& contour : path.contours) CHECK(signed_area(contour) > c.line * c.line * 0.78);
    // Flattened curves cost each piece a little; where a stroke enters its knob, there are two crevices.
    const auto pieces = static_cast<double>(path.contours.size());
    CHECK(measures::thin_strokes(path, 0.96 * c.line) < 0.015 * c.line * c.line * pieces);
    CHECK(measures::thin_gaps(path, 0.96 * c.gap) < 8 * 0.025 * c.gap * c.gap);
}

// By how much two paths differ, in area.
double difference(const Path& a, const Path& b) {
    return measures::outside(a, b) + measures::outside(b, a);
}

Path swapped(Path path) {
    const auto swap = [](Point p) { return Point{p.y, p.x}; };
    for (Contour& contour : path.contours) {
        contour.start = swap(contour.start);
        for (Segment& s : contour.segments) s = {s.curved, swap(s.control1), swap(s.control2), swap(s.to)};
        contour = reversed(contour);
    }
    return path;
}

}  // namespace

TEST_CASE("a corner's flourish fills its square, is like itself across, and bears weeding") {
    for (const Ornament ornament : ornaments)
        for (const Case& c : cases) {
            CAPTURE(static_cast<int>(ornament), c.size, c.line, c.gap);
            const Path path = corner_flourish(ornament, c.size, c.line, c.gap);
            check_for_film(path, c);
            const Box box = bounds(path);
            CHECK(box.left == Approx(0).margin(1e-4));
            CHECK(box.top == Approx(0).margin(1e-4));
            CHECK(box.right <= c.size + 1e-4);
            CHECK(box.right > 0.9 * c.size);
            CHECK(box.bottom == Approx(box.right).margin(1e-4));
            CHECK(difference(path, swapped(path)) < 1e-2);
        }
}

TEST_CASE("a divider spans its width, is the same on the left and on the right, and bears weeding") {
    for (const Ornament ornament : ornaments)
        for (const Case& c : cases) {
            const double width = c.size * 75 / 40;
            CAPTURE(static_cast<int>(ornament), width, c.line, c.gap);
            const Path path = divider(ornament, width, c.line, c.gap);
            check_for_film(path, c);
            const Box box = bounds(path);
            CHECK(box.left == Approx(0).margin(1e-4));
            CHECK(box.right == Approx(width).margin(1e-4));
            CHECK(box.top < 0);
            CHECK(box.bottom > 0);
            CHECK(box.height() < 0.25 * width);
            CHECK(difference(path, mirrored(path, width)) < 1e-2);
        }
}

TEST_CASE(
    "a divider of curls is one line from roll to roll, and a diamond, no taller than a divider of leaves") {
    for (const double lines : {75.0, 100.0, 180.0, 400.0})
        for (const double gap : {0.3, 1.0}) {
            CAPTURE(lines, gap);
            const Path path = divider(Ornament::curl, lines, 1, gap);
            check_for_film(path, {lines, 1, gap});
            REQUIRE(path.contours.size() == 2);
            const Box line = bounds({{path.contours[0]}});
            CHECK(line.left == Approx(0).margin(1e-4));
            CHECK(line.right == Approx(lines).margin(1e-4));
            // The diamond stands in the middle, within the line's own height.
            const Box small = bounds({{path.contours[1]}});
            CHECK(small.centre().x == Approx(lines / 2));
            CHECK(small.top > line.top);
            CHECK(small.bottom <= bounds(path).bottom);
            CHECK(difference(path, mirrored(path, lines)) < 1e-2);
            CHECK(bounds(path).height() <= bounds(divider(Ornament::leaf, lines, 1, gap)).height());
        }
}

TEST_CASE("flourishes stand in the four corners of their box, each turned towards its own") {
    const Path one = corner_flourish(Ornament::leaf, 50, 1, 1);
    const Box box{10, 20, 190, 270};
    const auto four = in_corners(one, box);
    const Box own = bounds(one);
    for (const Path& path : four) {
        CHECK(signed_area(path) == Approx(signed_area(one)));
        CHECK(bounds(path).width() == Approx(own.width()));
    }
    CHECK(bounds(four[0]).left == Approx(10).margin(1e-4));
    CHECK(bounds(four[0]).top == Approx(20).margin(1e-4));
    CHECK(bounds(four[1]).right == Approx(190).margin(1e-4));
    CHECK(bounds(four[1]).top == Approx(20).margin(1e-4));
    CHECK(bounds(four[2]).right == Approx(190).margin(1e-4));
    CHECK(bounds(four[2]).bottom == Approx(270).margin(1e-4));
    CHECK(bounds(four[3]).left == Approx(10).margin(1e-4));
    CHECK(bounds(four[3]).bottom == Approx(270).margin(1e-4));
    CHECK(difference(mirrored(four[0], 200), four[1]) < 1e-2);
    CHECK(difference(mirrored(four[3], 200), four[2]) < 1e-2);
}

TEST_CASE("ornaments can be drawn at all sizes that are promised") {
    for (const Ornament ornament : ornaments)
        for (const double lines : {40.0, 47.0, 60.0, 100.0, 250.0, 1'000.0})
            for (const double gap : {0.05, 0.3, 0.7, 1.0}) {
                CAPTURE(static_cast<int>(ornament), lines, gap);
                CHECK(signed_area(corner_flourish(ornament, lines, 1, gap)) > 0);
                CHECK(signed_area(divider(ornament, lines * 75 / 40, 1, gap)) > 0);
            }
}

TEST_CASE("an ornament is refused a size that cannot hold it") {
    for (const Ornament ornament : ornaments) {
        CHECK_THROWS_AS(corner_flourish(ornament, 6, 1, 1), std::invalid_argument);
        CHECK_THROWS_AS(divider(ornament, 8, 1, 1), std::invalid_argument);
        CHECK_THROWS_AS(corner_flourish(ornament, 60, 0, 1), std::invalid_argument);
        CHECK_THROWS_AS(divider(ornament, 60, 1, 0), std::invalid_argument);
    }
}

TEST_CASE("a stroke along lines and turns has the area of its length times its breadth") {
    Spine spine({0, 0}, Spine::left);
    spine.straight(20);
    spine.turn(8, Turn::anticlockwise);
    spine.straight(5);
    spine.turn(4, Turn::clockwise);
    spine.turn(6, Turn::clockwise);
    // Left, down, left again, and up.
    CHECK(spine.end().x == Approx(-20 - 8 - 4 - 6));
    CHECK(spine.end().y == Approx(8 + 5 + 4 - 6));
    const double length = 25 + pi / 2 * (8 + 4 + 6);
    // Parallel edges: the breadth times the middle's length (Steiner), and a round end of the breadth at each
    // end.
    const Path path = spine.stroke(2, 1, 1);
    REQUIRE(path.contours.size() == 1);
    CHECK(signed_area(path) == Approx(2 * length + pi).epsilon(1e-5));
    CHECK(measures::overlap(path) < 1e-3);
    CHECK(measures::thin_strokes(path, 1.98) < 0.01);
    CHECK(measures::thin_strokes(path, 2.02) > 0.8 * signed_area(path));
    // A knob of twice the breadth, where the stroke ends straight, adds its circle less what the stroke
    // covers.
    Spine bar({0, 0}, Spine::left);
    bar.straight(20);
    const double reach = std::sqrt(4.0 - 1);
    const double covered = reach + 4 * std::asin(0.5);  // of the disc, within a half of the strip
    CHECK(signed_area(bar.stroke(2, 2, 2)) == Approx(2 * 20 + 2 * (4 * pi - covered)).epsilon(1e-5));
}
