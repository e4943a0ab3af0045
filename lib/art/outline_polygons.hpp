#pragma once
// Outlines as polygons on a lattice of whole numbers, for areas and overlaps.

#include <polyclipping/clipper.hpp>

#include <letterlode/path.hpp>

namespace lode {

// Each curve in so many straight parts, points times `scale` and rounded. Contours of fewer than three points
// are left out.
[[nodiscard]] ClipperLib::Paths outline_polygons(const Path& path, double scale, int parts_of_a_curve = 16);

// The area that a nonzero filling of the polygons covers, in lattice units squared.
[[nodiscard]] double covered_area(const ClipperLib::Paths& polygons);
// The area that both cover.
[[nodiscard]] double shared_area(const ClipperLib::Paths& one, const ClipperLib::Paths& other);

}  // namespace lode
