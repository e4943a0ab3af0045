// The built-in outlines. All but the hexagon are drawn as a right half, from the middle of the top clockwise
// to the middle of the bottom, and given a left half that mirrors it to the last bit.
//
// The heart is the curve x = 16 sin^3 t, y = 13 cos t - 5 cos 2t - 2 cos 3t - cos 4t. Its points and its
// derivatives are polynomials in cos t and sin t, which come from halving right angles with square roots: no
// sine or cosine of the C library decides a point. Pieces of 1/128 of a turn with the true derivatives at
// their ends stay within 2e-5 of a curve 32 units wide, so 0.1 micrometres on an 8 in heart.

#include "art/blank_shapes.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

#include "art/arc.hpp"

namespace lode {

namespace {

// A right half, in a system of its own: from the axis, where x is 0, back to the axis.
struct Half {
    Point start;
    std::vector<Segment> segments;

    void line(Point to) { segments.push_back(Segment::line(to)); }
};

// Stretched so that the whole fills the size, and mirrored.
Contour whole(const Half& half, BlankSize size) {
    const Box box = bounds({{Contour{half.start, half.segments}}});
    const double across = size.width_mm / 2 / box.right;
    const double down = size.height_mm / box.height();
    const auto right = [&](Point p) {
        // The ends of the box are met exactly, whatever rounding does to the products.
        const double y = p.y == box.bottom ? size.height_mm : (p.y - box.top) * down;
        return Point{p.x == box.right ? size.width_mm : size.width_mm / 2 + p.x * across, y};
    };
    Contour contour{right(half.start), {}};
    for (const Segment& s : half.segments)
        contour.segments.push_back({s.curved, right(s.control1), right(s.control2), right(s.to)});
    const auto left = [&](Point p) { return Point{size.width_mm - p.x, p.y}; };
    for (std::size_t i = half.segments.size(); i-- > 0;) {
        const Segment s = contour.segments[i];
        const Point to = i == 0 ? contour.start : contour.segments[i - 1].to;
        contour.segments.push_back({s.curved, left(s.control2), left(s.control1), left(to)});
    }
    return contour;
}

Half rectangle() {
    Half half{{0, 0}, {}};
    half.line({1, 0});
    half.line({1, 1});
    half.line({0, 1});
    return half;
}

// From the top of a circle to its bottom.
Half half_circle() {
    Contour arc{{0, -1}, {}};
    append_arc(arc, {0, 0}, {1, 0});
    append_arc(arc, {0, 0}, {0, 1});
    return {arc.start, arc.segments};
}

Half rounded(BlankSize size) {
    const double w = size.width_mm / 2;
    const double h = size.height_mm;
    const double r = std::min(size.width_mm, size.height_mm) / 10;
    Contour contour{{0, 0}, {Segment::line({w - r, 0})}};
    append_arc(contour, {w - r, r}, {w, r});
    contour.segments.push_back(Segment::line({w, h - r}));
    append_arc(contour, {w - r, h - r}, {w - r, h});
    contour.segments.push_back(Segment::line({0, h}));
    return {contour.start, contour.segments};
}

Half star() {
    // Cosine and sine of 72 and 36 degrees, and the inner radius of the pentagram: all of root 5.
    const double root = std::sqrt(5.0);
    const double c72 = (root - 1) / 4, s72 = std::sqrt(10 + 2 * root) / 4;
    const double c36 = (root + 1) / 4, s36 = std::sqrt(10 - 2 * root) / 4;
    const double inner = (3 - root) / 2;
    Half half{{0, -1}, {}};
    half.line({inner * s36, -inner * c36});
    half.line({s72, -c72});
    half.line({inner * s72, inner * c72});
    half.line({s36, c36});
    half.line({0, inner});
    return half;
}

// Unit vectors (cos t, sin t) for t from 0 to half a turn in 2^n steps.
void append_directions(std::vector<Point>& directions, Point from, Point to, int halvings) {
    if (halvings > 0) {
        const Point middle = half_way(from, to);
        append_directions(directions, from, middle, halvings - 1);
        append_directions(directions, middle, to, halvings - 1);
    } else {
        directions.push_back(to);
    }
}

struct Moving {
    Point at;
    Point by;  // a unit of t
};

Moving on_heart(Point direction) {
    const double c = direction.x, s = direction.y;
    const double c2 = 2 * c * c - 1, s2 = 2 * s * c;
    const double c3 = c * c2 - s * s2, s3 = s * c2 + c * s2;
    const double c4 = 2 * c2 * c2 - 1, s4 = 2 * s2 * c2;
    return {{16 * s * s * s, -(13 * c - 5 * c2 - 2 * c3 - c4)},
            {48 * s * s * c, 13 * s - 10 * s2 - 6 * s3 - 4 * s4}};
}

Half heart() {
    constexpr int halvings = 5;  // of each quarter: 64 pieces for the half
    constexpr double step = 3.14159265358979323846 / 64;
    std::vector<Point> directions{{1, 0}};
    append_directions(directions, {1, 0}, {0, 1}, halvings);
    append_directions(directions, {0, 1}, {-1, 0}, halvings);
    Moving from = on_heart(directions[0]);
    Half half{from.at, {}};
    for (std::size_t i = 1; i < directions.size(); ++i) {
        const Moving to = on_heart(directions[i]);
        half.segments.push_back(
            Segment::cubic({from.at.x + from.by.x * step / 3, from.at.y + from.by.y * step / 3},
                           {to.at.x - to.by.x * step / 3, to.at.y - to.by.y * step / 3}, to.at));
        from = to;
    }
    return half;
}

// Two corners at the sides, as a nut lies on a table.
Contour hexagon(BlankSize size) {
    const double w = size.width_mm, h = size.height_mm;
    Contour contour{{w / 4, 0}, {}};
    for (const Point to : {Point{w - w / 4, 0}, Point{w, h / 2}, Point{w - w / 4, h}, Point{w / 4, h},
                           Point{0, h / 2}, Point{w / 4, 0}})
        contour.segments.push_back(Segment::line(to));
    return contour;
}

Contour drawn(std::string_view shape, BlankSize size) {
    if (shape == "rectangle") return whole(rectangle(), size);
    if (shape == "rounded") return whole(rounded(size), size);
    if (shape == "circle" || shape == "oval") return whole(half_circle(), size);
    if (shape == "heart") return whole(heart(), size);
    if (shape == "star") return whole(star(), size);
    return hexagon(size);
}

const std::array<BlankShape, 7>& shapes() {
    static const std::array<BlankShape, 7> all = [] {
        const double root = std::sqrt(5.0);
        const Half half = heart();
        const Box box = bounds({{Contour{half.start, half.segments}}});
        return std::array<BlankShape, 7>{{{"rectangle", 0},
                                          {"rounded", 0},
                                          {"circle", 1},
                                          {"oval", 0},
                                          {"heart", box.height() / (2 * box.right)},
                                          {"star", (5 + root) / (2 * std::sqrt(10 + 2 * root))},
                                          {"hexagon", std::sqrt(3.0) / 2}}};
    }();
    return all;
}

}  // namespace

std::optional<BlankShape> blank_shape_named(std::string_view name) {
    for (const BlankShape& shape : shapes())
        if (shape.name == name) return shape;
    return std::nullopt;
}

std::string blank_shape_names() {
    std::string names;
    for (const BlankShape& shape : shapes()) {
        if (!names.empty()) names += ", ";
        names += shape.name;
    }
    return names;
}

Blank shaped_blank(std::string_view shape, BlankSize size) {
    if (!blank_shape_named(shape)) throw std::invalid_argument("no such shape of a blank");
    if (!(size.width_mm > 0 && size.height_mm > 0)) throw std::invalid_argument("a blank has an area");
    return {size, std::string(shape), {{drawn(shape, size)}}};
}

}  // namespace lode
