#pragma once
// The search that fills what is hard to fill, and proves what cannot be.

#include "fill/fill.hpp"
#include "fill/letter_draw.hpp"

namespace lode {

// Letters tried between looks at a wish to stop.
inline constexpr std::uint64_t letters_between_looks = 1 << 14;

// The letter that stood in the cell before, or one drawn.
[[nodiscard]] inline Letter first_letter(const FillTask& task, const LetterDraw& draw, Cell cell,
                                         Random& random) {
    const Letter kept = task.kept ? (*task.kept)[cell] : empty_cell;
    return kept < task.weights.size() ? kept : draw.draw(random);
}

// As fill, which hands over to it. `draw` can draw where a cell is empty.
[[nodiscard]] FillResult fill_thoroughly(const Grid& placed, const FillTask& task, const LetterDraw& draw,
                                         Random& random);

}  // namespace lode
