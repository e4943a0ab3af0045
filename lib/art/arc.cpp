#include "art/arc.hpp"

#include <cmath>
#include <stdexcept>

#include "art/cubic.hpp"

namespace lode {

namespace {

struct Arc {
    Point centre;
    double radius;
};

// Three halvings bring a whole turn down to 45 degrees; one more is left for what rounding makes a hair
// wider.
void append_piece(Contour& contour, const Arc& arc, Point from, Point to, Point end, int most) {
    constexpr double cosine_of_45 =
        0.70710678;  // a hair below, so that 45 degrees with a rounding error stay whole
    const bool wide = cross(from, to) <= 0 || dot(from, to) < cosine_of_45;
    if (wide && most > 0) {
        const Point middle = half_way(from, to);
        const Point on_arc{arc.centre.x + arc.radius * middle.x, arc.centre.y + arc.radius * middle.y};
        append_piece(contour, arc, from, middle, on_arc, most - 1);
        append_piece(contour, arc, middle, to, end, most - 1);
        return;
    }
    const double handle = arc.radius * arc_handle(dot(from, to), cross(from, to));
    const Point start = contour.segments.empty() ? contour.start : contour.segments.back().to;
    contour.segments.push_back(Segment::cubic({start.x - handle * from.y, start.y + handle * from.x},
                                              {end.x + handle * to.y, end.y - handle * to.x}, end));
}

}  // namespace

double arc_handle(double cosine, double sine) {
    const double cosine_half = std::sqrt((1 + cosine) / 2);
    const double sine_half = sine / (2 * cosine_half);
    return 4 * sine_half / (3 * (1 + cosine_half));
}

Point half_way(Point from, Point to) {
    // The sum of both points half way along a short turn and the other way along a long one; in between,
    // where the sum is short, the difference does, turned back by a quarter.
    const double turn = cross(from, to);
    Point way{to.y - from.y, from.x - to.x};
    if (dot(from, to) > 0) {
        const double sign = turn > 0 ? 1 : -1;
        way = {sign * (from.x + to.x), sign * (from.y + to.y)};
    }
    const double size = length(way);
    return {way.x / size, way.y / size};
}

void append_arc(Contour& contour, Point centre, Point to) {
    const Point start = contour.segments.empty() ? contour.start : contour.segments.back().to;
    const Point from_centre{start.x - centre.x, start.y - centre.y};
    const Point to_centre{to.x - centre.x, to.y - centre.y};
    const double radius = length(from_centre);
    const double end_radius = length(to_centre);
    if (!(radius > 0) || !(end_radius > 0)) throw std::invalid_argument("an arc needs a radius");
    append_piece(contour, {centre, radius}, {from_centre.x / radius, from_centre.y / radius},
                 {to_centre.x / end_radius, to_centre.y / end_radius}, to, 4);
}

Path capsule(Point a, Point b, double radius) {
    const Point along{b.x - a.x, b.y - a.y};
    const double straight = length(along);
    const Point unit = straight > 0 ? Point{along.x / straight, along.y / straight} : Point{1, 0};
    const Point side{-unit.y * radius, unit.x * radius};
    Contour contour{{b.x - side.x, b.y - side.y}, {}};
    append_arc(contour, b, {b.x + side.x, b.y + side.y});
    if (straight > 0) contour.segments.push_back(Segment::line({a.x + side.x, a.y + side.y}));
    append_arc(contour, a, {a.x - side.x, a.y - side.y});
    if (straight > 0) contour.segments.push_back(Segment::line(contour.start));
    return {{std::move(contour)}};
}

}  // namespace lode
