#pragma once
// Measuring what can be called off.

#include <optional>

#include <letterlode/cut.hpp>

namespace lode {

// As measure; none where it was cancelled. Progress counts pieces.
[[nodiscard]] std::optional<Measures> measured(const Artwork& artwork, double least_stroke_mm,
                                               double least_gap_mm, const CutControl& control);

}  // namespace lode
