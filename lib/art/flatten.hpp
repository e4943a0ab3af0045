#pragma once
// Curves as straight parts, as many as a tolerance asks for.

#include <polyclipping/clipper.hpp>

#include <letterlode/path.hpp>

namespace lode {

// The contour's points without its last, which is its first; no chord is further than the tolerance from its
// curve. Both in mm.
[[nodiscard]] std::vector<Point> flattened(const Contour& contour, double tolerance);

// On a lattice of 1e-5 mm, on which 5 m are within what the clipping library multiplies in 64 bits.
inline constexpr double lattice_per_mm = 1e5;
[[nodiscard]] ClipperLib::Path lattice_polygon(const Contour& contour, double tolerance);
[[nodiscard]] ClipperLib::Paths lattice_polygons(const Path& path, double tolerance);

}  // namespace lode
