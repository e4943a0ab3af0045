#include <algorithm>
#include <cmath>
#include <optional>

#include "art/arc_outline.hpp"

namespace lode {

namespace {

double distance(Point a, Point b) {
    const double x = b.x - a.x;
    const double y = b.y - a.y;
    return std::sqrt(x * x + y * y);
}

// The foot of a point on the edge's line or circle.
Point foot(const ArcEdge& edge, Point p) {
    if (edge.turn != 0) {
        const double away = distance(edge.centre, p);
        return {edge.centre.x + edge.radius * (p.x - edge.centre.x) / away,
                edge.centre.y + edge.radius * (p.y - edge.centre.y) / away};
    }
    const Point d = direction_at_start(edge);
    const double t = (p.x - edge.from.x) * d.x + (p.y - edge.from.y) * d.y;
    return {edge.from.x + t * d.x, edge.from.y + t * d.y};
}

// The arc that touches both edges, turning with the corner between them.
std::optional<ArcEdge> fillet(const ArcEdge& before, const ArcEdge& after, double radius, int turn) {
    // The centre lies to the right of both where the corner turns clockwise.
    if (before.turn != 0 && before.radius - before.turn * turn * radius <= 0) return std::nullopt;
    if (after.turn != 0 && after.radius - after.turn * turn * radius <= 0) return std::nullopt;
    const std::vector<Point> centres =
        meeting_points(parallel(before, -turn * radius), parallel(after, -turn * radius));
    std::optional<ArcEdge> best;
    double nearest = 0;
    for (const Point centre : centres) {
        const double away = distance(centre, before.to);
        if (best && away >= nearest) continue;
        const Point from = foot(before, centre);
        const Point to = foot(after, centre);
        if (!spans(before, from) || !spans(after, to)) continue;
        nearest = away;
        best = ArcEdge{from, to, turn, centre, radius};
    }
    return best;
}

// What a fillet may take of an edge, so that one at the other end has as much.
bool leaves_half(const ArcEdge& edge, Point corner, Point cut) {
    return distance(corner, cut) <= 0.499 * distance(edge.from, edge.to);
}

}  // namespace

ArcContour with_rounded_corners(const ArcContour& contour, double convex_radius, double concave_radius) {
    const std::size_t count = contour.size();
    std::vector<std::optional<ArcEdge>> fillets(count);  // by the edge before the corner
    for (std::size_t i = 0; i < count; ++i) {
        const ArcEdge& before = contour[i];
        const ArcEdge& after = contour[(i + 1) % count];
        const Point d = direction_at_end(before);
        const Point e = direction_at_start(after);
        const double sine = d.x * e.y - d.y * e.x;
        const double cosine = d.x * e.x + d.y * e.y;
        constexpr double smooth = 0.02;
        if (cosine > 0 && std::abs(sine) < smooth) continue;
        const int turn = sine > 0 ? 1 : -1;
        double radius = turn > 0 ? convex_radius : concave_radius;
        for (int tries = 0; tries < 12 && !fillets[i] && radius > 0; ++tries, radius *= 0.8) {
            const auto arc = fillet(before, after, radius, turn);
            if (arc && leaves_half(before, before.to, arc->from) && leaves_half(after, after.from, arc->to))
                fillets[i] = arc;
        }
    }
    ArcContour result;
    for (std::size_t i = 0; i < count; ++i) {
        ArcEdge edge = contour[i];
        if (const auto& start = fillets[(i + count - 1) % count]) edge.from = start->to;
        if (fillets[i]) edge.to = fillets[i]->from;
        result.push_back(edge);
        if (fillets[i]) result.push_back(*fillets[i]);
    }
    return result;
}

}  // namespace lode
