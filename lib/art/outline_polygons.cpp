#include "art/outline_polygons.hpp"

#include <cmath>

#include "art/clipping.hpp"

namespace lode {
namespace {

double area_of(const ClipperLib::Paths& polygons) {
    double area = 0;
    for (const auto& polygon : polygons) area += ClipperLib::Area(polygon);
    return std::abs(area);
}

}  // namespace

ClipperLib::Paths outline_polygons(const Path& path, double scale, int parts_of_a_curve) {
    ClipperLib::Paths polygons;
    for (const Contour& contour : path.contours) {
        ClipperLib::Path polygon;
        const auto add = [&](double x, double y) {
            const ClipperLib::IntPoint point{std::llround(x * scale), std::llround(y * scale)};
            if (polygon.empty() || polygon.back() != point) polygon.push_back(point);
        };
        add(contour.start.x, contour.start.y);
        Point from = contour.start;
        for (const Segment& segment : contour.segments) {
            for (int part = 1; segment.curved && part < parts_of_a_curve; ++part) {
                const double t = static_cast<double>(part) / parts_of_a_curve;
                const double u = 1 - t;
                const double a = u * u * u, b = 3 * u * u * t, c = 3 * u * t * t, d = t * t * t;
                add(a * from.x + b * segment.control1.x + c * segment.control2.x + d * segment.to.x,
                    a * from.y + b * segment.control1.y + c * segment.control2.y + d * segment.to.y);
            }
            add(segment.to.x, segment.to.y);
            from = segment.to;
        }
        if (polygon.size() >= 3) polygons.push_back(std::move(polygon));
    }
    return polygons;
}

double covered_area(const ClipperLib::Paths& polygons) {
    ClipperLib::Clipper clipper;
    clipper.AddPaths(polygons, ClipperLib::ptSubject, true);
    ClipperLib::Paths joined;
    need_done(clipper,
              clipper.Execute(ClipperLib::ctUnion, joined, ClipperLib::pftNonZero, ClipperLib::pftNonZero));
    return area_of(joined);
}

double shared_area(const ClipperLib::Paths& one, const ClipperLib::Paths& other) {
    ClipperLib::Clipper clipper;
    clipper.AddPaths(one, ClipperLib::ptSubject, true);
    clipper.AddPaths(other, ClipperLib::ptClip, true);
    ClipperLib::Paths shared;
    need_done(clipper, clipper.Execute(ClipperLib::ctIntersection, shared, ClipperLib::pftNonZero,
                                       ClipperLib::pftNonZero));
    return area_of(shared);
}

}  // namespace lode
