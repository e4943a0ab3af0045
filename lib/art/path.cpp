#include <letterlode/path.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <stdexcept>

namespace lode {

namespace {

double cross(Point a, Point b) {
    return a.x * b.y - a.y * b.x;
}

// Green's theorem gives the area under a cubic as a fixed sum of cross products of its points.
double twice_area(Point from, const Segment& s) {
    if (!s.curved) return cross(from, s.to);
    return (6 * cross(from, s.control1) + 3 * cross(from, s.control2) + cross(from, s.to) +
            3 * cross(s.control1, s.control2) + 3 * cross(s.control1, s.to) + 6 * cross(s.control2, s.to)) /
           10;
}

double at(double a, double b, double c, double d, double t) {
    const double u = 1 - t;
    return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
}

// Widens lowest..highest by the turning points of one coordinate of a cubic.
void widen(double a, double b, double c, double d, double& lowest, double& highest) {
    const auto take = [&](double t) {
        if (!(t > 0 && t < 1)) return;
        const double value = at(a, b, c, d, t);
        lowest = std::min(lowest, value);
        highest = std::max(highest, value);
    };
    // The derivative, up to a factor of 3: p t^2 + 2 q t + r.
    const double p = d - 3 * c + 3 * b - a;
    const double q = c - 2 * b + a;
    const double r = b - a;
    const double discriminant = q * q - p * r;
    if (discriminant < 0) return;
    // The root that does not cancel, and its fellow by the product of both.
    const double away = -(q + std::copysign(std::sqrt(discriminant), q));
    if (p != 0) take(away / p);
    if (away != 0) take(r / away);
}

template <class Map>
Contour mapped(const Contour& contour, Map map) {
    Contour result{map(contour.start), {}};
    result.segments.reserve(contour.segments.size());
    for (const Segment& s : contour.segments)
        result.segments.push_back({s.curved, map(s.control1), map(s.control2), map(s.to)});
    return result;
}

}  // namespace

double signed_area(const Contour& contour) {
    // Measured from the start, so that a far-away contour loses no digits.
    const Point origin = contour.start;
    const auto local = [origin](Point p) { return Point{p.x - origin.x, p.y - origin.y}; };
    double twice = 0;
    Point from{};
    for (const Segment& s : contour.segments) {
        const Segment moved{s.curved, local(s.control1), local(s.control2), local(s.to)};
        twice += twice_area(from, moved);
        from = moved.to;
    }
    return twice / 2;
}

double signed_area(const Path& path) {
    double sum = 0;
    for (const Contour& contour : path.contours) sum += signed_area(contour);
    return sum;
}

Box bounds(const Path& path) {
    std::optional<Box> box;
    const auto take = [&](Point p) {
        if (!box) box = Box{p.x, p.y, p.x, p.y};
        box->left = std::min(box->left, p.x);
        box->right = std::max(box->right, p.x);
        box->top = std::min(box->top, p.y);
        box->bottom = std::max(box->bottom, p.y);
    };
    for (const Contour& contour : path.contours) {
        Point from = contour.start;
        take(from);
        for (const Segment& s : contour.segments) {
            take(s.to);
            if (s.curved) {
                widen(from.x, s.control1.x, s.control2.x, s.to.x, box->left, box->right);
                widen(from.y, s.control1.y, s.control2.y, s.to.y, box->top, box->bottom);
            }
            from = s.to;
        }
    }
    if (!box) throw std::invalid_argument("an empty path has no bounds");
    return *box;
}

Contour reversed(const Contour& contour) {
    Contour result{contour.start, {}};
    result.segments.reserve(contour.segments.size());
    for (std::size_t i = contour.segments.size(); i-- > 0;) {
        const Segment& s = contour.segments[i];
        const Point to = i == 0 ? contour.start : contour.segments[i - 1].to;
        result.segments.push_back({s.curved, s.control2, s.control1, to});
    }
    return result;
}

Path transformed(const Path& path, double scale, Point shift) {
    if (!(scale > 0)) throw std::invalid_argument("a path is scaled by a positive number");
    Path result;
    result.contours.reserve(path.contours.size());
    for (const Contour& contour : path.contours)
        result.contours.push_back(mapped(contour, [&](Point p) {
            return Point{p.x * scale + shift.x, p.y * scale + shift.y};
        }));
    return result;
}

Path mirrored(const Path& path, double width) {
    Path result;
    result.contours.reserve(path.contours.size());
    for (const Contour& contour : path.contours)
        result.contours.push_back(reversed(mapped(contour, [width](Point p) {
            return Point{width - p.x, p.y};
        })));
    return result;
}

}  // namespace lode
