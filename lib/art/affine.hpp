#pragma once
// Maps of the plane that keep lines straight.

#include <letterlode/path.hpp>

namespace lode {

// (x, y) to (a x + c y + e, b x + d y + f), as SVG orders them.
struct Affine {
    double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;
    [[nodiscard]] Point operator()(Point p) const { return {a * p.x + c * p.y + e, b * p.x + d * p.y + f}; }
};
// First `inner`, then `outer`.
[[nodiscard]] Affine operator*(const Affine& outer, const Affine& inner);
[[nodiscard]] Contour mapped(const Contour& contour, const Affine& map);

// Cosine and sine of an angle, to a few units of their last place, and exact at quarters of a turn. Made of
// sums and products alone, so the same on every machine.
struct AngleTurn {
    double cosine = 1;
    double sine = 0;
};
[[nodiscard]] AngleTurn turn_of(double degrees);

}  // namespace lode
