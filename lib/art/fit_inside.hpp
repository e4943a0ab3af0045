#pragma once
// How large something can be set inside an outline, and where. Lengths in mm.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include <letterlode/grid.hpp>
#include <letterlode/path.hpp>

namespace lode {

// Curves are followed to this far for fitting.
inline constexpr double fit_tolerance_mm = 0.002;

// Where things may be set: all that is at least the margin away from the outline, its holes and what is kept
// clear (outlines of their own). Of straight lines; sides that were straight stay so, to 1e-5 mm.
[[nodiscard]] Path room_inside(const Path& outline, double margin, const Path& kept_clear = {});

// Boxes times `scale`, moved to `at`.
struct Fit {
    double scale = 0;
    Point at;
};
// The largest scale at which all boxes, given about a reference point, lie inside the region (filled
// nonzero), and where. To 0.005 mm of the boxes' sides; where several places are as good to that, the one on
// the middle of the region's box is taken, or the nearest to it that is found, so that a symmetric thing
// stands on the axis of a symmetric region. Nothing where the region or a box has no area, or nothing fits.
// Branch and bound, some ms for a heart; the work is bounded, and the answer fits even where the bound is
// met.
// `on_the_middle`: only places where the middle of all boxes together stands on the upright through the
// middle of the region's box are taken.
enum class Across : std::uint8_t { anywhere, on_the_middle };
[[nodiscard]] std::optional<Fit> largest_fit(const Path& region, std::span<const Box> boxes,
                                             Across where = Across::anywhere);

// Whether the box lies inside the region; touching is inside, by up to 1e-6 mm.
[[nodiscard]] bool holds(const Path& region, const Box& box);

// Square cells that follow an outline.
struct CellFit {
    double cell = 0;
    Point corner;  // of the mask's first row and column
    Mask mask;     // no row and no column at its rim is closed all along
};
// The largest cells of which at least so many, joined side to side, lie inside the region and outside of the
// boxes kept clear. Symmetric, left to right and top to bottom, where region and boxes are. Lattices are
// tried at halves of a cell about an axis of symmetry and at eighths elsewhere, and their places then
// refined; cells come out within 0.1 percent of the best for the lattice's place. Nothing where cells would
// be under 0.5 mm.
[[nodiscard]] std::optional<CellFit> cells_inside(const Path& region, std::size_t at_least_cells,
                                                  const std::vector<Box>& kept_clear = {});

}  // namespace lode
