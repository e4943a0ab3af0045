#include "art/arc_outline.hpp"

#include <algorithm>
#include <cmath>

namespace lode {

namespace {

constexpr double touching = 1e-9;

double distance(Point a, Point b) {
    const double x = b.x - a.x;
    const double y = b.y - a.y;
    return std::sqrt(x * x + y * y);
}

Point unit(Point from, Point to) {
    const double size = distance(from, to);
    return {(to.x - from.x) / size, (to.y - from.y) / size};
}

Point along_arc(const ArcEdge& edge, Point at) {
    const Point out = unit(edge.centre, at);
    return {-edge.turn * out.y, edge.turn * out.x};
}

// Grows with the angle from the edge's start to the point, from 0 to 4 for a whole turn.
double turned(const ArcEdge& edge, Point p) {
    const Point first = unit(edge.centre, edge.from);
    const Point other = unit(edge.centre, p);
    const double cosine = first.x * other.x + first.y * other.y;
    const double sine = edge.turn * (first.x * other.y - first.y * other.x);
    return sine >= 0 ? 1 - cosine : 3 + cosine;
}

// Line p + t d (d a unit vector) and circle.
std::vector<Point> line_and_circle(Point p, Point d, Point centre, double radius) {
    const double foot = (centre.x - p.x) * d.x + (centre.y - p.y) * d.y;
    const Point near{p.x + foot * d.x, p.y + foot * d.y};
    const double away = distance(near, centre);
    if (away > radius + touching) return {};
    if (away > radius - touching) return {near};
    const double half = std::sqrt(radius * radius - away * away);
    return {{near.x - half * d.x, near.y - half * d.y}, {near.x + half * d.x, near.y + half * d.y}};
}

std::vector<Point> two_circles(const ArcEdge& a, const ArcEdge& b) {
    const double apart = distance(a.centre, b.centre);
    if (apart < touching) return {};
    const Point d = unit(a.centre, b.centre);
    const double foot = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
    const Point near{a.centre.x + foot * d.x, a.centre.y + foot * d.y};
    // By where one circle reaches beside the other, since the square of the half chord is small where they
    // touch.
    const double gap =
        std::max({apart - a.radius - b.radius, a.radius - b.radius - apart, b.radius - a.radius - apart});
    if (gap > touching) return {};
    if (gap > -touching)
        return {{a.centre.x + (foot < 0 ? -1 : 1) * a.radius * d.x,
                 a.centre.y + (foot < 0 ? -1 : 1) * a.radius * d.y}};
    const double half = std::sqrt(std::max(0.0, a.radius * a.radius - foot * foot));
    return {{near.x - half * d.y, near.y + half * d.x}, {near.x + half * d.y, near.y - half * d.x}};
}

}  // namespace

ArcEdge ArcEdge::arc(Point from, Point to, Point centre, int turn) {
    return {from, to, turn, centre, distance(centre, from)};
}

Point direction_at_start(const ArcEdge& edge) {
    return edge.turn == 0 ? unit(edge.from, edge.to) : along_arc(edge, edge.from);
}
Point direction_at_end(const ArcEdge& edge) {
    return edge.turn == 0 ? unit(edge.from, edge.to) : along_arc(edge, edge.to);
}

ArcEdge parallel(const ArcEdge& edge, double to_left) {
    const Point first = direction_at_start(edge);
    const Point last = direction_at_end(edge);
    ArcEdge result = edge;
    result.from = {edge.from.x + to_left * first.y, edge.from.y - to_left * first.x};
    result.to = {edge.to.x + to_left * last.y, edge.to.y - to_left * last.x};
    if (edge.turn != 0) result.radius = edge.radius + edge.turn * to_left;
    return result;
}

ArcEdge reversed(const ArcEdge& edge) {
    return {edge.to, edge.from, -edge.turn, edge.centre, edge.radius};
}

std::vector<Point> meeting_points(const ArcEdge& a, const ArcEdge& b) {
    if (a.turn != 0 && b.turn != 0) return two_circles(a, b);
    if (a.turn != 0) return line_and_circle(b.from, unit(b.from, b.to), a.centre, a.radius);
    if (b.turn != 0) return line_and_circle(a.from, unit(a.from, a.to), b.centre, b.radius);
    const Point d = unit(a.from, a.to);
    const Point e = unit(b.from, b.to);
    const double crossed = d.x * e.y - d.y * e.x;
    if (std::abs(crossed) < touching) return {};
    const double t = ((b.from.x - a.from.x) * e.y - (b.from.y - a.from.y) * e.x) / crossed;
    return {{a.from.x + t * d.x, a.from.y + t * d.y}};
}

bool spans(const ArcEdge& edge, Point p) {
    if (distance(p, edge.from) < touching || distance(p, edge.to) < touching) return true;
    if (edge.turn != 0) return turned(edge, p) <= turned(edge, edge.to);
    const Point d = unit(edge.from, edge.to);
    const double t = (p.x - edge.from.x) * d.x + (p.y - edge.from.y) * d.y;
    return t >= 0 && t <= distance(edge.from, edge.to);
}

Path path_of(const std::vector<ArcContour>& contours) {
    Path path;
    for (const ArcContour& edges : contours) {
        Contour contour{edges.front().from, {}};
        for (const ArcEdge& edge : edges) {
            if (edge.turn == 0) {
                contour.segments.push_back(Segment::line(edge.to));
            } else if (edge.turn > 0) {
                append_arc(contour, edge.centre, edge.to);
            } else {
                Contour back{edge.to, {}};
                append_arc(back, edge.centre, edge.from);
                for (std::size_t i = back.segments.size(); i-- > 0;) {
                    const Segment& s = back.segments[i];
                    const Point to = i == 0 ? back.start : back.segments[i - 1].to;
                    contour.segments.push_back(Segment::cubic(s.control2, s.control1, to));
                }
            }
        }
        contour.segments.back().to = contour.start;
        path.contours.push_back(std::move(contour));
    }
    return path;
}

}  // namespace lode
