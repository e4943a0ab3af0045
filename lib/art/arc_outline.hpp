#pragma once
// Outlines of straight lines and circular arcs. Unlike a Bezier curve, an arc has a parallel curve that is an
// arc again, and meets another in points that square roots give: what a compass and a ruler draw can be
// widened, united and rounded exactly. y runs down, as in path.hpp, and so do the rules for orientation.

#include <vector>

#include <letterlode/path.hpp>

namespace lode {

// Straight where turn is 0; else about the centre, clockwise to the eye where turn is 1, the other way where
// it is -1. No arc goes all the way round.
struct ArcEdge {
    Point from;
    Point to;
    int turn = 0;
    Point centre;
    double radius = 0;

    [[nodiscard]] static ArcEdge line(Point from, Point to) { return {from, to, 0, {}, 0}; }
    [[nodiscard]] static ArcEdge arc(Point from, Point to, Point centre, int turn);
};
using ArcContour = std::vector<ArcEdge>;

// The unit vector along the edge where it starts, and where it ends.
[[nodiscard]] Point direction_at_start(const ArcEdge& edge);
[[nodiscard]] Point direction_at_end(const ArcEdge& edge);

// The curve at a distance to the left (to the eye, going along it); an arc must have a radius left.
[[nodiscard]] ArcEdge parallel(const ArcEdge& edge, double to_left);
[[nodiscard]] ArcEdge reversed(const ArcEdge& edge);

// Where the whole lines or circles meet that the edges are parts of: none to two points, and one where they
// touch. Nothing for what lies on each other.
[[nodiscard]] std::vector<Point> meeting_points(const ArcEdge& a, const ArcEdge& b);
// Whether a point of the edge's line or circle lies between the edge's ends.
[[nodiscard]] bool spans(const ArcEdge& edge, Point on_curve);

// The outline of all points about which the contours wind, however they cross or overlap: closed contours
// that cross nothing. Edges of one line or circle that follow each other become one. Quadratic in the number
// of edges. Throws std::logic_error where contours touch in a way that leaves none closed.
[[nodiscard]] std::vector<ArcContour> outline_of_union(const std::vector<ArcContour>& contours);

// Puts an arc of the radius in place of each corner, where the edges beside it leave room for one, else a
// smaller one.
[[nodiscard]] ArcContour with_rounded_corners(const ArcContour& contour, double convex_radius,
                                              double concave_radius);

[[nodiscard]] Path path_of(const std::vector<ArcContour>& contours);

}  // namespace lode
