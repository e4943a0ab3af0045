// Pieces that come near one another: boxes swept from left to right, then chords, then the curves themselves.

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <optional>

#include "cut/edge_curve.hpp"
#include "cut/thin_features.hpp"

namespace lode {

namespace {

constexpr double tolerance = 1.0 / 65536;  // of chords, in sizes of the piece

struct Chord {
    Point a;
    Point b;
    std::uint32_t curve = 0;
    double begin = 0;
    double end = 0;
    Box box;
};

struct Outline {
    Box box;
    double size = 0;
    std::vector<EdgeCurve> curves;
    std::vector<Chord> chords;
    std::vector<Point> starts;  // of the contours
};

Outline outline_of(const Path& path) {
    Outline outline;
    outline.box = bounds(path);
    outline.size = std::max(outline.box.width(), outline.box.height());
    const auto add = [&](Point from, const Segment& segment) {
        const auto curve = static_cast<std::uint32_t>(outline.curves.size());
        outline.curves.push_back({from, segment});
        const EdgeCurve& added = outline.curves.back();
        const int parts = outline.size > 0 ? added.parts(tolerance * outline.size) : 1;
        Point here = from;
        for (int part = 1; part <= parts; ++part) {
            const double end = static_cast<double>(part) / parts;
            const Point next = part == parts ? segment.to : added.at(end);
            outline.chords.push_back({here,
                                      next,
                                      curve,
                                      static_cast<double>(part - 1) / parts,
                                      end,
                                      {std::min(here.x, next.x), std::min(here.y, next.y),
                                       std::max(here.x, next.x), std::max(here.y, next.y)}});
            here = next;
        }
    };
    for (const Contour& contour : path.contours) {
        outline.starts.push_back(contour.start);
        Point from = contour.start;
        for (const Segment& segment : contour.segments) {
            add(from, segment);
            from = segment.to;
        }
        if (from != contour.start) add(from, Segment::line(contour.start));
    }
    return outline;
}

double gap_between(const Box& one, const Box& other) {
    const double x = std::max({one.left - other.right, other.left - one.right, 0.0});
    const double y = std::max({one.top - other.bottom, other.top - one.bottom, 0.0});
    return length({x, y});
}

// The chords no farther than the bound from a box, from left to right.
std::vector<const Chord*> chords_near(const Outline& outline, const Box& box, double bound) {
    std::vector<const Chord*> near;
    for (const Chord& chord : outline.chords)
        if (gap_between(chord.box, box) <= bound) near.push_back(&chord);
    std::sort(near.begin(), near.end(), [](const Chord* a, const Chord* b) {
        return a->box.left != b->box.left ? a->box.left < b->box.left : a < b;
    });
    return near;
}

bool inside(const Outline& outline, Point p) {
    int winding = 0;
    for (const Chord& c : outline.chords) {
        const double side = cross(c.b - c.a, p - c.a);
        if (c.a.y <= p.y && c.b.y > p.y && side > 0) ++winding;
        if (c.a.y > p.y && c.b.y <= p.y && side < 0) --winding;
    }
    return winding != 0;
}

bool cross_each_other(const Chord& one, const Chord& other) {
    const auto apart = [](const Chord& line, const Chord& chord) {
        const double a = cross(line.b - line.a, chord.a - line.a);
        const double b = cross(line.b - line.a, chord.b - line.a);
        return (a > 0 && b > 0) || (a < 0 && b < 0) || (a == 0 && b == 0);
    };
    return !apart(one, other) && !apart(other, one);
}

// The nearest points of two chords that do not cross: an end of one is among them.
struct Nearest {
    double distance = 0;
    std::array<Point, 2> points;
};

Nearest nearest_of(const Chord& one, const Chord& other) {
    Nearest best{1e300, {}};
    const auto try_end = [&](Point end, const Chord& chord, std::size_t which) {
        const Point along = chord.b - chord.a;
        const double square = dot(along, along);
        const double t = square > 0 ? std::clamp(dot(end - chord.a, along) / square, 0.0, 1.0) : 0;
        const Point foot = chord.a + t * along;
        const double distance = length(foot - end);
        if (distance >= best.distance) return;
        best.distance = distance;
        best.points[which] = end;
        best.points[1 - which] = foot;
    };
    try_end(one.a, other, 0);
    try_end(one.b, other, 0);
    try_end(other.a, one, 1);
    try_end(other.b, one, 1);
    return best;
}

// From the chords to the curves: each point to its curve's nearest to the other, until both stay.
Nearest on_curves(Nearest found, const Outline& one, const Chord& of_one, const Outline& other,
                  const Chord& of_other) {
    const std::array<const EdgeCurve*, 2> curves{&one.curves[of_one.curve], &other.curves[of_other.curve]};
    std::array<double, 2> t{(of_one.begin + of_one.end) / 2, (of_other.begin + of_other.end) / 2};
    for (int step = 0; step < 50; ++step) {
        double moved = 0;
        for (std::size_t k = 0; k < 2; ++k) {
            t[k] = curves[k]->nearest(found.points[1 - k], t[k]);
            const Point next = curves[k]->at(t[k]);
            moved = std::max(moved, length(next - found.points[k]));
            found.points[k] = next;
        }
        found.distance = length(found.points[0] - found.points[1]);
        if (moved < 1e-9 * one.size) break;
    }
    return found;
}

NarrowPlace as_place(const Nearest& nearest) {
    return {nearest.distance, 0.5 * (nearest.points[0] + nearest.points[1]), nearest.points[0],
            nearest.points[1]};
}

// What lies within the bound, or nothing.
std::optional<NarrowPlace> near_place(const Outline& one, const Outline& other, double under) {
    // Chords lie nearer or farther than their curves by this at most.
    const double slack = 2 * tolerance * (one.size + other.size);
    const auto mine = chords_near(one, other.box, under + slack);
    const auto theirs = chords_near(other, one.box, under + slack);
    struct Pair {
        Nearest nearest;
        const Chord* mine;
        const Chord* theirs;
    };
    std::vector<Pair> pairs;
    double bound = under + slack;
    std::size_t first = 0;
    const double widest = [&] {
        double width = 0;
        for (const Chord* chord : theirs) width = std::max(width, chord->box.width());
        return width;
    }();
    for (const Chord* chord : mine) {
        while (first < theirs.size() && theirs[first]->box.left + widest < chord->box.left - under - slack)
            ++first;
        for (std::size_t k = first; k < theirs.size() && theirs[k]->box.left <= chord->box.right + bound;
             ++k) {
            if (gap_between(chord->box, theirs[k]->box) > bound) continue;
            if (cross_each_other(*chord, *theirs[k])) {
                const Point along = chord->b - chord->a;
                const Point across = theirs[k]->b - theirs[k]->a;
                const Point p =
                    chord->a + (cross(theirs[k]->a - chord->a, across) / cross(along, across)) * along;
                return NarrowPlace{0, p, p, p};
            }
            const Nearest nearest = nearest_of(*chord, *theirs[k]);
            if (nearest.distance > bound) continue;
            pairs.push_back({nearest, chord, theirs[k]});
            bound = std::min(bound, nearest.distance + slack);
        }
    }
    if (gap_between(one.box, other.box) == 0) {
        for (const Point start : one.starts)
            if (inside(other, start)) return NarrowPlace{0, start, start, start};
        for (const Point start : other.starts)
            if (inside(one, start)) return NarrowPlace{0, start, start, start};
    }
    std::optional<NarrowPlace> best;
    std::stable_sort(pairs.begin(), pairs.end(),
                     [](const Pair& a, const Pair& b) { return a.nearest.distance < b.nearest.distance; });
    constexpr std::size_t most_pairs = 64;  // edges that run side by side: all are as near, within the slack
    for (std::size_t k = 0; k < std::min(pairs.size(), most_pairs) && pairs[k].nearest.distance <= bound;
         ++k) {
        const Nearest found = on_curves(pairs[k].nearest, one, *pairs[k].mine, other, *pairs[k].theirs);
        if (found.distance < under && (!best || found.distance < best->width)) best = as_place(found);
    }
    return best;
}

}  // namespace

std::vector<NearPieces> near_pieces(std::span<const Path> pieces, double under) {
    std::vector<Outline> outlines;
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        outlines.push_back(pieces[i].empty() ? Outline{} : outline_of(pieces[i]));
        if (!pieces[i].empty()) order.push_back(i);
    }
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return outlines[a].box.left != outlines[b].box.left ? outlines[a].box.left < outlines[b].box.left
                                                            : a < b;
    });
    std::vector<NearPieces> near;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const Box& box = outlines[order[i]].box;
        for (std::size_t j = i + 1; j < order.size() && outlines[order[j]].box.left < box.right + under;
             ++j) {
            if (gap_between(box, outlines[order[j]].box) >= under) continue;
            const auto [one, other] = std::minmax(order[i], order[j]);
            if (const auto place = near_place(outlines[one], outlines[other], under))
                near.push_back({one, other, *place});
        }
    }
    std::sort(near.begin(), near.end(), [](const NearPieces& a, const NearPieces& b) {
        if (a.place.width != b.place.width) return a.place.width < b.place.width;
        return a.one != b.one ? a.one < b.one : a.other < b.other;
    });
    return near;
}

}  // namespace lode
