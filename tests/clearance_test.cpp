// Clearance against closed forms: circles, capsules and squares whose distances are known.

#include "art/clearance.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>

using namespace lode;

namespace {

constexpr double promised = 0.01;

Path square(Point corner, double side) {
    return {{{corner,
              {Segment::line({corner.x + side, corner.y}), Segment::line({corner.x + side, corner.y + side}),
               Segment::line({corner.x, corner.y + side}), Segment::line(corner)}}}};
}

Path circle(Point centre, double radius) {
    return capsule(centre, centre, radius);
}

Path both(Path a, const Path& b) {
    a.contours.insert(a.contours.end(), b.contours.begin(), b.contours.end());
    return a;
}

}  // namespace

TEST_CASE("clearance inside a circle is what its radius leaves") {
    for (const double off : {0.0, 0.7, 2.0, 3.5, 5.0}) {
        CAPTURE(off);
        // R - (off + r)
        CHECK(clearance(circle({0, 0}, 5), circle({0.6 * off, 0.8 * off}, 1)) ==
              Approx(4 - off).margin(promised));
    }
    // A square's corners lie deepest in a circle's edge: R - s / sqrt 2.
    CHECK(clearance(circle({0, 0}, 5), square({-2, -2}, 4)) == Approx(5 - 2 * std::sqrt(2)).margin(promised));
}

TEST_CASE("a circle in a square comes nearest in the middle of its side, where neither has a corner") {
    // Turned so that the near points are no ends of curves: the square's sides run along 3-4-5.
    const Contour turned{
        {-1, -7},
        {Segment::line({7, -1}), Segment::line({1, 7}), Segment::line({-7, 1}), Segment::line({-1, -7})}};
    CHECK(clearance({{turned}}, circle({0, 0}, 3)) == Approx(2).margin(promised));
    CHECK(clearance({{turned}}, circle({0.6, -0.8}, 3)) == Approx(1).margin(promised));
}

TEST_CASE("what sticks out of a capsule is counted below nought") {
    const Path band = capsule({0, 0}, {40, 0}, 4);
    CHECK(clearance(band, square({20, 1}, 2)) == Approx(1).margin(promised));
    CHECK(clearance(band, square({20, 2}, 2)) == Approx(0).margin(promised));
    CHECK(clearance(band, square({20, 2.5}, 2)) == Approx(-0.5).margin(promised));
    // Past the end only the corners stick out: sqrt(2^2 + 4^2) - 4 for the one at (42, 4).
    CHECK(clearance(band, square({38, 0}, 4)) == Approx(4 - std::sqrt(20)).margin(promised));
    CHECK(clearance(band, circle({60, 0}, 1)) == Approx(-17).margin(promised));
    // The one letter that sticks out counts, however well the others are covered.
    CHECK(clearance(band, both(square({10, -1}, 2), circle({20, 3.8}, 1))) == Approx(-0.8).margin(promised));
}

TEST_CASE("a long side may stick out in its middle, where a band is notched") {
    // A notch 1 mm deep and 2 mm wide, over which a letter's upper side passes half a millimetre below the
    // edge.
    const Contour notched{
        {0, 0},
        {Segment::line({9, 0}), Segment::line({9, 1}), Segment::line({11, 1}), Segment::line({11, 0}),
         Segment::line({20, 0}), Segment::line({20, 20}), Segment::line({0, 20}), Segment::line({0, 0})}};
    CHECK(clearance({{notched}}, square({5, 0.5}, 10)) == Approx(-0.5).margin(promised));
    CHECK(clearance({{notched}}, square({5, 3}, 10)) == Approx(2).margin(promised));
}

TEST_CASE("a hole in a band is no part of it") {
    Path band = square({0, 0}, 20);
    band.contours.push_back(reversed(circle({10, 10}, 3).contours.front()));
    CHECK(clearance(band, circle({4, 10}, 1)) == Approx(2).margin(promised));
    CHECK(clearance(band, circle({10, 10}, 1)) == Approx(-2).margin(promised));
}

TEST_CASE("clearance does not depend on the place, and grows with the scale") {
    const Path band = capsule({0, 0}, {30, 40}, 5);
    const Path letter = circle({13, 15}, 2.5);
    const double here = clearance(band, letter);
    CHECK(clearance(transformed(band, 1, {800, -300}), transformed(letter, 1, {800, -300})) ==
          Approx(here).margin(2 * promised));
    CHECK(clearance(transformed(band, 3, {}), transformed(letter, 3, {})) ==
          Approx(3 * here).margin(4 * promised));
}

TEST_CASE("there is no clearance of nothing") {
    CHECK_THROWS_AS(clearance({}, circle({0, 0}, 1)), std::invalid_argument);
    CHECK_THROWS_AS(clearance(circle({0, 0}, 1), {}), std::invalid_argument);
}
