#pragma once
// Ornaments of film, in mm: for the corners of a panel, and to stand between its heading and its grid. All
// are separate pieces and strokes with round ends, drawn by construction: outer contours as path.hpp asks for
// them, none overlapping another. No stroke is under `line` wide and no gap under `gap`.

#include <array>
#include <cstdint>

#include <letterlode/art.hpp>
#include <letterlode/path.hpp>

namespace lode {

// For an upper left corner, from (0, 0) to (size, size), and like itself with x and y changed. Throws
// std::invalid_argument for a line or a gap of 0 or less, and for a size that cannot hold the ornament at
// such a line and gap: from 40 lines, at gaps no wider than the line, all can be drawn.
[[nodiscard]] Path corner_flourish(Ornament ornament, double size, double line, double gap);

// A flourish for an upper left corner, placed into the corners of a box: upper left, upper right, lower
// right, lower left.
[[nodiscard]] std::array<Path, 4> in_corners(const Path& flourish, const Box& box);

// From (0, y) to (width, y), its left and right alike, the height 0 in its middle line. Throws
// std::invalid_argument as corner_flourish does; from 75 lines, at gaps no wider than the line, all can be
// drawn.
[[nodiscard]] Path divider(Ornament ornament, double width, double line, double gap);

}  // namespace lode
