#pragma once
// Where a letter has its middle to the eye.

#include <letterlode/path.hpp>

namespace lode {

// The x about which the path's ink is in balance: the centre of its area, by exact integrals over the curves.
// For a path of no area the middle of its box. Throws std::invalid_argument for an empty path.
[[nodiscard]] double centre_of_ink(const Path& path);

// Half way between the middle of the box and the centre of the ink. The box alone puts an L or a J, all of
// whose ink is on one side, beside the letters above and below it; the ink alone moves it too far, since the
// eye sees the foot's end, too. To go by both is common practice in lettering; the half is by eye.
[[nodiscard]] double optical_middle(const Path& path);

}  // namespace lode
