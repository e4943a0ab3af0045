#pragma once
// Arithmetic of points, and one piece of an outline taken by itself: a straight line or a cubic Bezier with
// all four of its points. Only + - * / and square roots, which every machine rounds alike.

#include <cmath>

#include <letterlode/path.hpp>

namespace lode {

inline Point operator+(Point a, Point b) {
    return {a.x + b.x, a.y + b.y};
}
inline Point operator-(Point a, Point b) {
    return {a.x - b.x, a.y - b.y};
}
inline Point operator*(double by, Point p) {
    return {by * p.x, by * p.y};
}
inline double dot(Point a, Point b) {
    return a.x * b.x + a.y * b.y;
}
inline double cross(Point a, Point b) {
    return a.x * b.y - a.y * b.x;
}
inline double length(Point p) {
    return std::sqrt(dot(p, p));
}

// A straight one keeps its controls at the thirds, so that all below holds for it too.
struct Cubic {
    Point p0, p1, p2, p3;
    bool straight = false;

    [[nodiscard]] static Cubic line(Point from, Point to) {
        return {from, from + (1.0 / 3) * (to - from), to + (1.0 / 3) * (from - to), to, true};
    }
    [[nodiscard]] static Cubic of(Point from, const Segment& s) {
        return s.curved ? Cubic{from, s.control1, s.control2, s.to, false} : line(from, s.to);
    }
    [[nodiscard]] Segment segment() const {
        return straight ? Segment::line(p3) : Segment::cubic(p1, p2, p3);
    }
    [[nodiscard]] Cubic reversed() const { return {p3, p2, p1, p0, straight}; }

    [[nodiscard]] Point at(double t) const;
    // The derivative by t.
    [[nodiscard]] Point speed(double t) const;
    // The second derivative by t.
    [[nodiscard]] Point bend(double t) const;
    // The piece between two parameters, first < last.
    [[nodiscard]] Cubic part(double first, double last) const;
    // The two halves about t = 1/2.
    [[nodiscard]] Cubic first_half() const;
    [[nodiscard]] Cubic second_half() const { return reversed().first_half().reversed(); }
    // With other ends; the controls move with them, and so the directions at the ends stay.
    [[nodiscard]] Cubic between(Point from, Point to) const;
    // The directions at the ends, of length 1; past controls that stand on an end. (0, 0) where all points
    // are one.
    [[nodiscard]] Point way_out() const;
    [[nodiscard]] Point way_in() const;
};

// The pieces of a contour in order; those of no length are left out, and a line closes what stands open.
template <class Take>
void each_piece(const Contour& contour, Take take) {
    Point from = contour.start;
    for (const Segment& s : contour.segments) {
        if (s.curved ? !(s.control1 == from && s.control2 == from && s.to == from) : s.to != from)
            take(Cubic::of(from, s));
        from = s.to;
    }
    if (from != contour.start) take(Cubic::line(from, contour.start));
}

}  // namespace lode
