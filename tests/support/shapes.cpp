#include "support/shapes.hpp"

#include <array>
#include <cmath>

#include "art/cubic.hpp"

namespace lode::test {

namespace {

// A smooth closed curve through the points.
Contour through(const std::vector<Point>& points) {
    const std::size_t count = points.size();
    const auto at = [&](std::size_t i) { return points[i % count]; };
    Contour contour{points[0], {}};
    for (std::size_t i = 0; i < count; ++i) {
        const Point out = (1.0 / 6) * (at(i + 1) - at(i + count - 1));
        const Point in = (1.0 / 6) * (at(i + 2) - at(i));
        contour.segments.push_back(Segment::cubic(at(i) + out, at(i + 1) - in, at(i + 1)));
    }
    return contour;
}

}  // namespace

Path rectangle(double left, double top, double right, double bottom) {
    return {{{{left, top},
              {Segment::line({right, top}), Segment::line({right, bottom}), Segment::line({left, bottom}),
               Segment::line({left, top})}}}};
}

double RandomShapes::between(double least, double most) {
    return least + (most - least) * (static_cast<double>(numbers_()) / 4294967296.0);
}

Contour RandomShapes::pebble(Point centre, double radius, int points) {
    std::vector<Point> corners;
    for (int i = 0; i < points; ++i) {
        const double angle = 6.283185307179586 * (i + between(-0.2, 0.2)) / points;
        const double away = radius * between(0.7, 1);
        corners.push_back({centre.x + away * std::cos(angle), centre.y + away * std::sin(angle)});
    }
    return through(corners);
}

Contour RandomShapes::scribble(Point centre, double reach, int points) {
    const auto anywhere = [&] {
        const double x = between(-reach, reach);
        return Point{centre.x + x, centre.y + between(-reach, reach)};
    };
    Contour contour{anywhere(), {}};
    for (int i = 0; i < points; ++i) {
        const Point one = anywhere(), other = anywhere(), to = i + 1 == points ? contour.start : anywhere();
        contour.segments.push_back(numbers_() % 3 == 0 ? Segment::line(to) : Segment::cubic(one, other, to));
    }
    return contour;
}

Contour RandomShapes::brush(Point start, double step, double width, int cubics) {
    std::vector<Point> one, other;
    double angle = between(0, 6.283185307179586), turn = 0;
    for (int i = 0; i < cubics / 2; ++i) {
        turn = 0.7 * turn + between(-0.15, 0.15);
        angle += turn;
        const Point way{std::cos(angle), std::sin(angle)};
        start = start + step * way;
        const double half = width * between(0.35, 0.5);
        one.push_back(start + half * Point{-way.y, way.x});
        other.push_back(start + half * Point{way.y, -way.x});
    }
    one.insert(one.end(), other.rbegin(), other.rend());
    return through(one);
}

std::vector<std::vector<Point>> rings(const Path& path, int parts_of_a_curve) {
    std::vector<std::vector<Point>> result;
    for (const Contour& contour : path.contours) {
        std::vector<Point> ring{contour.start};
        each_piece(contour, [&](const Cubic& c) {
            const int parts = c.straight ? 1 : parts_of_a_curve;
            for (int i = 1; i <= parts; ++i) ring.push_back(c.at(static_cast<double>(i) / parts));
        });
        ring.back() = ring.front();
        result.push_back(std::move(ring));
    }
    return result;
}

std::size_t segments(const Path& path) {
    std::size_t count = 0;
    for (const Contour& contour : path.contours) count += contour.segments.size();
    return count;
}

}  // namespace lode::test
