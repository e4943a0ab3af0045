#include "cut/edge_curve.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace lode {

Point EdgeCurve::at(double t) const {
    const double u = 1 - t;
    if (!segment.curved) return u * start + t * segment.to;
    return u * u * u * start + 3 * u * u * t * segment.control1 + 3 * u * t * t * segment.control2 +
           t * t * t * segment.to;
}

Point EdgeCurve::speed(double t) const {
    if (!segment.curved) return segment.to - start;
    const double u = 1 - t;
    return 3 * (u * u * (segment.control1 - start) + 2 * u * t * (segment.control2 - segment.control1) +
                t * t * (segment.to - segment.control2));
}

Point EdgeCurve::bend(double t) const {
    if (!segment.curved) return {};
    return 6 * ((1 - t) * (start - 2 * segment.control1 + segment.control2) +
                t * (segment.control1 - 2 * segment.control2 + segment.to));
}

EdgeCurve EdgeCurve::between(double from, double to) const {
    if (!segment.curved) return {at(from), Segment::line(at(to))};
    const double third = (to - from) / 3;
    return {at(from), Segment::cubic(at(from) + third * speed(from), at(to) - third * speed(to), at(to))};
}

double EdgeCurve::nearest(Point to, double guess) const {
    if (!segment.curved) {
        const Point along = segment.to - start;
        const double size = dot(along, along);
        return size > 0 ? std::clamp(dot(to - start, along) / size, 0.0, 1.0) : 0;
    }
    double t = std::clamp(guess, 0.0, 1.0);
    for (int step = 0; step < 4; ++step) {
        const Point away = at(t) - to;
        const Point along = speed(t);
        const double square = dot(along, along);
        if (!(square > 0)) break;
        // About a centre of curvature all points are as near, and the sum vanishes: half the square holds the
        // step in bounds.
        const double slope = std::max(square + dot(away, bend(t)), square / 2);
        const double next = std::clamp(t - dot(away, along) / slope, 0.0, 1.0);
        if (next == t) break;
        t = next;
    }
    return t;
}

int EdgeCurve::parts(double tolerance) const {
    if (!segment.curved) return 1;
    const std::array<Point, 3> speeds{segment.control1 - start, segment.control2 - segment.control1,
                                      segment.to - segment.control2};
    const Point chord = segment.to - start;
    double steepest = 0;
    for (const Point speed : speeds) {
        const double along = dot(speed, chord);
        steepest = along > 0 ? std::max(steepest, std::abs(cross(chord, speed)) / along) : 1e300;
    }
    double bend = 0;
    for (const Point change : {speeds[1] - speeds[0], speeds[2] - speeds[1]}) {
        double size = length(change);
        if (steepest < 1)
            size = std::min(size, (std::abs(cross(chord, change)) + steepest * std::abs(dot(chord, change))) /
                                      length(chord));
        bend = std::max(bend, size);
    }
    constexpr double most = 200;
    return static_cast<int>(std::clamp(std::ceil(std::sqrt(0.75 * bend / tolerance)), 1.0, most));
}

}  // namespace lode
