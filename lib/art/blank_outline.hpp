#pragma once
// From the contours of a drawn element to the outline of a blank.

#include <string>
#include <variant>
#include <vector>

#include <letterlode/blank.hpp>

#include "art/svg_path_data.hpp"

namespace lode {

struct DrawnShape {
    std::vector<Subpath> subpaths;  // in mm
    bool filled = true;
    bool evenodd = false;
};

// The largest contour, clockwise to the eye, and those directly within it that its material leaves free, the
// other way round; moved to 0,0. What lies outside it or within such a hole is left out.
// A fault in words where contours cross themselves or one another, where the outline is too small or too
// large for a blank, or has so many turns side by side that telling would take too long.
[[nodiscard]] std::variant<Path, std::string> blank_outline(const DrawnShape& shape);

// The largest area that a closed contour has, or one that filling closes; 0 where there is none.
[[nodiscard]] double largest_area(const DrawnShape& shape);

}  // namespace lode
