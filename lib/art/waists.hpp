#pragma once
// Where a band that runs diagonally gives way to the letters beside it.
//
// A diagonal passes within 0.71 cells of letters that are not its own, and no straight side of any width lies
// between those and its own: a capital's corner reaches 0.37 cells across a diagonal. But round every letter
// there is room enough, a circle about the middle of its cell. So a band covers the circles of its own
// letters, and keeps out of those of the letters beside it; where these lie on a band that it does not meet,
// it stays off by a gap besides. Its side then sways between the letters, along arcs about their cells and
// the lines that touch both: where two bands pass each other their sides are parallel.
//
// Measured in cells.

#include <array>
#include <functional>
#include <span>
#include <vector>

#include <letterlode/path.hpp>

#include "art/bands.hpp"

namespace lode {

[[nodiscard]] bool is_on(Cell cell, const Band& band);

// The waists of bands of one colour. `all` are the bands of every colour, those among them; `holds_letter`
// tells cells that hold one, in and outside of the grid. Each letter keeps a circle of the radius free, those
// of bands that do not meet one of `own` there, the gap besides. In order of the bands, a step at a time. n
// log n in the cells.
[[nodiscard]] std::vector<Waist> waists_of(std::span<const Band> own, std::span<const Band> all,
                                           const std::function<bool(Cell)>& holds_letter, double radius,
                                           double gap);

// The side of a band at a waist: about the cell `from` as far as corners[0], straight to corners[1], about
// `beside` to corners[2], straight to corners[3], and about `to`. Measured from the middle of `from`, along
// the step to the next cell and towards `beside`.
struct WaistSide {
    std::array<Point, 4> corners;
};
// For circles of `radius` about the band's own cells. No waist is needed where both radii leave room for a
// straight side: then all four corners lie on it. The radii must add up to less than 1.
[[nodiscard]] WaistSide waist_side(double radius, double beside);

// What a waist takes from a band whose sides are anywhere between both radii from its middle line: the
// outline of all beyond the side, as far out as `out`. Measured from the grid's upper left corner.
[[nodiscard]] Path taken_by(const Waist& waist, double radius, double out);

}  // namespace lode
