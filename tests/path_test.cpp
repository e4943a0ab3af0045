// Outlines against exact formulas. Figures marked with a name in brackets come from outside; the others are
// closed forms that stand beside their check.

#include <letterlode/path.hpp>

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "art/arc.hpp"

using namespace lode;

namespace {

constexpr double pi = 3.14159265358979323846;

Point at(Point from, const Segment& s, double t) {
    const double u = 1 - t;
    const auto mix = [&](double a, double b, double c, double d) {
        return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
    };
    if (!s.curved) return {from.x + t * (s.to.x - from.x), from.y + t * (s.to.y - from.y)};
    return {mix(from.x, s.control1.x, s.control2.x, s.to.x), mix(from.y, s.control1.y, s.control2.y, s.to.y)};
}

// The nearest and farthest that the contour's curves come to a radius about the centre.
struct Reach {
    double least = 1e300;
    double most = 0;
};
Reach reach_of(const Contour& contour, Point centre) {
    Reach reach;
    Point from = contour.start;
    for (const Segment& s : contour.segments) {
        for (int i = 0; i <= 500; ++i) {
            const Point p = at(from, s, i / 500.0);
            const double distance = std::hypot(p.x - centre.x, p.y - centre.y);
            reach.least = std::min(reach.least, distance);
            reach.most = std::max(reach.most, distance);
        }
        from = s.to;
    }
    return reach;
}

Path curve_closed_by_a_line() {
    return {{{{0, 0}, {Segment::cubic({0, 1}, {1, 1}, {1, 0}), Segment::line({0, 0})}}}};
}

}  // namespace

TEST_CASE("area and bounds of a cubic are those of the curve, not of its controls") {
    // The cubic (0,0) (0,1) (1,1) (1,0) holds 0.6 above its chord (integrated by another program) and rises
    // to 3/4.
    const Path path = curve_closed_by_a_line();
    CHECK(std::abs(signed_area(path)) == Approx(0.6).epsilon(1e-14));
    const Box box = bounds(path);
    CHECK(box.left == 0);
    CHECK(box.right == 1);
    CHECK(box.top == 0);
    CHECK(box.bottom == Approx(0.75).epsilon(1e-14));
}

TEST_CASE("bounds hold every point of a random curve and touch it on all four sides") {
    std::mt19937 random(20);
    const auto coordinate = [&] { return static_cast<double>(random() % 2000) / 100 - 10; };
    const auto point = [&] {
        const double x = coordinate();
        return Point{x, coordinate()};
    };
    for (int round = 0; round < 500; ++round) {
        const Point start = point();
        const Point one = point();
        const Point two = point();
        const Segment s = Segment::cubic(one, two, point());
        const Box box = bounds({{{start, {s}}}});
        Box seen{1e300, 1e300, -1e300, -1e300};
        for (int i = 0; i <= 4000; ++i) {
            const Point p = at(start, s, i / 4000.0);
            seen = {std::min(seen.left, p.x), std::min(seen.top, p.y), std::max(seen.right, p.x),
                    std::max(seen.bottom, p.y)};
        }
        CHECK(box.left == Approx(seen.left).margin(2e-5));
        CHECK(box.top == Approx(seen.top).margin(2e-5));
        CHECK(box.right == Approx(seen.right).margin(2e-5));
        CHECK(box.bottom == Approx(seen.bottom).margin(2e-5));
    }
}

TEST_CASE("an empty path has no bounds") {
    CHECK_THROWS_AS(bounds(Path{}), std::invalid_argument);
}

TEST_CASE("a quarter circle has the known handle and the known radial error") {
    // k = 4/3 (sqrt 2 - 1) = 0.5522847498 and a largest radial error of 2.7253e-4, never inside: the usual
    // figures of cubic arcs, computed by another program; so are those of 45 degrees, k = 0.2652164898
    // and 4.2455e-6.
    CHECK(arc_handle(0, 1) == Approx(0.5522847498).epsilon(1e-9));
    CHECK(arc_handle(std::sqrt(0.5), std::sqrt(0.5)) == Approx(0.2652164898).epsilon(1e-9));

    const double k = arc_handle(0, 1);
    const Contour quarter{{1, 0}, {Segment::cubic({1, k}, {k, 1}, {0, 1})}};
    const Reach reach = reach_of(quarter, {0, 0});
    CHECK(reach.most - 1 == Approx(2.7253e-4).epsilon(1e-3));
    CHECK(reach.least > 1 - 1e-12);
}

TEST_CASE("a whole circle is eight curves that are never inside and at most 4.2455e-6 outside") {
    const Path circle = capsule({3, 4}, {3, 4}, 1);
    REQUIRE(circle.contours.size() == 1);
    CHECK(circle.contours.front().segments.size() == 8);
    const Reach reach = reach_of(circle.contours.front(), {3, 4});
    CHECK(reach.most - 1 == Approx(4.2455e-6).epsilon(1e-2));
    CHECK(reach.least > 1 - 1e-12);
    CHECK(signed_area(circle) == Approx(pi).epsilon(5e-6));
}

TEST_CASE("an arc of any sweep keeps to its circle, turns clockwise to the eye and ends where it was told") {
    for (int degrees = 1; degrees <= 360; ++degrees)
        for (const int from : {0, 37, 90, 200, 315}) {
            const double start = from * pi / 180;
            const double end = (from + degrees) * pi / 180;
            const Point centre{2, -1};
            const auto on_circle = [&](double angle) {
                return Point{centre.x + 5 * std::cos(angle), centre.y + 5 * std::sin(angle)};
            };
            const Point to = degrees == 360 ? on_circle(start) : on_circle(end);
            Contour contour{on_circle(start), {}};
            append_arc(contour, centre, to);
            CAPTURE(degrees, from);
            CHECK(contour.segments.back().to == to);
            CHECK(contour.segments.size() >= static_cast<std::size_t>((degrees + 44) / 45));
            const Reach reach = reach_of(contour, centre);
            CHECK(reach.least > 5 - 1e-11);
            CHECK(reach.most < 5 * (1 + 4.3e-6));
            // Closed over the centre it is a sector, whose area tells sweep and sense.
            contour.segments.push_back(Segment::line(centre));
            contour.segments.push_back(Segment::line(contour.start));
            CHECK(signed_area(contour) == Approx(25.0 / 2 * degrees * pi / 180).epsilon(5e-6));
        }
}

TEST_CASE("a capsule has the area of a stadium, whatever its direction") {
    // Straight 40, radius 15: area 1906.8583470577 (computed by another program; 2 r 40 + pi r^2).
    for (const Point b :
         {Point{40, 0}, Point{0, -40}, Point{24, 32}, Point{-28.284271247461902, 28.284271247461902}}) {
        const Path stadium = capsule({0, 0}, b, 15);
        CHECK(signed_area(stadium) == Approx(1906.8583470577).epsilon(3e-6));
    }
    const Box box = bounds(capsule({10, 10}, {50, 10}, 15));
    CHECK(box.left == Approx(-5));
    CHECK(box.right == Approx(65));
    CHECK(box.top == Approx(-5));
    CHECK(box.bottom == Approx(25));
}

TEST_CASE("mirroring keeps areas and orientations, and twice is as if never") {
    Path path = capsule({10, 10}, {50, 30}, 5);
    path.contours.push_back(reversed(capsule({20, 15}, {30, 20}, 2).contours.front()));
    const Path other = mirrored(path, 200);
    for (std::size_t i = 0; i < path.contours.size(); ++i)
        CHECK(signed_area(other.contours[i]) == Approx(signed_area(path.contours[i])).epsilon(1e-12));
    CHECK(signed_area(path.contours[0]) > 0);
    CHECK(signed_area(path.contours[1]) < 0);
    CHECK(bounds(other).left == Approx(200 - bounds(path).right));
    const Box back = bounds(mirrored(other, 200));
    CHECK(back.left == Approx(bounds(path).left));
    CHECK(back.right == Approx(bounds(path).right));
}

TEST_CASE("an area far from the origin loses no digits") {
    const Path near = capsule({0, 0}, {1, 0}, 0.5);
    const Path far = transformed(near, 1, {1e6, -1e6});
    CHECK(signed_area(far) == Approx(signed_area(near)).epsilon(1e-9));
}
