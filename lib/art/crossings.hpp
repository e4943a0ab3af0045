#pragma once
// Whether polygons cross themselves or one another, told in bounded time.

#include <polyclipping/clipper.hpp>

namespace lode {

enum class Crossing {
    none,
    some,
    too_intricate,  // more edges side by side than a blank has: not looked at further
};
// To touch in a point is no crossing, and neither is a slit, whose sides lie on one another, or what rounding
// to the lattice can make: an overlap of less than a thousandth of a millimetre along the polygons. Polygons
// that share a side count as crossing.
[[nodiscard]] Crossing crossing_of(const ClipperLib::Paths& polygons);

}  // namespace lode
