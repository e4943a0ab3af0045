#pragma once
// A word ringed rather than backed: the outline of a capsule as a line of film.

#include <letterlode/path.hpp>

namespace lode {

// A line of this breadth inside the capsule of outer_radius about the straight line first-last: an outer
// contour and its hole, in any one unit. Throws std::invalid_argument unless outer_radius > line > 0.
[[nodiscard]] Path ring(Point first, Point last, double outer_radius, double line);

}  // namespace lode
