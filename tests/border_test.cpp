// Borders against closed forms, and against offsets by polyclipping.

#include "art/border.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <stdexcept>

#include "support/path_measures.hpp"

using namespace lode;

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr auto styles = {BorderStyle::line, BorderStyle::double_line, BorderStyle::rounded,
                         BorderStyle::notched, BorderStyle::dotted};

Path rectangle(double width, double height) {
    return {{{{3, 7},
              {Segment::line({3 + width, 7}), Segment::line({3 + width, 7 + height}),
               Segment::line({3, 7 + height}), Segment::line({3, 7})}}}};
}

// A door with a round arch, its sides straight.
Path arch() {
    Contour contour{{0, 50}, {}};
    append_arc(contour, {50, 50}, {100, 50});
    for (const Point p : {Point{100, 125}, Point{0, 125}, Point{0, 50}})
        contour.segments.push_back(Segment::line(p));
    return {{contour}};
}

// A corner that sticks out, and one that does not.
Path heart() {
    return {
        {{{50, 25},
          {Segment::cubic({60, -10}, {100, -5}, {100, 35}), Segment::cubic({100, 70}, {65, 95}, {50, 120}),
           Segment::cubic({35, 95}, {0, 70}, {0, 35}), Segment::cubic({0, -5}, {40, -10}, {50, 25})}}}};
}

// A wooden ring: its hole has an edge, too.
Path wreath() {
    Path path = capsule({60, 60}, {60, 60}, 60);
    path.contours.push_back(reversed(capsule({60, 60}, {60, 60}, 25).contours.front()));
    return path;
}

std::vector<Path> outlines() {
    return {rectangle(120, 45), arch(), heart(), wreath()};
}

std::vector<Point> centres(const Path& dots) {
    std::vector<Point> found;
    for (const Contour& dot : dots.contours) found.push_back(bounds({{dot}}).centre());
    return found;
}

}  // namespace

TEST_CASE("a border along a rectangle has the areas of its formulas") {
    const double w = 203.2 - 2 * 8;  // of what lies inside the inset
    const double h = 254 - 2 * 8;
    const double line = 1.5;
    const auto frame = [](double width, double height, double breadth) {
        return width * height - (width - 2 * breadth) * (height - 2 * breadth);
    };
    const Path outline = rectangle(203.2, 254);
    CHECK(signed_area(border(outline, BorderStyle::line, 8, line)) == Approx(frame(w, h, line)));
    // Twice the line, a gap of one and a half, the line.
    CHECK(signed_area(border(outline, BorderStyle::double_line, 8, line)) ==
          Approx(frame(w, h, 3) + frame(w - 10.5, h - 10.5, line)));
    // Four rounded corners take (4 - pi) r^2 off each contour.
    const double r = 7 * line;
    CHECK(signed_area(border(outline, BorderStyle::rounded, 8, line)) ==
          Approx(frame(w, h, line) - (4 - pi) * (r * r - (r - line) * (r - line))).epsilon(1e-6));
    // The line's middle: its sides between the notches, and four quarters of a circle about the corners; each
    // of the eight joints adds what lies in the angle of two edges and not in the middle line's strip.
    const double reach = std::sqrt((r + line) * (r + line) - line * line);
    const double quarter = 0.5 * (r + line) * (r + line) * std::asin(line / (r + line)) + 0.5 * line * reach;
    // Of a disc's quarter about the corner, what lies at least a line inside both sides.
    const double inner_corner = pi / 4 * (r + line) * (r + line) - 2 * quarter + line * line;
    CHECK(signed_area(border(outline, BorderStyle::notched, 8, line)) ==
          Approx(frame(w, h, line) - pi * r * r + 4 * inner_corner).epsilon(1e-6));
}

TEST_CASE("a border is one line of the outline and its hole, of true lines and arcs along a rectangle") {
    for (const BorderStyle style : {BorderStyle::line, BorderStyle::rounded, BorderStyle::notched}) {
        const Path path = border(rectangle(200, 250), style, 5, 1.2);
        REQUIRE(path.contours.size() == 2);
        CHECK(signed_area(path.contours[0]) > 0);
        CHECK(signed_area(path.contours[1]) < 0);
        // Four sides, and at most three curves a corner.
        for (const Contour& contour : path.contours) CHECK(contour.segments.size() <= 16);
    }
}

TEST_CASE("a border keeps to its inset, without overlaps, and bears weeding") {
    constexpr double inset = 5;
    constexpr double line = 1.4;
    for (const Path& outline : outlines())
        for (const BorderStyle style : styles) {
            const Path path = border(outline, style, inset, line);
            CAPTURE(static_cast<int>(style), signed_area(outline));
            REQUIRE(!path.empty());
            CHECK(signed_area(path) > 0);
            CHECK(measures::overlap(path) < 0.02);
            const auto inside = measures::grown(measures::polygons(outline, 64), -inset + 0.01);
            CHECK(measures::area(measures::less(measures::polygons(path), inside)) < 0.01);
            // Sharp corners lose a little of what a disc cannot reach; a square one 0.054 of the disc's width
            // squared.
            CHECK(measures::thin_strokes(path, 0.98 * line) < 8 * 0.054 * line * line + 0.3);
            CHECK(measures::thin_gaps(path, 1.4 * line) < 16 * 0.054 * 2 * line * line + 0.3);
            // And nothing strays from the edge: within seven lines and the deepest notch.
            const auto deep = measures::grown(measures::polygons(outline), -inset - 11 * line);
            CHECK(measures::area(measures::less(measures::polygons(path), deep)) ==
                  Approx(signed_area(path)).epsilon(1e-3));
        }
}

TEST_CASE("a border follows curved edges at one distance") {
    // The arch's own radius is 50: the border's outer contour has 45, its inner 43.6.
    const Path path = border(arch(), BorderStyle::line, 5, 1.4);
    const double outer = pi / 2 * 45 * 45 + 90 * 70;
    const double inner = pi / 2 * 43.6 * 43.6 + 87.2 * (70 - 1.4);
    CHECK(signed_area(path) == Approx(outer - inner).margin(0.01));
    // Both edges of a wreath.
    const Path round = border(wreath(), BorderStyle::line, 5, 1.4);
    REQUIRE(round.contours.size() == 4);
    CHECK(signed_area(round) ==
          Approx(pi * (55 * 55 - 53.6 * 53.6) + pi * (31.4 * 31.4 - 30 * 30)).margin(0.05));
}

TEST_CASE("dots stand in every corner of a rectangle and evenly between") {
    const double line = 1.5;
    const Path path = border(rectangle(200, 250), BorderStyle::dotted, 6, line);
    const auto dots = centres(path);
    // 200 - 2 x 7.5 = 185 and 235 between the corners' dots, in whole steps of about 4.5 lines, 6.75.
    REQUIRE(dots.size() == 2 * 27 + 2 * 35);
    CHECK(signed_area(path) == Approx(static_cast<double>(dots.size()) * pi * line * line).epsilon(1e-5));
    int corners = 0;
    for (std::size_t i = 0; i < dots.size(); ++i) {
        const Point a = dots[i];
        const Point b = dots[(i + 1) % dots.size()];
        const double step = std::hypot(a.x - b.x, a.y - b.y);
        CHECK(step == Approx(a.y == Approx(b.y) ? 185.0 / 27 : 235.0 / 35));
        const bool at_side = std::abs(a.x - 10.5) < 1e-9 || std::abs(a.x - 195.5) < 1e-9;
        const bool at_end = std::abs(a.y - 14.5) < 1e-9 || std::abs(a.y - 249.5) < 1e-9;
        CHECK((at_side || at_end));
        corners += at_side && at_end ? 1 : 0;
    }
    CHECK(corners == 4);
}

TEST_CASE("dots round a circle are evenly spaced all the way round") {
    const auto dots = centres(border(capsule({0, 0}, {0, 0}, 60), BorderStyle::dotted, 5, 1.5));
    // 2 pi 53.5 in steps of 6.75.
    REQUIRE(dots.size() == 50);
    for (std::size_t i = 0; i < dots.size(); ++i) {
        const Point a = dots[i];
        const Point b = dots[(i + 1) % dots.size()];
        CHECK(std::hypot(a.x - b.x, a.y - b.y) == Approx(2 * 53.5 * std::sin(pi / 50)).epsilon(0.002));
        CHECK(std::hypot(a.x, a.y) == Approx(53.5).margin(0.01));
    }
}

TEST_CASE("round edges are notched at even steps, the same on the left and on the right") {
    constexpr double line = 1.4;
    constexpr double r = 4 * line;
    // 2 pi 95 in steps of about 16 radii: the multiple of four that comes nearest.
    const Path circle = border(capsule({100, 100}, {100, 100}, 100), BorderStyle::notched, 5, line);
    REQUIRE(circle.contours.size() == 2);
    // Of two circles whose edges pass through each other's middle, as it were: a disc about a point of the
    // edge takes the lens of both (the circles' textbook formula).
    const auto lens = [](double large, double small) {
        const double d = large;
        const double a = std::acos((d * d + small * small - large * large) / (2 * d * small));
        const double b = std::acos((d * d + large * large - small * small) / (2 * d * large));
        return small * small * (a - std::sin(2 * a) / 2) + large * large * (b - std::sin(2 * b) / 2);
    };
    CHECK(signed_area(circle.contours[0]) == Approx(pi * 95 * 95 - 8 * lens(95, r)).epsilon(1e-5));

    Path oval = capsule({0, 0}, {0, 0}, 50);
    for (Contour& contour : oval.contours) {
        const auto wide = [](Point p) { return Point{2.5 * p.x, 2 * p.y}; };
        contour.start = wide(contour.start);
        for (Segment& s : contour.segments) s = {s.curved, wide(s.control1), wide(s.control2), wide(s.to)};
    }
    const Path soft =
        border(border(rectangle(200, 250), BorderStyle::rounded, 0, 3), BorderStyle::line, 0, 1);
    for (const Path& outline : {oval, Path{{soft.contours[0]}}, heart()}) {
        const Path path = border(outline, BorderStyle::notched, 5, line);
        CHECK(signed_area(Path{{path.contours[0]}}) <
              signed_area(Path{{border(outline, BorderStyle::line, 5, line).contours[0]}}) - 2 * r * r);
        const double both = 2 * bounds(outline).centre().x;
        CHECK(measures::outside(path, mirrored(path, both)) + measures::outside(mirrored(path, both), path) <
              0.5);
    }
    // The deepest of it is what content is kept away from.
    const auto inside =
        measures::grown(measures::polygons(capsule({100, 100}, {100, 100}, 100), 64),
                        -5 - border_lines(capsule({0, 0}, {0, 0}, 9), BorderStyle::notched) * line);
    CHECK(measures::area(measures::less(measures::polygons(circle), inside)) ==
          Approx(measures::area(measures::polygons(circle))).epsilon(1e-4));
    // What is too small for four notches gets a line.
    const Path button = capsule({0, 0}, {0, 0}, 15);
    CHECK(signed_area(border(button, BorderStyle::notched, 5, line)) ==
          Approx(signed_area(border(button, BorderStyle::line, 5, line))));
}

TEST_CASE("a border that does not fit is none, and a broken call is refused") {
    for (const BorderStyle style : styles) {
        CHECK(border(rectangle(10, 10), style, 6, 1).empty());
        CHECK(border(capsule({0, 0}, {0, 0}, 5), style, 6, 1).empty());
        CHECK_THROWS_AS(border({}, style, 5, 1), std::invalid_argument);
        CHECK_THROWS_AS(border(rectangle(100, 100), style, -1, 1), std::invalid_argument);
        CHECK_THROWS_AS(border(rectangle(100, 100), style, 5, 0), std::invalid_argument);
    }
}
