#include "art/flatten.hpp"

#include <algorithm>
#include <cmath>

namespace lode {

namespace {

double bend(Point a, Point b, Point c) {
    const double x = a.x - 2 * b.x + c.x, y = a.y - 2 * b.y + c.y;
    return std::sqrt(x * x + y * y);
}

}  // namespace

std::vector<Point> flattened(const Contour& contour, double tolerance) {
    std::vector<Point> points{contour.start};
    Point from = contour.start;
    for (const Segment& s : contour.segments) {
        if (s.curved) {
            // A chord over 1/n of a cubic is off by at most an eighth of its second derivative, which is six
            // times the larger bend of its controls, over n^2.
            const double most =
                std::max(bend(from, s.control1, s.control2), bend(s.control1, s.control2, s.to));
            const double parts = std::ceil(std::sqrt(0.75 * most / tolerance));
            const int n = static_cast<int>(std::clamp(parts, 1.0, 5'000.0));
            for (int i = 1; i < n; ++i) {
                const double t = static_cast<double>(i) / n, u = static_cast<double>(n - i) / n;
                const double a = u * u * u, b = 3 * u * u * t, c = 3 * u * t * t, d = t * t * t;
                points.push_back({(a * from.x + d * s.to.x) + (b * s.control1.x + c * s.control2.x),
                                  (a * from.y + d * s.to.y) + (b * s.control1.y + c * s.control2.y)});
            }
        }
        if (s.to != points.back()) points.push_back(s.to);
        from = s.to;
    }
    if (points.size() > 1 && points.back() == points.front()) points.pop_back();
    return points;
}

ClipperLib::Path lattice_polygon(const Contour& contour, double tolerance) {
    ClipperLib::Path polygon;
    for (const Point p : flattened(contour, tolerance)) {
        const ClipperLib::IntPoint point{std::llround(p.x * lattice_per_mm),
                                         std::llround(p.y * lattice_per_mm)};
        if (polygon.empty() || polygon.back() != point) polygon.push_back(point);
    }
    while (polygon.size() > 1 && polygon.back() == polygon.front()) polygon.pop_back();
    return polygon;
}

ClipperLib::Paths lattice_polygons(const Path& path, double tolerance) {
    ClipperLib::Paths polygons;
    for (const Contour& contour : path.contours) {
        ClipperLib::Path polygon = lattice_polygon(contour, tolerance);
        if (polygon.size() >= 3) polygons.push_back(std::move(polygon));
    }
    return polygons;
}

}  // namespace lode
