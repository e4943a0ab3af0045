#include "art/ornament.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <utility>
#include <vector>

#include "art/spine.hpp"

namespace lode {

namespace {

struct Measures {
    double line;
    double gap;
};

[[noreturn]] void refuse() {
    throw std::invalid_argument("the ornament does not fit its size at such a line and gap");
}

void append(Path& path, Path more) {
    for (Contour& contour : more.contours) path.contours.push_back(std::move(contour));
}

template <class Map>
Path turned_over(Path path, Map map) {
    for (Contour& contour : path.contours) {
        contour.start = map(contour.start);
        for (Segment& s : contour.segments) s = {s.curved, map(s.control1), map(s.control2), map(s.to)};
        contour = reversed(contour);
    }
    return path;
}
Path upside_down(const Path& path, double about) {
    return turned_over(path, [about](Point p) { return Point{p.x, 2 * about - p.y}; });
}
// Rows for columns: the same ornament along the other side of a corner.
Path swapped(const Path& path) {
    return turned_over(path, [](Point p) { return Point{p.y, p.x}; });
}

Path dot(Point centre, double radius) {
    return capsule(centre, centre, radius);
}

// Two equal arcs that meet in round tips of the line's breadth: a leaf, or, long and hardly broader than its
// tips, a swelled rule. From edge to edge along the straight line from-to.
Path lens(Point from, Point to, double breadth, double line) {
    const double across = to.x - from.x;
    const double down = to.y - from.y;
    const double length = std::sqrt(across * across + down * down);
    const Point along{across / length, down / length};
    const Point side{-along.y, along.x};
    const double tip = line / 2;
    const double reach = length / 2 - tip;
    if (!(reach > 0) || !(breadth > line) || !(breadth < length)) refuse();
    // The big circle touches the small one from outside: its centre is radius - tip away from the tip's, and
    // radius - breadth / 2 off the middle.
    const double radius = (reach * reach + breadth * breadth / 4 - tip * tip) / (breadth - 2 * tip);
    const double off = radius - breadth / 2;
    const Point middle{(from.x + to.x) / 2, (from.y + to.y) / 2};
    const auto at = [&](double a, double s) {
        return Point{middle.x + a * along.x + s * side.x, middle.y + a * along.y + s * side.y};
    };
    // Where the circles touch, on the line through both centres.
    const double share = radius / (radius - tip);
    const double touch_along = share * reach;
    const double touch_side = share * off - off;
    Contour contour{at(-touch_along, -touch_side), {}};
    append_arc(contour, at(0, off), at(touch_along, -touch_side));
    append_arc(contour, at(reach, 0), at(touch_along, touch_side));
    append_arc(contour, at(0, -off), at(-touch_along, touch_side));
    append_arc(contour, at(-reach, 0), contour.start);
    return {{std::move(contour)}};
}

// Its corners rounded to the line's breadth.
Path diamond(Point centre, double half_width, double half_height, double line) {
    const double tip = line / 2;
    // The sides moved inwards by the tip's radius.
    const double slant = std::sqrt(half_width * half_width + half_height * half_height);
    const double w = half_width - tip * slant / half_height;
    const double h = half_height - tip * slant / half_width;
    if (!(w > 0) || !(h > 0)) refuse();
    const Point out{tip * half_height / slant, tip * half_width / slant};
    const auto at = [&](double x, double y) { return Point{centre.x + x, centre.y + y}; };
    Contour contour{at(-out.x, -h - out.y), {}};
    append_arc(contour, at(0, -h), at(out.x, -h - out.y));
    contour.segments.push_back(Segment::line(at(w + out.x, -out.y)));
    append_arc(contour, at(w, 0), at(w + out.x, out.y));
    contour.segments.push_back(Segment::line(at(out.x, h + out.y)));
    append_arc(contour, at(0, h), at(-out.x, h + out.y));
    contour.segments.push_back(Segment::line(at(-w - out.x, out.y)));
    append_arc(contour, at(-w, 0), at(-w - out.x, -out.y));
    contour.segments.push_back(Segment::line(contour.start));
    return {{std::move(contour)}};
}

// A sprig along y = 0: a stem with leaves in pairs and one at its end.
struct Sprig {
    double leaf;     // length
    double breadth;  // of a leaf
    Measures measures;

    [[nodiscard]] double foot() const { return 1.15 * (measures.line + measures.gap); }  // off the middle
    [[nodiscard]] double least_pitch() const { return (1.05 * breadth + measures.gap) / 0.6; }
    [[nodiscard]] double end_pitch() const { return (0.7 * breadth + measures.gap) / 0.6; }

    [[nodiscard]] Path upper_leaf(double x) const {
        // Up by 3-4-5; the foot is the middle of the round tip.
        const double tip = measures.line / 2;
        const Point from{x - 0.8 * tip, -foot() + 0.6 * tip};
        return lens(from, {from.x + 0.8 * leaf, from.y - 0.6 * leaf}, breadth, measures.line);
    }

    // The stem starts at `start`, the first pair of leaves at `first`, and the last leaf ends at `end`.
    [[nodiscard]] Path drawn(double start, double first, double end, int most_pairs) const {
        const double last = end - leaf - end_pitch();
        if (last < first) refuse();
        const int pairs = std::min(most_pairs, 1 + static_cast<int>((last - first) / least_pitch()));
        const double tip = measures.line / 2;
        Path path = capsule({start + tip, 0}, {end - leaf - measures.gap - tip, 0}, tip);
        append(path, lens({end - leaf, 0}, {end, 0}, breadth, measures.line));
        for (int i = 0; i < pairs; ++i) {
            const Path up = upper_leaf(pairs == 1 ? last : first + (last - first) * i / (pairs - 1));
            append(path, up);
            append(path, upside_down(up, 0));
        }
        return path;
    }
};

Sprig sprig_for(double length, const Measures& m) {
    const double leaf = std::max(0.2 * length, 4.5 * m.line);
    return {leaf, std::max(0.34 * leaf, 1.8 * m.line), m};
}

Path leaf_corner(double size, const Measures& m) {
    const Sprig sprig = sprig_for(size, m);
    const double middle = -bounds(sprig.upper_leaf(0)).top;
    const double heart = std::max(0.5 * sprig.breadth, 1.2 * m.line);
    const double first = sprig.foot() + 0.5 * sprig.breadth + m.gap;
    Path branch = sprig.drawn(heart + m.gap, first, size - middle, 3);
    branch = transformed(branch, 1, {middle, middle});
    Path path = dot({middle, middle}, heart);
    append(path, branch);
    append(path, swapped(branch));
    // A leaf into the corner, along the diagonal.
    const double root_half = std::sqrt(0.5);
    const double foot = middle - (heart + m.gap) * root_half;
    // The round tip touches both sides of the square, and the leaf's own breadth may bring it a hair beyond.
    double tip = std::max(m.line / 2 * (1 - root_half), foot - sprig.leaf * root_half);
    const auto corner_leaf = [&] { return lens({foot, foot}, {tip, tip}, sprig.breadth, m.line); };
    if (foot - tip > 3 * m.line) {
        tip += std::max(0.0, -1.1 * bounds(corner_leaf()).left);
        append(path, corner_leaf());
    }
    return path;
}

Path diamond_corner(double size, const Measures& m) {
    const double half = std::max(0.09 * size, 2.2 * m.line);
    const double small = std::max(0.6 * half, 1.6 * m.line);
    const double end = size - 2 * small - m.gap;
    const double start = 2 * half + m.gap;
    const double inner = half + 2 * m.line + m.gap;
    if (end - start < 8 * m.line) refuse();
    Path side = lens({start, half}, {end, half}, 2 * m.line, m.line);
    append(side, diamond({size - small, half}, small, small, m.line));
    // A short rule inside the long one, between it and the grid.
    append(side, capsule({start + m.line / 2, inner}, {start + 0.4 * (end - start), inner}, m.line / 2));
    Path path = diamond({half, half}, half, half, m.line);
    append(path, side);
    append(path, swapped(side));
    return path;
}

// Quarter turns with falling radii, from the outermost; inner ones leave the gap between them.
std::vector<double> roll(double outermost, const Measures& m) {
    const double fall = std::max(0.16 * outermost, 0.42 * (m.line + m.gap));
    std::vector<double> radii;
    for (double radius = outermost; radii.size() < 6 && radius > 1.1 * (m.line + m.gap); radius -= fall)
        radii.push_back(radius);
    if (radii.size() < 4) refuse();
    return radii;
}

Path curl_corner(double size, const Measures& m) {
    const auto radii = roll(std::max(0.17 * size, 3.2 * (m.line + m.gap)), m);
    const double knob = 1.05 * m.line;
    const double bend = radii.front();
    // Out of one roll, round the corner, into the other: anticlockwise all along.
    Spine spine({0, 0}, Spine::before(Spine::left, radii.size(), Turn::anticlockwise));
    for (std::size_t i = radii.size(); i-- > 0;) spine.turn(radii[i], Turn::anticlockwise);
    const double straight = size - m.line - bend - radii.front();
    if (straight < 0) refuse();
    spine.straight(straight);
    spine.turn(bend, Turn::anticlockwise);
    spine.straight(straight);
    for (const double radius : radii) spine.turn(radius, Turn::anticlockwise);
    Path path = spine.stroke(m.line, knob, knob);
    const Box box = bounds(path);
    path = transformed(path, 1, {-box.left, -box.top});
    // A leaf on the diagonal, out of the bend.
    const double root_half = std::sqrt(0.5);
    const double foot = m.line / 2 + bend - (bend - m.line / 2 - m.gap) * root_half;
    const double leaf = std::max(0.3 * size, 4.5 * m.line);
    const double tip = foot + leaf * root_half;
    append(path, lens({foot, foot}, {tip, tip}, std::max(0.3 * leaf, 1.8 * m.line), m.line));
    return path;
}

Path upper_left(Ornament ornament, double size, const Measures& m) {
    switch (ornament) {
        case Ornament::leaf:
            return leaf_corner(size, m);
        case Ornament::curl:
            return curl_corner(size, m);
        case Ornament::diamond:
            return diamond_corner(size, m);
    }
    throw std::invalid_argument("no such ornament");
}

// The right half of a divider, from its middle at x = 0, and what stands in the middle itself.
Path leaf_half(double reach, const Measures& m) {
    const Sprig sprig = sprig_for(0.55 * reach, m);
    const double heart = std::max(0.5 * sprig.breadth, 1.2 * m.line);
    const double start = heart + m.gap;
    const double shortest = start + m.line + 2 * sprig.least_pitch() + sprig.end_pitch() + sprig.leaf;
    const double end = std::max(0.6 * reach, shortest);
    if (end > reach) refuse();
    Path path = sprig.drawn(start, start + m.line, end, 3);
    if (reach - end - m.gap > 6 * m.line)
        append(path, lens({end + m.gap, 0}, {reach, 0}, 1.6 * m.line, m.line));
    return path;
}

Path diamond_half(double reach, const Measures& m) {
    const double half = std::max(0.07 * reach, 2.6 * m.line);
    const double small = std::max(0.6 * half, 1.6 * m.line);
    const double first = half + m.gap;
    const double rule = first + 2 * small + m.gap;
    if (reach - rule < 8 * m.line) refuse();
    Path path = diamond({first + small, 0}, small, small, m.line);
    append(path, lens({rule, 0}, {reach, 0}, 2 * m.line, m.line));
    return path;
}

// All of it: a line out of the roll at its left end, over a small diamond in the middle, and into the roll at
// its right.
Path curl_whole(double reach, const Measures& m) {
    const auto radii = roll(std::max(0.055 * reach, 2.4 * (m.line + m.gap)), m);
    const double knob = 1.05 * m.line;
    const double half = std::max(0.035 * reach, 1.6 * m.line);
    // The diamond stands on the line's lower edge, and the arch keeps the gap from its upper corner and from
    // those at its sides.
    const double rise = std::max(half + m.gap / 2, m.gap + m.line / 2);
    const double straight = reach - half - 2 * rise - radii.front() - m.line / 2;
    if (straight < 0) refuse();
    Spine spine({0, 0}, Spine::before(Spine::right, radii.size(), Turn::anticlockwise));
    for (std::size_t i = radii.size(); i-- > 0;) spine.turn(radii[i], Turn::anticlockwise);
    const Point on_line = spine.end();
    spine.straight(straight);
    spine.turn(rise, Turn::anticlockwise);
    spine.turn(rise, Turn::clockwise);
    spine.straight(2 * half);
    spine.turn(rise, Turn::clockwise);
    spine.turn(rise, Turn::anticlockwise);
    spine.straight(straight);
    for (const double radius : radii) spine.turn(radius, Turn::anticlockwise);
    Path path = spine.stroke(m.line, knob, knob);
    const double middle = on_line.x + straight + 2 * rise + half;
    append(path, diamond({middle, on_line.y + m.line / 2 - half}, half, half, m.line));
    const Box box = bounds(path);
    return transformed(path, 1, {-middle, -box.centre().y});
}

}  // namespace

Path corner_flourish(Ornament ornament, double size, double line, double gap) {
    if (!(line > 0) || !(gap > 0)) refuse();
    const Path path = upper_left(ornament, size, {line, gap});
    // Rounded tips end short of the corner.
    const Box box = bounds(path);
    return transformed(path, 1, {-box.left, -box.top});
}

std::array<Path, 4> in_corners(const Path& flourish, const Box& box) {
    const Path upper_left = transformed(flourish, 1, {box.left, box.top});
    const auto to_the_right = [&](const Path& path) { return mirrored(path, box.left + box.right); };
    const Path lower_left = upside_down(upper_left, box.centre().y);
    return {upper_left, to_the_right(upper_left), to_the_right(lower_left), lower_left};
}

Path divider(Ornament ornament, double width, double line, double gap) {
    if (!(line > 0) || !(gap > 0)) refuse();
    const Measures m{line, gap};
    const double reach = width / 2;
    Path half;
    Path path;
    switch (ornament) {
        case Ornament::leaf:
            half = leaf_half(reach, m);
            path = dot({0, 0}, std::max(0.5 * sprig_for(0.55 * reach, m).breadth, 1.2 * line));
            break;
        case Ornament::curl:
            return transformed(curl_whole(reach, m), 1, {reach, 0});
        case Ornament::diamond:
            half = diamond_half(reach, m);
            path =
                diamond({0, 0}, std::max(0.07 * reach, 2.6 * line), std::max(0.07 * reach, 2.6 * line), line);
            break;
    }
    append(path, half);
    append(path, mirrored(half, 0));
    return transformed(path, 1, {reach, 0});
}

}  // namespace lode
