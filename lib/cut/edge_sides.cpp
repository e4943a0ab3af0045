#include "cut/edge_sides.hpp"

#include <polyclipping/clipper.hpp>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "art/clipping.hpp"

namespace lode {

namespace {

Point as_point(SidePoint p) {
    return {static_cast<double>(p.x), static_cast<double>(p.y)};
}

SidePoint rounded(Point p) {
    return {static_cast<std::int32_t>(std::llround(p.x)), static_cast<std::int32_t>(std::llround(p.y))};
}

std::int64_t turn(SidePoint a, SidePoint b, SidePoint c) {
    return (static_cast<std::int64_t>(b.x) - a.x) * (static_cast<std::int64_t>(c.y) - a.y) -
           (static_cast<std::int64_t>(b.y) - a.y) * (static_cast<std::int64_t>(c.x) - a.x);
}

// Strictly between the ends, on the side.
bool within(SidePoint p, const Side& side) {
    if (p == side.from || p == side.to || turn(side.from, side.to, p) != 0) return false;
    return std::min(side.from.x, side.to.x) <= p.x && p.x <= std::max(side.from.x, side.to.x) &&
           std::min(side.from.y, side.to.y) <= p.y && p.y <= std::max(side.from.y, side.to.y);
}

bool crossing(const Side& one, const Side& other) {
    const auto sign = [](std::int64_t v) { return v > 0 ? 1 : v < 0 ? -1 : 0; };
    return sign(turn(one.from, one.to, other.from)) * sign(turn(one.from, one.to, other.to)) < 0 &&
           sign(turn(other.from, other.to, one.from)) * sign(turn(other.from, other.to, one.to)) < 0;
}

bool same_ends(const Side& one, const Side& other) {
    return (one.from == other.from && one.to == other.to) || (one.from == other.to && one.to == other.from);
}

// Calls with each pair of sides whose boxes meet, until it answers false.
template <class Call>
void for_close_pairs(const std::vector<Side>& sides, Call call) {
    std::vector<std::uint32_t> order(sides.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<std::uint32_t>(i);
    const auto left = [&](std::uint32_t i) { return std::min(sides[i].from.x, sides[i].to.x); };
    const auto right = [&](std::uint32_t i) { return std::max(sides[i].from.x, sides[i].to.x); };
    std::sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
        return left(a) != left(b) ? left(a) < left(b) : a < b;
    });
    for (std::size_t i = 0; i < order.size(); ++i) {
        const Side& one = sides[order[i]];
        const auto [top, bottom] = std::minmax(one.from.y, one.to.y);
        for (std::size_t j = i + 1; j < order.size() && left(order[j]) <= right(order[i]); ++j) {
            const Side& other = sides[order[j]];
            if (std::min(other.from.y, other.to.y) > bottom || std::max(other.from.y, other.to.y) < top)
                continue;
            if (!call(order[i], order[j])) return;
        }
    }
}

struct Flattened {
    EdgeSides edges;
    std::vector<std::size_t> contour_starts;  // into the sides
};

Flattened flattened(const Path& path, const Box& box) {
    Flattened flat;
    flat.edges.origin = {box.left, box.top};
    flat.edges.scale = lattice_size / std::max(box.width(), box.height());
    const auto local = [&](Point p) { return flat.edges.scale * (p - flat.edges.origin); };
    std::vector<Side>& sides = flat.edges.sides;
    for (const Contour& contour : path.contours) {
        const std::size_t first = sides.size();
        Point from = local(contour.start);
        SidePoint here = rounded(from);
        const auto add = [&](const Segment& segment) {
            const std::size_t curve = flat.edges.curves.size();
            flat.edges.curves.push_back({from, segment});
            const int parts = flat.edges.curves.back().parts(chord_tolerance);
            double begin = 0;
            for (int part = 1; part <= parts; ++part) {
                const double end = static_cast<double>(part) / parts;
                const SidePoint next = rounded(part == parts ? segment.to : flat.edges.curves.back().at(end));
                if (next == here) continue;  // shorter than a lattice unit: the next side takes it along
                sides.push_back({here, next, {curve, begin}, {curve, end}});
                here = next;
                begin = end;
            }
            from = segment.to;
        };
        for (const Segment& s : contour.segments)
            add({s.curved, local(s.control1), local(s.control2), local(s.to)});
        if (sides.size() > first && here != sides[first].from) add(Segment::line(local(contour.start)));
        if (sides.size() < first + 3)
            sides.resize(first);
        else
            flat.contour_starts.push_back(first);
    }
    return flat;
}

// How often the sides from first to last wind about a point that is on none of them, times two.
int twice_winding(const std::vector<Side>& sides, std::size_t first, std::size_t last, SidePoint p) {
    int winding = 0;
    for (std::size_t i = first; i < last; ++i) {
        const Side& s = sides[i];
        if (s.from.y <= p.y && s.to.y > p.y && turn(s.from, s.to, p) > 0) winding += 2;
        if (s.from.y > p.y && s.to.y <= p.y && turn(s.from, s.to, p) < 0) winding -= 2;
    }
    return winding;
}

// Whether no side meets another but the next one at its end, and each contour separates filled from empty,
// the filled on the side that a Side promises. More contours than a letter has are not gone through one by
// one.
bool is_clean(const Flattened& flat) {
    const std::vector<Side>& sides = flat.edges.sides;
    const std::vector<std::size_t>& starts = flat.contour_starts;
    constexpr std::size_t most_contours = 32;
    if (starts.size() > most_contours) return false;
    for (std::size_t i = 0; i < starts.size(); ++i) {
        const auto end_of = [&](std::size_t k) {
            return k + 1 < starts.size() ? starts[k + 1] : sides.size();
        };
        double area = 0;
        for (std::size_t k = starts[i]; k < end_of(i); ++k)
            area += cross(as_point(sides[k].from) - as_point(sides[starts[i]].from),
                          as_point(sides[k].to) - as_point(sides[starts[i]].from));
        int around = 0;
        for (std::size_t k = 0; k < starts.size(); ++k)
            if (k != i) around += twice_winding(sides, starts[k], end_of(k), sides[starts[i]].from);
        if (around != (area > 0 ? 0 : 2)) return false;
    }
    bool clean = true;
    const auto next = [&](std::size_t i) {
        const auto start = std::upper_bound(starts.begin(), starts.end(), i);
        const std::size_t end = start == starts.end() ? sides.size() : *start;
        return i + 1 < end ? i + 1 : *std::prev(start);
    };
    for_close_pairs(sides, [&](std::size_t i, std::size_t j) {
        const Side& one = sides[i];
        const Side& other = sides[j];
        if (one.from == other.from || one.to == other.to || (one.to == other.from && next(i) != j) ||
            (other.to == one.from && next(j) != i))
            clean = false;
        if (same_ends(one, other) || crossing(one, other) || within(one.from, other) ||
            within(one.to, other) || within(other.from, one) || within(other.to, one))
            clean = false;
        return clean;
    });
    return clean;
}

std::vector<Side> as_lone_sides(std::vector<Side> sides, std::vector<EdgeCurve>& curves) {
    for (Side& side : sides) {
        curves.push_back({as_point(side.from), Segment::line(as_point(side.to))});
        side.begin = {curves.size() - 1, 0};
        side.end = {curves.size() - 1, 1};
    }
    return sides;
}

// A part of a known side that starts where that one does, and keeps its part of the curve.
std::optional<Side> part_of(const Side& whole, SidePoint to) {
    const Point along = as_point(whole.to) - as_point(whole.from);
    const Point way = as_point(to) - as_point(whole.from);
    const double size = length(along);
    const double part = dot(way, along) / (size * size);
    constexpr double rounding = 1;
    if (std::abs(cross(along, way)) > rounding * size || !(part > 0 && part < 1)) return {};
    const double t = whole.begin.t + part * (whole.end.t - whole.begin.t);
    return Side{whole.from, to, whole.begin, {whole.begin.curve, t}};
}

// The sides of the nonzero union. Those that come through whole, or from one end on, keep their curves.
void join(EdgeSides& edges) {
    ClipperLib::Clipper clipper;
    clipper.StrictlySimple(true);
    ClipperLib::Path polygon;
    const auto close = [&] {
        if (polygon.size() >= 3) clipper.AddPath(polygon, ClipperLib::ptSubject, true);
        polygon.clear();
    };
    for (std::size_t i = 0; i < edges.sides.size(); ++i) {
        if (i > 0 && edges.sides[i].from != edges.sides[i - 1].to) close();
        polygon.push_back({edges.sides[i].from.x, edges.sides[i].from.y});
    }
    close();
    ClipperLib::Paths joined;
    need_done(clipper, clipper.Execute(ClipperLib::ctUnion, joined, ClipperLib::pftNonZero, ClipperLib::pftNonZero));

    std::vector<Side> known = edges.sides;
    for (const Side& side : edges.sides) known.push_back({side.to, side.from, side.end, side.begin});
    const auto before = [](const Side& a, const Side& b) {
        return a.from != b.from ? a.from < b.from : a.to < b.to;
    };
    std::stable_sort(known.begin(), known.end(), before);
    const auto starts = [](const Side& a, SidePoint p) { return a.from < p; };
    edges.sides.clear();
    std::vector<Side> lone;
    for (const ClipperLib::Path& ring : joined)
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const ClipperLib::IntPoint& a = ring[i];
            const ClipperLib::IntPoint& b = ring[(i + 1) % ring.size()];
            const Side side{{static_cast<std::int32_t>(a.X), static_cast<std::int32_t>(a.Y)},
                            {static_cast<std::int32_t>(b.X), static_cast<std::int32_t>(b.Y)},
                            {},
                            {}};
            const auto from = [&](SidePoint p) {
                return std::lower_bound(known.begin(), known.end(), p, starts);
            };
            bool placed = false;
            for (auto k = from(side.from); !placed && k != known.end() && k->from == side.from; ++k) {
                const auto part = k->to == side.to ? std::optional(*k) : part_of(*k, side.to);
                if ((placed = part.has_value())) edges.sides.push_back(*part);
            }
            for (auto k = from(side.to); !placed && k != known.end() && k->from == side.to; ++k) {
                const auto part = part_of(*k, side.from);
                if ((placed = part.has_value()))
                    edges.sides.push_back({part->to, part->from, part->end, part->begin});
            }
            if (!placed) lone.push_back(side);
        }
    lone = as_lone_sides(std::move(lone), edges.curves);
    edges.sides.insert(edges.sides.end(), lone.begin(), lone.end());
}

// Of curves that are covered in part, each stretch that is left becomes a curve of its own, so that no point
// is sought where there is no edge any more.
void trim(EdgeSides& edges) {
    std::vector<std::uint32_t> order(edges.sides.size());
    std::iota(order.begin(), order.end(), 0u);
    const auto low = [&](std::uint32_t i) { return std::min(edges.sides[i].begin.t, edges.sides[i].end.t); };
    const auto high = [&](std::uint32_t i) { return std::max(edges.sides[i].begin.t, edges.sides[i].end.t); };
    std::sort(order.begin(), order.end(), [&](std::uint32_t a, std::uint32_t b) {
        const std::size_t one = edges.sides[a].begin.curve, other = edges.sides[b].begin.curve;
        if (one != other) return one < other;
        return low(a) != low(b) ? low(a) < low(b) : a < b;
    });
    for (std::size_t first = 0, last = 0; first < order.size(); first = last) {
        const std::size_t curve = edges.sides[order[first]].begin.curve;
        double end = high(order[first]);
        for (last = first + 1;
             last < order.size() && edges.sides[order[last]].begin.curve == curve && low(order[last]) <= end;
             ++last)
            end = std::max(end, high(order[last]));
        const double begin = low(order[first]);
        if (begin == 0 && end == 1) continue;
        edges.curves.push_back(edges.curves[curve].between(begin, end));
        for (std::size_t k = first; k < last; ++k)
            for (OnCurve* on : {&edges.sides[order[k]].begin, &edges.sides[order[k]].end})
                *on = {edges.curves.size() - 1, (on->t - begin) / (end - begin)};
    }
}

// Where two sides that cross do so, rounded.
SidePoint meeting(const Side& one, const Side& other) {
    const Point a = as_point(one.from), along = as_point(one.to) - a;
    const Point b = as_point(other.from), across = as_point(other.to) - b;
    return rounded(a + (cross(b - a, across) / cross(along, across)) * along);
}

// Rounding moved what was joined, so that ends may lie on sides and sides cross once more by a unit. They are
// cut there until nothing is left to cut; what still crosses after some rounds, a few units long, is left
// out.
void settle(EdgeSides& edges) {
    constexpr int most_rounds = 8;
    for (int round = 0; round <= most_rounds; ++round) {
        std::vector<std::vector<SidePoint>> cuts(edges.sides.size());
        std::vector<bool> gone(edges.sides.size());
        bool settled = true;
        for_close_pairs(edges.sides, [&](std::size_t i, std::size_t j) {
            const Side& one = edges.sides[i];
            const Side& other = edges.sides[j];
            bool cut = false;
            const auto cut_at = [&](std::size_t which, SidePoint p) {
                if (p == edges.sides[which].from || p == edges.sides[which].to) return;
                cuts[which].push_back(p);
                cut = true;
            };
            if (same_ends(one, other)) {  // nothing lies between them, or they say the same
                cut = gone[std::max(i, j)] = true;
                if (one.from == other.to) gone[std::min(i, j)] = true;
            } else if (crossing(one, other)) {
                const SidePoint p = meeting(one, other);
                cut_at(i, p);
                cut_at(j, p);
            }
            for (const SidePoint p : {other.from, other.to})
                if (within(p, one)) cut_at(i, p);
            for (const SidePoint p : {one.from, one.to})
                if (within(p, other)) cut_at(j, p);
            if (!cut) return true;
            settled = false;
            if (round == most_rounds) gone[std::max(i, j)] = true;
            return true;
        });
        if (settled) return;
        std::vector<Side> whole;
        std::vector<Side> parts;
        for (std::size_t i = 0; i < edges.sides.size(); ++i) {
            const Side& side = edges.sides[i];
            if (gone[i]) continue;
            if (cuts[i].empty() || round == most_rounds) {
                whole.push_back(side);
                continue;
            }
            const auto along = [&](SidePoint p) {
                return dot(as_point(p) - as_point(side.from), as_point(side.to) - as_point(side.from));
            };
            std::sort(cuts[i].begin(), cuts[i].end(), [&](SidePoint a, SidePoint b) {
                return along(a) != along(b) ? along(a) < along(b) : a < b;
            });
            cuts[i].push_back(side.to);
            SidePoint here = side.from;
            for (const SidePoint next : cuts[i])
                if (next != here) {
                    parts.push_back({here, next, {}, {}});
                    here = next;
                }
        }
        parts = as_lone_sides(std::move(parts), edges.curves);
        edges.sides = std::move(whole);
        edges.sides.insert(edges.sides.end(), parts.begin(), parts.end());
    }
}

}  // namespace

EdgeSides edge_sides(const Path& path) {
    if (path.empty()) return {};
    const Box box = bounds(path);
    const double size = std::max(box.width(), box.height());
    if (!(size > 0) || !std::isfinite(size)) return {};
    Flattened flat = flattened(path, box);
    if (!is_clean(flat)) {
        join(flat.edges);
        settle(flat.edges);
        trim(flat.edges);
    }
    return std::move(flat.edges);
}

}  // namespace lode
