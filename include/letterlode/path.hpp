#pragma once
// Closed outlines of lines and cubic Bezier curves, in millimetres unless said otherwise. x runs to the right
// and y down, as the viewer of the finished piece sees it. Outer contours run clockwise to the eye and have a
// positive area, holes run the other way: filled by the nonzero rule, and nothing else is needed to tell
// inside from outside.

#include <vector>

#include <letterlode/export.hpp>

namespace lode {

/// A point, or a shift. Millimetres.
struct Point {
    double x = 0;  ///< to the right
    double y = 0;  ///< down
    friend bool operator==(const Point&, const Point&) = default;
};

/// From where the contour stands to `to`: straight, or a cubic Bezier with two controls.
struct Segment {
    bool curved = false;  ///< a cubic Bezier, not a line
    Point control1;       ///< of no meaning where straight
    Point control2;       ///< likewise
    Point to;             ///< where the contour stands next

    /// A straight segment.
    [[nodiscard]] static Segment line(Point to) { return {false, {}, {}, to}; }
    /// A curved segment.
    [[nodiscard]] static Segment cubic(Point control1, Point control2, Point to) {
        return {true, control1, control2, to};
    }
    friend bool operator==(const Segment&, const Segment&) = default;
};

/// A closed line: its last segment ends where the first starts.
struct Contour {
    Point start;                    ///< where its first segment begins
    std::vector<Segment> segments;  ///< each begins where the one before it ends
    friend bool operator==(const Contour&, const Contour&) = default;
};

/// Outlines that belong together: what is filled, with its holes.
struct Path {
    std::vector<Contour> contours;  ///< in any order
    /// Whether there is no contour.
    [[nodiscard]] bool empty() const { return contours.empty(); }
    friend bool operator==(const Path&, const Path&) = default;
};

/// An upright rectangle.
struct Box {
    double left = 0;    ///< least x
    double top = 0;     ///< least y
    double right = 0;   ///< greatest x
    double bottom = 0;  ///< greatest y
    /// From left to right.
    [[nodiscard]] double width() const { return right - left; }
    /// From top to bottom.
    [[nodiscard]] double height() const { return bottom - top; }
    /// Its middle.
    [[nodiscard]] Point centre() const { return {(left + right) / 2, (top + bottom) / 2}; }
};

/// In mm2, below 0 for a hole. Exact for the curves themselves, not for a flattened copy. Linear.
[[nodiscard]] LODE_API double signed_area(const Contour& contour);
/// The sum of its contours' areas, so that holes are taken off.
[[nodiscard]] LODE_API double signed_area(const Path& path);
/// The smallest box that holds the curves (not their controls). Throws std::invalid_argument for an empty
/// path.
[[nodiscard]] LODE_API Box bounds(const Path& path);

/// The same line run the other way, from the same start.
[[nodiscard]] LODE_API Contour reversed(const Contour& contour);
/// Each point times the scale (which must be positive), then moved by the shift.
[[nodiscard]] LODE_API Path transformed(const Path& path, double scale, Point shift);
/// Left and right changed about the middle of a blank of this width; orientations stay as they were.
[[nodiscard]] LODE_API Path mirrored(const Path& path, double width);

/// Goes from where the contour stands round the centre, clockwise to the eye, to `to`, which must be as far
/// from the centre; a whole turn where both are the same. Curves of at most 45 degrees: at most 4.3e-6 of the
/// radius outside the true arc, and never inside.
LODE_API void append_arc(Contour& contour, Point centre, Point to);
/// All points no further than the radius from the straight line a-b (a stadium), or from the point where a is
/// b.
[[nodiscard]] LODE_API Path capsule(Point a, Point b, double radius);

}  // namespace lode
