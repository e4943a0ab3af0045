#pragma once
// A judge of thin features that shares nothing with the medial axis of the library: from each of many points
// on the true curves a ball shrinks along the true normal until nothing of the outline is left in it (J. Ma,
// S. W. Bae, S. Choi, 3D medial axis point approximation using nearest neighbors and the normal field, The
// Visual Computer 28, 2012). No Voronoi diagram, no polygon, no lattice, no exact arithmetic.

#include <letterlode/path.hpp>
#include <optional>

namespace judge {

struct Widths {
    std::optional<double> stroke;
    std::optional<double> gap;
};

// The narrowest of both by the three rules that lib/cut/thin_features.hpp states, from samples no farther
// apart than the spacing. Filled is what the contours wind about (nonzero), however they overlap. O(n^2) for
// n samples.
[[nodiscard]] Widths narrowest_by_balls(const lode::Path& path, double spacing);

}  // namespace judge
