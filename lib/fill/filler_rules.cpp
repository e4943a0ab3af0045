#include "fill/filler_rules.hpp"

#include <algorithm>

namespace lode {
namespace {

// Asked of every letter that is drawn: how far it is to the border is reckoned once, and what follows asks of
// no cell whether it is there.
std::optional<RuleBreak> long_run(const Grid& grid, int most, Cell cell) {
    const auto [rows, columns] = grid.size();
    const int left = cell.column, right = columns - 1 - cell.column;
    const int above = cell.row, below = rows - 1 - cell.row;
    const Letter* const here = grid.letters().data() + grid.index(cell);
    const auto equal_ones = [here](std::ptrdiff_t stride, int enough) {
        int count = 0;
        while (count < enough && here[(count + 1) * stride] == *here) ++count;
        return count;
    };
    struct Axis {
        Direction direction;
        std::ptrdiff_t stride;
        int cells_before, cells_after;
    };
    for (const auto& [direction, stride, cells_before, cells_after] :
         {Axis{Direction::right, 1, left, right}, Axis{Direction::down, columns, above, below},
          Axis{Direction::down_right, columns + 1, std::min(above, left), std::min(below, right)},
          Axis{Direction::down_left, columns - 1, std::min(above, right), std::min(below, left)}}) {
        const int before = equal_ones(-stride, std::min(most, cells_before));
        const int after = equal_ones(stride, std::min(most - before, cells_after));
        if (before + after >= most)
            return RuleBreak{RuleBreak::Rule::longest_run, moved(cell, direction, -before), direction,
                             most + 1};
    }
    return std::nullopt;
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
