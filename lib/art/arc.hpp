#pragma once
// Circular arcs as cubic Bezier curves. Angles are kept as unit vectors and halved with square roots, which
// every machine rounds alike; sines and cosines are not promised to be.

#include <letterlode/path.hpp>

namespace lode {

// How far a control lies along the tangent, in radii, for an arc of less than 180 degrees given by its cosine
// and sine: 4/3 tan(angle / 4), at which the curve's middle meets the circle.
[[nodiscard]] double arc_handle(double cosine, double sine);

// The unit vector half way from one unit vector to another, turning clockwise to the eye; a whole turn where
// they agree.
[[nodiscard]] Point half_way(Point from, Point to);

}  // namespace lode
