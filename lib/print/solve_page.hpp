#pragma once
// What the page to solve a puzzle on is drawn with, for those who judge it.

#include <array>
#include <span>
#include <vector>

#include <letterlode/colour.hpp>

namespace lode {

// Behind the letters, by day and by night: --card in lib/print/solve/page.css.
inline constexpr Colour solve_ground{0xFF, 0xFF, 0xFF};
inline constexpr Colour solve_ground_dark{0x21, 0x27, 0x26};

// Success criterion 1.4.11 of WCAG 2.2, at level AA: what must be seen to understand what is shown.
inline constexpr double least_contrast_of_marks = 3;

// Those of the colours that can be seen on the ground; where none can, some of our own.
[[nodiscard]] std::vector<Colour> seen_on(Colour ground, std::span<const Colour> wanted);

}  // namespace lode
