#include "art/border.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>
#include <vector>

#include "art/combine.hpp"

namespace lode {

namespace {

// In lines: what a crafter would choose by eye.
constexpr double bold = 2;
constexpr double gap = 1.5;
constexpr double corner = 7;        // the radius of rounded corners and of notches
constexpr double round_notch = 4;   // along a round edge, where content is near
constexpr double notch_pitch = 16;  // there, from notch to notch, in their radii
constexpr double least_notch_pitch = 3.6;
constexpr double dot_radius = 1;  // twice a line across, since a dot has no length to hold it
constexpr double dot_pitch = 4.5;

double apart(Point a, Point b) {
    return std::sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
}

void append(Path& path, Path more) {
    for (Contour& contour : more.contours) path.contours.push_back(std::move(contour));
}

// What lies between one outline and another inside it.
Path between(Path outer, const Path& inner) {
    for (const Contour& contour : inner.contours) outer.contours.push_back(reversed(contour));
    return outer;
}

std::optional<Box> rectangle_of(const Path& outline) {
    if (outline.contours.size() != 1 || outline.contours.front().segments.size() != 4) return std::nullopt;
    Point from = outline.contours.front().start;
    for (const Segment& s : outline.contours.front().segments) {
        if (s.curved || ((from.x != s.to.x) == (from.y != s.to.y))) return std::nullopt;
        from = s.to;
    }
    return bounds(outline);
}

Box inset_by(const Box& box, double by) {
    return {box.left + by, box.top + by, box.right - by, box.bottom - by};
}
bool holds_something(const Box& box) {
    return box.right > box.left && box.bottom > box.top;
}

Path rectangle(const Box& box) {
    return {{{{box.left, box.top},
              {Segment::line({box.right, box.top}), Segment::line({box.right, box.bottom}),
               Segment::line({box.left, box.bottom}), Segment::line({box.left, box.top})}}}};
}

// Its corners rounded off.
Path rounded(const Box& box, double radius) {
    const double l = box.left + radius;
    const double t = box.top + radius;
    const double r = box.right - radius;
    const double b = box.bottom - radius;
    Contour contour{{l, box.top}, {}};
    contour.segments.push_back(Segment::line({r, box.top}));
    append_arc(contour, {r, t}, {box.right, t});
    contour.segments.push_back(Segment::line({box.right, b}));
    append_arc(contour, {r, b}, {r, box.bottom});
    contour.segments.push_back(Segment::line({l, box.bottom}));
    append_arc(contour, {l, b}, {box.left, b});
    contour.segments.push_back(Segment::line({box.left, t}));
    append_arc(contour, {l, t}, {l, box.top});
    return {{std::move(contour)}};
}

// The rectangle without what lies within the radius of the corners of `whole`, which holds it: drawn
// anticlockwise, along which the notches' arcs run clockwise, and turned.
Path notched(const Box& box, const Box& whole, double radius) {
    const double deep = box.left - whole.left;
    const double reach = std::sqrt(radius * radius - deep * deep);
    const double l = whole.left + reach;
    const double t = whole.top + reach;
    const double r = whole.right - reach;
    const double b = whole.bottom - reach;
    Contour contour{{r, box.top}, {}};
    contour.segments.push_back(Segment::line({l, box.top}));
    append_arc(contour, {whole.left, whole.top}, {box.left, t});
    contour.segments.push_back(Segment::line({box.left, b}));
    append_arc(contour, {whole.left, whole.bottom}, {l, box.bottom});
    contour.segments.push_back(Segment::line({r, box.bottom}));
    append_arc(contour, {whole.right, whole.bottom}, {box.right, b});
    contour.segments.push_back(Segment::line({box.right, t}));
    append_arc(contour, {whole.right, whole.top}, {r, box.top});
    return {{reversed(contour)}};
}

// An outline from the edge inwards: what lies at a depth or deeper.
class Edged {
  public:
    explicit Edged(const Path& outline) : outline_(outline), rectangle_(rectangle_of(outline)) {}

    [[nodiscard]] Path from(double depth) const {
        if (!rectangle_) return depth == 0 ? outline_ : grown(outline_, -depth);
        const Box box = inset_by(*rectangle_, depth);
        return holds_something(box) ? rectangle(box) : Path{};
    }
    // Corners that stick out are rounded with this radius.
    [[nodiscard]] Path rounded_from(double depth, double radius) const {
        if (!rectangle_) return grown(from(depth + radius), radius);
        const Box box = inset_by(*rectangle_, depth);
        return holds_something(inset_by(box, radius)) ? rounded(box, radius) : Path{};
    }
    // What lies within reach of the notches' middles at the depth `corners_at` is left out: of the corners
    // that stick out, or of even steps along a round edge, as many as suit notches of this radius.
    [[nodiscard]] Path notched_from(double depth, double corners_at, double radius, double reach) const;

    [[nodiscard]] double shorter_side() const {
        const Box box = bounds(outline_);
        return std::min(box.width(), box.height());
    }

  private:
    const Path& outline_;
    std::optional<Box> rectangle_;
};

// Corners of a contour, and whether the outline's inside lies in the angle or round it.
struct Corner {
    std::size_t at;  // the segment that starts there
    Point point;
    bool sticks_out;
};

std::vector<Corner> corners_of(const Contour& contour) {
    const std::size_t count = contour.segments.size();
    const auto start_of = [&](std::size_t i) { return i == 0 ? contour.start : contour.segments[i - 1].to; };
    std::vector<Corner> corners;
    for (std::size_t i = 0; i < count; ++i) {
        const Segment& before = contour.segments[(i + count - 1) % count];
        const Segment& after = contour.segments[i];
        const Point at = start_of(i);
        const Point from =
            before.curved && before.control2 != at ? before.control2 : start_of((i + count - 1) % count);
        const Point to = after.curved && after.control1 != at ? after.control1 : after.to;
        const Point in{at.x - from.x, at.y - from.y};
        const Point out{to.x - at.x, to.y - at.y};
        const double lengths = apart(from, at) * apart(at, to);
        // 36.9 degrees and more, 3-4-5: a polygon that stands for a curve turns less.
        if (lengths > 0 && in.x * out.x + in.y * out.y < 0.8 * lengths)
            corners.push_back({i, at, in.x * out.y - in.y * out.x > 0});
    }
    return corners;
}

std::size_t corners_that_stick_out(const Contour& contour) {
    const auto corners = corners_of(contour);
    return static_cast<std::size_t>(
        std::count_if(corners.begin(), corners.end(), [](const Corner& c) { return c.sticks_out; }));
}

// Whether an outline has too few corners to be told by notches in them; a heart has one.
bool is_round(const Path& outline) {
    return std::all_of(outline.contours.begin(), outline.contours.end(), [](const Contour& contour) {
        return signed_area(contour) < 0 || corners_that_stick_out(contour) < 2;
    });
}

double length_of(const std::vector<Point>& points) {
    double length = 0;
    for (std::size_t i = 1; i < points.size(); ++i) length += apart(points[i - 1], points[i]);
    return length;
}

// A contour or a part of one as a chain of points, fine enough to be measured along.
std::vector<Point> chain_of(const Contour& stretch) {
    std::vector<Point> points{stretch.start};
    for (const Segment& segment : stretch.segments) {
        const Point from = points.back();
        constexpr int parts = 64;
        for (int i = 1; segment.curved && i < parts; ++i) {
            const double t = static_cast<double>(i) / parts;
            const double u = 1 - t;
            const auto mix = [&](double a, double b, double c, double d) {
                return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
            };
            points.push_back({mix(from.x, segment.control1.x, segment.control2.x, segment.to.x),
                              mix(from.y, segment.control1.y, segment.control2.y, segment.to.y)});
        }
        points.push_back(segment.to);
    }
    return points;
}

// The chain's first point and others at even steps, the last a step before its end.
std::vector<Point> evenly(const std::vector<Point>& chain, double steps) {
    const double length = length_of(chain);
    std::vector<Point> found;
    double gone = 0;
    double next = 0;
    for (std::size_t i = 1; i < chain.size(); ++i) {
        const double side = apart(chain[i - 1], chain[i]);
        // Half a step short of the end: the next stretch starts with a point.
        for (; next <= gone + side && next < length * (1 - 0.5 / steps); next += length / steps) {
            const double t = side > 0 ? (next - gone) / side : 0;
            found.push_back({chain[i - 1].x + t * (chain[i].x - chain[i - 1].x),
                             chain[i - 1].y + t * (chain[i].y - chain[i - 1].y)});
        }
        gone += side;
    }
    return found;
}

// Even steps along each stretch from corner to corner, or round a contour that has none.
std::vector<Point> steps_along(const Contour& contour, double pitch) {
    const auto count = contour.segments.size();
    std::vector<std::size_t> stops;
    for (const Corner& c : corners_of(contour)) stops.push_back(c.at);
    if (stops.empty()) stops.push_back(0);

    std::vector<Point> found;
    for (std::size_t s = 0; s < stops.size(); ++s) {
        const std::size_t first = stops[s];
        const std::size_t last = s + 1 < stops.size() ? stops[s + 1] : stops.front() + count;
        Contour stretch{first == 0 ? contour.start : contour.segments[first - 1].to, {}};
        for (std::size_t i = first; i < last; ++i) stretch.segments.push_back(contour.segments[i % count]);
        const auto chain = chain_of(stretch);
        for (const Point p : evenly(chain, std::max(1.0, std::floor(length_of(chain) / pitch + 0.5))))
            found.push_back(p);
    }
    return found;
}

// Where a round contour is notched: four times or a multiple of that, the first time at the top of its middle
// line, so that an outline that is the same on the left and on the right gets notches that are so, too.
std::vector<Point> round_notches(const Contour& contour, double radius) {
    std::vector<Point> chain = chain_of(contour);
    if (chain.front() != chain.back()) chain.push_back(chain.front());
    const double middle = bounds({{contour}}).centre().x;
    std::optional<Point> top;
    std::size_t beyond = 1;
    for (std::size_t i = 1; i < chain.size(); ++i) {
        const Point a = chain[i - 1];
        const Point b = chain[i];
        if (a.x == b.x || (a.x - middle) * (b.x - middle) > 0) continue;
        const Point crossing{middle, a.y + (middle - a.x) / (b.x - a.x) * (b.y - a.y)};
        if (top && crossing.y >= top->y) continue;
        top = crossing;
        beyond = i;
    }
    if (!top) return {};
    std::vector<Point> from_top{*top};
    for (std::size_t i = beyond; i < chain.size(); ++i) from_top.push_back(chain[i]);
    for (std::size_t i = 1; i < beyond; ++i) from_top.push_back(chain[i]);
    from_top.push_back(*top);
    const double length = length_of(from_top);
    // Where four would nearly touch, the outline is too small for any.
    if (length < 4 * least_notch_pitch * radius) return {};
    const auto count =
        static_cast<std::size_t>(4 * std::max(1.0, std::floor(length / (4 * notch_pitch * radius) + 0.5)));
    constexpr std::size_t parts = 16;
    const auto fine = evenly(from_top, static_cast<double>(count * parts));
    std::vector<Point> found;
    for (std::size_t i = 0; i < fine.size(); i += parts) {
        const Point before = fine[(i + fine.size() - 1) % fine.size()];
        const Point at = fine[i];
        const Point after = fine[(i + 1) % fine.size()];
        const double bend = (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x);
        // Where the edge bends inwards, as in a heart's cleft, it is notched enough.
        if (bend >= -0.01 * apart(before, at) * apart(at, after)) found.push_back(at);
    }
    return found;
}

Path Edged::notched_from(double depth, double corners_at, double radius, double reach) const {
    if (rectangle_) {
        const Box whole = inset_by(*rectangle_, corners_at);
        return holds_something(inset_by(whole, reach)) ? notched(inset_by(*rectangle_, depth), whole, reach)
                                                       : Path{};
    }
    const bool round = is_round(outline_);
    Path discs;
    for (const Contour& contour : from(corners_at).contours) {
        std::vector<Point> middles;
        // A hole's edge stays as it is: notches on both sides would come near to each other.
        if (round && signed_area(contour) > 0) middles = round_notches(contour, radius);
        if (!round)
            for (const Corner& c : corners_of(contour))
                if (c.sticks_out) middles.push_back(c.point);
        for (const Point p : middles) append(discs, capsule(p, p, reach));
    }
    return discs.empty() ? from(depth) : cut_out(from(depth), discs);
}

Path dots_along(const Path& path, double line) {
    std::vector<Point> dots;
    for (const Contour& contour : path.contours)
        for (const Point p : steps_along(contour, dot_pitch * line)) {
            // Where the outline folds back on itself, two dots do not run together.
            const bool free = std::all_of(dots.begin(), dots.end(), [&](Point q) {
                return apart(p, q) >= (2 * dot_radius + gap) * line;
            });
            if (free) dots.push_back(p);
        }
    Path found;
    for (const Point p : dots) append(found, capsule(p, p, dot_radius * line));
    return found;
}

}  // namespace

double border_lines(const Path& outline, BorderStyle style) {
    switch (style) {
        case BorderStyle::double_line:
            return bold + gap + 1;
        case BorderStyle::dotted:
            return 2 * dot_radius;
        case BorderStyle::notched:
            return is_round(outline) ? round_notch + 1 : 1;
        case BorderStyle::line:
        case BorderStyle::rounded:
            return 1;
    }
    throw std::invalid_argument("no such border");
}

Path border(const Path& outline, BorderStyle style, double inset, double line) {
    if (outline.empty()) throw std::invalid_argument("a border needs an outline to follow");
    if (!(inset >= 0) || !(line > 0))
        throw std::invalid_argument("a border needs an inset of 0 or more and a line above 0");
    const Edged blank(outline);
    // No point is deeper than half of the shorter side.
    if (2 * inset >= blank.shorter_side()) return {};
    // On a small blank corners take no more than a quarter of a side, but never so little that the line
    // inside them has none.
    const double radius = std::max(2 * line, std::min(corner * line, (blank.shorter_side() - 2 * inset) / 4));
    const auto band = [&](double depth, double breadth) {
        return between(blank.from(depth), blank.from(depth + breadth));
    };
    switch (style) {
        case BorderStyle::line:
            return band(inset, line);
        case BorderStyle::double_line: {
            Path both = band(inset, bold * line);
            append(both, band(inset + (bold + gap) * line, line));
            return both;
        }
        case BorderStyle::rounded:
            return between(blank.rounded_from(inset, radius),
                           blank.rounded_from(inset + line, radius - line));
        case BorderStyle::notched: {
            const double notch = is_round(outline) ? std::min(radius, round_notch * line) : radius;
            return between(blank.notched_from(inset, inset, notch, notch),
                           blank.notched_from(inset + line, inset, notch, notch + line));
        }
        case BorderStyle::dotted:
            return dots_along(blank.from(inset + dot_radius * line), line);
    }
    throw std::invalid_argument("no such border");
}

}  // namespace lode
