#pragma once
// Why a grid cannot be filled, as little of it as there need be: told to a maker who has been refused.

#include <vector>

#include "fill/fill.hpp"

namespace lode {

struct FillConflict {
    // With nothing but these forbidden the grid cannot be filled either.
    std::vector<FillCause> causes;
    bool irreducible = false;  // any one of them allowed, it can be filled
    // Where one cell alone is to blame: the cell, and what each letter that is allowed would clash with
    // there.
    struct Barred {
        Letter letter;
        FillCause cause;
    };
    Cell cell;
    std::vector<Barred> barred;  // empty where it takes several cells
};

// For a fill that ended as impossible with these causes. Spends at most the task's effort.
[[nodiscard]] FillConflict find_fill_conflict(const Grid& placed, const FillTask& task,
                                              const std::vector<FillCause>& causes, Random& random);

}  // namespace lode
