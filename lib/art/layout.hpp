#pragma once
// Where grid and heading stand on the blank.

#include <optional>
#include <vector>

#include <letterlode/art.hpp>

#include "art/lettering.hpp"

namespace lode {

// The rows and columns that hold open cells: a mask may leave whole rows empty, and they need no room.
struct Extent {
    Cell first;
    Size size;
};

struct Layout {
    double cell = 0;            // mm
    Point corner;               // of row 1, column 1, whether it is open or not
    double heading_cap = 0;     // mm
    double heading_middle = 0;  // x of the middle of each line
    std::vector<double> baselines;
};

// The largest cells that fit, or nothing where they are under least_cell_mm.
std::optional<Layout> fit(const BlankSize& blank, const Extent& extent, double letter_cap,
                          const Heading& heading);

}  // namespace lode
