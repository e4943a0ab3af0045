#pragma once
// What film and blade ask of an outline, measured with polyclipping on a lattice of 0.1 micrometres (where
// lengths are in mm).

#include <letterlode/path.hpp>
#include <polyclipping/clipper.hpp>

#include "art/outline_polygons.hpp"

namespace measures {

inline constexpr double per_mm = 1e4;

inline ClipperLib::Paths polygons(const lode::Path& path, int parts_of_a_curve = 16) {
    return lode::outline_polygons(path, per_mm, parts_of_a_curve);
}

inline double area(const ClipperLib::Paths& paths) {
    double sum = 0;
    for (const auto& path : paths) sum += ClipperLib::Area(path);
    return sum / (per_mm * per_mm);
}

inline ClipperLib::Paths grown(const ClipperLib::Paths& paths, double by) {
    ClipperLib::ClipperOffset offset(2, 1e-3 * per_mm);
    offset.AddPaths(paths, ClipperLib::jtRound, ClipperLib::etClosedPolygon);
    ClipperLib::Paths result;
    offset.Execute(result, by * per_mm);
    return result;
}

inline ClipperLib::Paths less(const ClipperLib::Paths& from, const ClipperLib::Paths& what) {
    ClipperLib::Clipper clipper;
    clipper.AddPaths(from, ClipperLib::ptSubject, true);
    clipper.AddPaths(what, ClipperLib::ptClip, true);
    ClipperLib::Paths result;
    clipper.Execute(ClipperLib::ctDifference, result, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
    return result;
}

// The area of the strokes that a disc of this width does not pass through (opening), and of the gaps that
// it does not (closing). Sharp corners count with the little that a disc leaves in them.
inline double thin_strokes(const lode::Path& path, double width) {
    const auto whole = polygons(path);
    return area(less(whole, grown(grown(whole, -width / 2), width / 2)));
}
inline double thin_gaps(const lode::Path& path, double width) {
    const auto whole = polygons(path);
    return area(less(grown(grown(whole, width / 2), -width / 2), whole));
}

// The area that lies in more than one contour, or is enclosed twice by one: nought where outlines neither
// cross nor lie on each other.
inline double overlap(const lode::Path& path) {
    const auto whole = polygons(path);
    ClipperLib::Clipper clipper;
    clipper.AddPaths(whole, ClipperLib::ptSubject, true);
    ClipperLib::Paths once;
    clipper.Execute(ClipperLib::ctUnion, once, ClipperLib::pftEvenOdd, ClipperLib::pftEvenOdd);
    ClipperLib::Paths filled;
    clipper.Execute(ClipperLib::ctUnion, filled, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
    const double twice = area(filled) - area(once);
    const double mislaid = area(filled) - area(whole);
    return (twice < 0 ? -twice : twice) + (mislaid < 0 ? -mislaid : mislaid);
}

// How much of one reaches out of the other.
inline double outside(const lode::Path& one, const lode::Path& other) {
    return area(less(polygons(one), polygons(other)));
}

}  // namespace measures
