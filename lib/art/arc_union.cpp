// The union of contours: every edge is split where it meets another, and those pieces are kept that have ink
// on one side only, by the winding number beside the middle of each.

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>

#include "art/arc_outline.hpp"

namespace lode {

namespace {

// In cap heights, for outlines of the size of a letter: what is nearer is the same point, and how far beside
// an edge its sides are looked at: nearer than an arc comes that touches the edge a hair from there.
constexpr double same = 1e-8;
constexpr double beside = 1e-9;

bool near(Point a, Point b) {
    return std::abs(a.x - b.x) < same && std::abs(a.y - b.y) < same;
}

double squared_distance(Point a, Point b) {
    return (b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y);
}

Point middle_of(const ArcEdge& e) {
    if (e.turn == 0) return {(e.from.x + e.to.x) / 2, (e.from.y + e.to.y) / 2};
    // Arcs are split at their highest and lowest points first, so that none is wider than half a turn.
    const Point first{e.from.x - e.centre.x, e.from.y - e.centre.y};
    const Point last{e.to.x - e.centre.x, e.to.y - e.centre.y};
    const Point out{e.turn * (last.y - first.y), e.turn * (first.x - last.x)};
    const double size = std::sqrt(out.x * out.x + out.y * out.y);
    return {e.centre.x + e.radius * out.x / size, e.centre.y + e.radius * out.y / size};
}

// Splits an arc at the highest and lowest points of its circle: what is left goes up or down all the way.
void append_monotone(const ArcEdge& edge, std::vector<ArcEdge>& edges) {
    if (edge.turn == 0) {
        edges.push_back(edge);
        return;
    }
    ArcEdge rest = edge;
    const Point top{edge.centre.x, edge.centre.y - edge.radius};
    const Point bottom{edge.centre.x, edge.centre.y + edge.radius};
    // Clockwise, and from the left half, the top comes first; each is passed at most once.
    const bool top_first = (edge.turn > 0) == (edge.from.x < edge.centre.x);
    for (const Point turning : {top_first ? top : bottom, top_first ? bottom : top}) {
        if (near(rest.from, turning) || near(rest.to, turning) || !spans(rest, turning)) continue;
        ArcEdge first = rest;
        first.to = turning;
        edges.push_back(first);
        rest.from = turning;
    }
    edges.push_back(rest);
}

// Where a level line meets an edge that goes up or down all the way.
double x_at(const ArcEdge& e, double y) {
    if (e.turn == 0) return e.from.x + (y - e.from.y) / (e.to.y - e.from.y) * (e.to.x - e.from.x);
    const double half = std::sqrt(std::max(0.0, e.radius * e.radius - (y - e.centre.y) * (y - e.centre.y)));
    const bool right = (e.to.y > e.from.y) == (e.turn > 0);
    return right ? e.centre.x + half : e.centre.x - half;
}

int winding(const std::vector<ArcEdge>& edges, Point p) {
    int count = 0;
    for (const ArcEdge& e : edges) {
        if ((e.from.y <= p.y) == (e.to.y <= p.y)) continue;
        if (x_at(e, p.y) > p.x) count += e.to.y > e.from.y ? 1 : -1;
    }
    return count;
}

bool on_one_curve(const ArcEdge& a, const ArcEdge& b) {
    if ((a.turn == 0) != (b.turn == 0)) return false;
    if (a.turn != 0) return near(a.centre, b.centre) && std::abs(a.radius - b.radius) < same;
    const Point d = direction_at_start(a);
    const auto off = [&](Point p) { return std::abs((p.x - a.from.x) * d.y - (p.y - a.from.y) * d.x); };
    return off(b.from) < same && off(b.to) < same;
}

// The edge's pieces between the points where others meet it.
void append_pieces(const std::vector<ArcEdge>& edges, std::size_t i, std::vector<ArcEdge>& pieces) {
    const ArcEdge& edge = edges[i];
    std::vector<Point> splits;
    const auto split = [&](Point p) {
        if (near(p, edge.from) || near(p, edge.to) || !spans(edge, p)) return;
        for (const Point known : splits)
            if (near(known, p)) return;
        splits.push_back(p);
    };
    for (std::size_t j = 0; j < edges.size(); ++j) {
        if (j == i) continue;
        if (on_one_curve(edge, edges[j])) {
            split(edges[j].from);
            split(edges[j].to);
            continue;
        }
        // The lower of both is first, so that both edges split at the very same point.
        const std::vector<Point> meets =
            i < j ? meeting_points(edge, edges[j]) : meeting_points(edges[j], edge);
        for (const Point p : meets)
            if (spans(edges[j], p)) split(p);
    }
    // An edge is no wider than half a turn, so that the straight distance orders its points.
    std::sort(splits.begin(), splits.end(), [&](Point a, Point b) {
        return squared_distance(edge.from, a) < squared_distance(edge.from, b);
    });
    ArcEdge rest = edge;
    for (const Point p : splits) {
        ArcEdge piece = rest;
        piece.to = p;
        pieces.push_back(piece);
        rest.from = p;
    }
    pieces.push_back(rest);
}

bool has_ink_on_one_side(const std::vector<ArcEdge>& edges, const ArcEdge& piece) {
    const Point middle = middle_of(piece);
    Point d = direction_at_start(piece);
    if (piece.turn != 0)
        d = {-piece.turn * (middle.y - piece.centre.y) / piece.radius,
             piece.turn * (middle.x - piece.centre.x) / piece.radius};
    const int left = winding(edges, {middle.x + beside * d.y, middle.y - beside * d.x});
    const int right = winding(edges, {middle.x - beside * d.y, middle.y + beside * d.x});
    return left == 0 && right != 0;
}

// Edges of one line or circle that follow each other become one, short of a whole turn.
void join(ArcContour& contour) {
    const auto goes_on = [](const ArcEdge& a, const ArcEdge& b) {
        if (a.turn != b.turn || !on_one_curve(a, b)) return false;
        if (a.turn != 0) return !spans(a, b.to) || near(a.to, b.to);
        const Point d = direction_at_start(a);
        const Point e = direction_at_start(b);
        return d.x * e.x + d.y * e.y > 0;
    };
    ArcContour joined;
    for (const ArcEdge& edge : contour)
        if (!joined.empty() && goes_on(joined.back(), edge))
            joined.back().to = edge.to;
        else
            joined.push_back(edge);
    while (joined.size() > 2 && goes_on(joined.back(), joined.front())) {
        joined.front().from = joined.back().from;
        joined.pop_back();
    }
    contour = std::move(joined);
}

}  // namespace

std::vector<ArcContour> outline_of_union(const std::vector<ArcContour>& contours) {
    std::vector<ArcEdge> edges;
    for (const ArcContour& contour : contours)
        for (const ArcEdge& edge : contour)
            if (!near(edge.from, edge.to)) append_monotone(edge, edges);

    std::vector<ArcEdge> pieces;
    for (std::size_t i = 0; i < edges.size(); ++i) append_pieces(edges, i, pieces);
    std::vector<ArcEdge> kept;
    for (const ArcEdge& piece : pieces) {
        if (!has_ink_on_one_side(edges, piece)) continue;
        const bool known = std::any_of(kept.begin(), kept.end(), [&](const ArcEdge& k) {
            return near(k.from, piece.from) && near(k.to, piece.to) && near(middle_of(k), middle_of(piece));
        });
        if (!known) kept.push_back(piece);
    }

    std::vector<ArcContour> result;
    std::vector<bool> used(kept.size());
    for (std::size_t first = 0; first < kept.size(); ++first) {
        if (used[first]) continue;
        used[first] = true;
        ArcContour contour{kept[first]};
        while (!near(contour.back().to, contour.front().from)) {
            std::optional<std::size_t> next;
            for (std::size_t i = 0; i < kept.size() && !next; ++i)
                if (!used[i] && near(kept[i].from, contour.back().to)) next = i;
            if (!next) throw std::logic_error("an outline does not close");
            used[*next] = true;
            contour.push_back(kept[*next]);
            contour.back().from = contour[contour.size() - 2].to;
        }
        contour.back().to = contour.front().from;
        join(contour);
        result.push_back(std::move(contour));
    }
    return result;
}

}  // namespace lode
