#pragma once
// Marks by which one layer is laid over another: outside the blank, so that none of them stays on it.

#include <vector>

#include <letterlode/blank.hpp>
#include <letterlode/drawing.hpp>

namespace lode {

// How far the marks reach beyond the blank's box.
inline constexpr double registration_overhang_mm = 10;

// A cross beyond each corner of the blank's box, and a square in its place at the upper left, as the viewer
// sees it, which tells how the layer is turned. No part is narrower than 1 mm.
[[nodiscard]] std::vector<Piece> registration_marks(const BlankSize& blank);

}  // namespace lode
