#pragma once
// The search that fills what is hard to fill, and proves what cannot be.

#include "fill/fill.hpp"
#include "fill/letter_draw.hpp"

namespace lode {

// As fill, which hands over to it. `draw` can draw where a cell is empty.
[[nodiscard]] FillResult fill_thoroughly(const Grid& placed, const FillTask& task, const LetterDraw& draw,
                                         Random& random);

}  // namespace lode
