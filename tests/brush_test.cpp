// Brushed strokes and rings: what they hold and stay inside by formula, crossings and thin places by
// polyclipping.

#include "art/brush.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <cstdio>
#include <set>
#include <stdexcept>
#include <string>

#include "art/ring.hpp"
#include "support/path_measures.hpp"

using namespace lode;

namespace {

constexpr double pi = 3.14159265358979323846;

struct Case {
    Point first;
    Point last;
    double radius;
    double least_radius;
    double least_feature;
};

// Words of one letter to twenty along the axes and diagonals of grids from coarse to fine, and what no grid
// asks for.
const std::vector<Case> cases{{{20, 20}, {57.5, 20}, 5.6, 4.1, 1},  {{20, 20}, {20, 20}, 5.6, 4.1, 1},
                              {{20, 150}, {120, 50}, 5.5, 4.25, 1}, {{90, 20}, {90, 92}, 4.2, 3.0, 1},
                              {{190, 20}, {10, 20}, 3.8, 3.0, 1},   {{0, 0}, {8, -8}, 3.4, 2.4, 1},
                              {{5, 5}, {65, 65}, 11, 7.5, 1},       {{5, 5}, {5, -80}, 6, 5.7, 1},
                              {{5, 5}, {45, 10}, 2, 1.2, 1},        {{0, 0}, {300, 170}, 16, 9, 2},
                              {{0, 0}, {4, 0}, 0.45, 0.33, 0.08},   {{-3, 2}, {-2.9, 2}, 5, 2, 0.8}};

constexpr std::uint64_t seeds = 3;

double off_line(Point p, Point a, Point b) {
    const double square = (b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y);
    const double along = (p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y);
    const double t = square > 0 ? std::clamp(along / square, 0.0, 1.0) : 0;
    return std::hypot(p.x - a.x - t * (b.x - a.x), p.y - a.y - t * (b.y - a.y));
}

// The least and the greatest distance of the outline's curves from the line.
std::pair<double, double> reach(const Path& path, Point a, Point b) {
    std::pair<double, double> found{1e300, 0};
    for (const Contour& contour : path.contours) {
        Point from = contour.start;
        for (const Segment& s : contour.segments) {
            for (int i = 0; i < 100; ++i) {
                const double t = i / 100.0;
                const double u = 1 - t;
                if (!s.curved) {
                    const double off = off_line({u * from.x + t * s.to.x, u * from.y + t * s.to.y}, a, b);
                    found = {std::min(found.first, off), std::max(found.second, off)};
                    continue;
                }
                const auto mix = [&](double p, double q, double r, double e) {
                    return u * u * u * p + 3 * u * u * t * q + 3 * u * t * t * r + t * t * t * e;
                };
                const double off = off_line({mix(from.x, s.control1.x, s.control2.x, s.to.x),
                                             mix(from.y, s.control1.y, s.control2.y, s.to.y)},
                                            a, b);
                found = {std::min(found.first, off), std::max(found.second, off)};
            }
            from = s.to;
        }
    }
    return found;
}

Path drawn(const Case& c, std::uint64_t seed) {
    return brush_stroke(c.first, c.last, c.radius, c.least_radius, seed, c.least_feature);
}

std::string digits(const Path& path) {
    std::string text;
    const auto add = [&](Point p) {
        char line[64];
        std::snprintf(line, sizeof line, "%.17g %.17g\n", p.x, p.y);
        text += line;
    };
    for (const Contour& contour : path.contours) {
        add(contour.start);
        for (const Segment& s : contour.segments) {
            add(s.control1);
            add(s.control2);
            add(s.to);
        }
    }
    return text;
}

}  // namespace

TEST_CASE("a brushed stroke covers its least capsule and stays inside its largest") {
    for (const Case& c : cases)
        for (std::uint64_t seed = 0; seed < 16 * seeds; ++seed) {
            const Path path = drawn(c, seed);
            REQUIRE(path.contours.size() == 1);
            const auto [least, most] = reach(path, c.first, c.last);
            CAPTURE(c.first.x, c.last.x, c.radius, seed);
            CHECK(least >= c.least_radius);
            CHECK(most <= c.radius);
            // An outline that keeps off the line could still pass it by on one side: it encloses at least the
            // capsule, clockwise to the eye.
            const double length = std::hypot(c.last.x - c.first.x, c.last.y - c.first.y);
            const auto capsule_area = [&](double radius) {
                return 2 * radius * length + pi * radius * radius;
            };
            CHECK(signed_area(path) > capsule_area(c.least_radius));
            CHECK(signed_area(path) < capsule_area(c.radius));
        }
}

TEST_CASE("a brushed stroke never crosses itself") {
    for (const Case& c : cases)
        for (std::uint64_t seed = 0; seed < seeds; ++seed) {
            CAPTURE(c.first.x, c.last.x, c.radius, seed);
            const double lattice = c.radius < 1 ? 1e-4 : 1e-3;
            CHECK(measures::overlap(drawn(c, seed)) < lattice);
        }
}

TEST_CASE("a brushed stroke has no bristle and no notch that film does not bear") {
    for (const Case& c : cases)
        for (std::uint64_t seed = 0; seed < seeds; ++seed) {
            const Path path = drawn(c, seed);
            CAPTURE(c.first.x, c.last.x, c.radius, seed);
            // All of them together: a square corner alone would lose (1 - pi/4) / 4, 0.054, of the square of
            // the disc's width.
            const double square = c.least_feature * c.least_feature;
            CHECK(measures::thin_strokes(path, c.least_feature) < 0.09 * square);
            CHECK(measures::thin_gaps(path, c.least_feature) < 0.09 * square);
        }
}

TEST_CASE("a brushed stroke is frayed where it ends more than where it starts") {
    // How far the outline goes to and fro along the stroke, within the middle of either end.
    double start = 0;
    double end = 0;
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        const Path path = brush_stroke({0, 0}, {60, 0}, 5.6, 4.1, seed);
        Point from = path.contours.front().start;
        for (const Segment& s : path.contours.front().segments) {
            if (std::abs(from.y) < 3 && std::abs(s.to.y) < 3)
                (from.x > 30 ? end : start) += std::abs(s.to.x - from.x);
            from = s.to;
        }
    }
    CHECK(start > 0);
    CHECK(end > 1.5 * start);
}

TEST_CASE("no two seeds draw the same stroke, and one seed always does") {
    std::set<std::string> strokes;
    for (std::uint64_t seed = 0; seed < 300; ++seed) {
        const auto once = digits(brush_stroke({0, 0}, {50, 0}, 5.6, 4.1, seed));
        CHECK(once == digits(brush_stroke({0, 0}, {50, 0}, 5.6, 4.1, seed)));
        strokes.insert(once);
    }
    CHECK(strokes.size() == 300);
}

TEST_CASE("the curves of a brushed stroke are few") {
    for (const double length : {37.5, 62.5, 112.5, 225.0, 2'000.0}) {
        const auto curves = brush_stroke({0, 0}, {length, 0}, 5.6, 4.1, 7).contours.front().segments.size();
        CHECK(curves >= 30);
        CHECK(curves <= 120);
    }
}

TEST_CASE("a brushed stroke is refused radii that leave it no room") {
    CHECK_THROWS_AS(brush_stroke({0, 0}, {9, 0}, 4, 4, 1), std::invalid_argument);
    CHECK_THROWS_AS(brush_stroke({0, 0}, {9, 0}, 4, 0, 1), std::invalid_argument);
    CHECK_THROWS_AS(brush_stroke({0, 0}, {9, 0}, 4, 3, 1, 0), std::invalid_argument);
}

TEST_CASE("seeds of words follow SplitMix64") {
    // [SplitMix64, as published by Vigna: the first outputs from seed 0; from memory]
    CHECK(seed_of(0, 0) == 0xe220a8397b1dcdafu);
    CHECK(seed_of(0, 1) == 0x6e789e6aa1b965f4u);
    CHECK(seed_of(0, 2) == 0x06c45d188009454fu);
    std::set<std::uint64_t> seen;
    for (std::uint64_t recipe = 0; recipe < 100; ++recipe)
        for (std::size_t word = 0; word < 100; ++word) seen.insert(seed_of(recipe, word));
    CHECK(seen.size() == 10'000);
}

TEST_CASE("a ring is a line of one breadth about a capsule") {
    for (const Point last : {Point{40, 0}, Point{30, 40}, Point{0, 0}}) {
        const Path path = ring({0, 0}, last, 5, 1.2);
        REQUIRE(path.contours.size() == 2);
        const double length = std::hypot(last.x, last.y);
        // The line's middle, 2 L + 2 pi (R - w/2), times its breadth.
        CHECK(signed_area(path) == Approx(1.2 * (2 * length + 2 * pi * 4.4)).epsilon(1e-5));
        CHECK(signed_area(path.contours[0]) > 0);
        CHECK(signed_area(path.contours[1]) < 0);
        CHECK(measures::thin_strokes(path, 1.19) < 5e-3);
        CHECK(measures::thin_strokes(path, 1.21) > 0.9 * signed_area(path));
    }
    CHECK_THROWS_AS(ring({0, 0}, {9, 0}, 2, 2), std::invalid_argument);
    CHECK_THROWS_AS(ring({0, 0}, {9, 0}, 2, 0), std::invalid_argument);
}
