#pragma once
// How well a band covers its letters.

#include <letterlode/path.hpp>

namespace lode {

// The smallest distance, in mm, from the letters' outline to the band's edge, counted positive inside the
// band: how much of the band is left round the letters where least is left, or, below 0, how far a letter
// sticks out. Off by at most 0.01 mm. Time grows with the curves of the band times those of
// the letters, so give it one band and the letters that lie on it.
// Throws std::invalid_argument where either has no contour.
[[nodiscard]] double clearance(const Path& band, const Path& letters);

}  // namespace lode
