#include "fill/filler_rules.hpp"

#include <algorithm>

namespace lode {
namespace {

// False where no neighbour is equal, as is mostly so: asked of every letter that is drawn. At the border the
// neighbours of one side are looked at twice, instead of some that are not there.
bool may_be_in_run(const Grid& grid, Cell cell) {
    const auto [rows, columns] = grid.size();
    if (rows == 1 || columns == 1) return true;
    const std::ptrdiff_t left = cell.column > 0 ? -1 : 1, right = cell.column + 1 < columns ? 1 : -1;
    const Letter* const here = grid.letters().data() + grid.index(cell);
    const Letter* const above = here + (cell.row > 0 ? -columns : columns);
    const Letter* const below = here + (cell.row + 1 < rows ? columns : -columns);
    const Letter letter = *here;
    const auto any_of_row = [&](const Letter* at) { return (at[left] == letter) | (at[right] == letter); };
    return (any_of_row(here) | any_of_row(above) | any_of_row(below) | (*above == letter) |
            (*below == letter)) != 0;
}

// How far it is to the border is reckoned once, and no cell is asked whether it is there.
std::optional<RuleBreak> long_run(const Grid& grid, int most, Cell cell) {
    if (!may_be_in_run(grid, cell)) return std::nullopt;
    const auto [rows, columns] = grid.size();
    const int to_left = cell.column, to_right = columns - 1 - cell.column;
    const int to_top = cell.row, to_bottom = rows - 1 - cell.row;
    const Letter* const here = grid.letters().data() + grid.index(cell);
    const auto equal_ones = [here](std::ptrdiff_t stride, int enough) {
        int count = 0;
        while (count < enough && here[(count + 1) * stride] == *here) ++count;
        return count;
    };
    const auto along = [&](Direction direction, std::ptrdiff_t stride, int cells_before, int cells_after) {
        const int before = equal_ones(-stride, std::min(most, cells_before));
        const int after = equal_ones(stride, std::min(most - before, cells_after));
        return before + after < most
                   ? std::nullopt
                   : std::optional(RuleBreak{RuleBreak::Rule::longest_run, moved(cell, direction, -before),
                                             direction, most + 1});
    };
    using enum Direction;
    auto broken = along(right, 1, to_left, to_right);
    if (!broken) broken = along(down, columns, to_top, to_bottom);
    if (!broken)
        broken = along(down_right, columns + 1, std::min(to_top, to_left), std::min(to_bottom, to_right));
    if (!broken)
        broken = along(down_left, columns - 1, std::min(to_top, to_right), std::min(to_bottom, to_left));
    return broken;
}

std::optional<RuleBreak> look_alikes(const Grid& grid, const FillerRules& rules, Cell cell) {
    for (const Direction direction : all_directions)
        if (const Cell next = moved(cell, direction, 1);
            grid.inside(next) && rules.are_look_alikes(grid[cell], grid[next]))
            return RuleBreak{RuleBreak::Rule::look_alikes, cell, direction, 2};
    return std::nullopt;
}

}  // namespace

std::optional<RuleBreak> broken_rule(const Grid& grid, const FillerRules& rules, Cell cell) {
    if (rules.longest_run > 0)
        if (const auto broken = long_run(grid, rules.longest_run, cell)) return broken;
    if (!rules.looks.empty()) return look_alikes(grid, rules, cell);
    return std::nullopt;
}

}  // namespace lode
