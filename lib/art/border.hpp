#pragma once
// A border of film along a blank's outline, in mm.

#include <cstdint>

#include <letterlode/art.hpp>
#include <letterlode/path.hpp>

namespace lode {

// Nothing of the border is nearer to the outline's edge than inset, no stroke of it is under line and no gap
// under 1.5 lines, as far as the outline itself has no narrower necks. Outer contours and their holes, as
// path.hpp asks for them; nothing where the outline is too small to hold them. A rectangle along the axes
// gets straight lines and true arcs; along other outlines the curves are offsets of the outline's own.
// Notches are cut from the corners that stick out, or at even steps where an outline has at most one. Throws
// std::invalid_argument for an outline without contours, an inset below 0 and a line of 0 or less.
[[nodiscard]] Path border(const Path& outline, BorderStyle style, double inset, double line);

// How far such a border reaches inwards from its inset, in lines: all but the notches of corners, where
// nothing else stands.
[[nodiscard]] double border_lines(const Path& outline, BorderStyle style);

}  // namespace lode
