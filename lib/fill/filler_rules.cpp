#include "fill/filler_rules.hpp"

namespace lode {
namespace {

// False where no run goes through the cell, as is mostly so: asked of every letter that is drawn.
bool may_be_in_run(const Grid& grid, Cell cell) {
    const auto [rows, columns] = grid.size();
    const auto [row, column] = cell;
    if (row == 0 || column == 0 || row + 1 == rows || column + 1 == columns) return true;
    const Letter* here = grid.letters().data() + grid.index(cell);
    const Letter* above = here - columns;
    const Letter* below = here + columns;
    const Letter letter = *here;
    return above[-1] == letter || above[0] == letter || above[1] == letter || here[-1] == letter ||
           here[1] == letter || below[-1] == letter || below[0] == letter || below[1] == letter;
}

std::optional<RuleBreak> long_run(const Grid& grid, int most, Cell cell) {
    if (!may_be_in_run(grid, cell)) return std::nullopt;
    const Letter letter = grid[cell];
    const auto equal_ones = [&](Direction direction, int enough) {
        int count = 0;
        for (Cell next = moved(cell, direction, 1);
             count < enough && grid.inside(next) && grid[next] == letter; next = moved(next, direction, 1))
            ++count;
        return count;
    };
    for (const Direction direction :
         {Direction::right, Direction::down, Direction::down_right, Direction::down_left}) {
        const int before = equal_ones(opposite(direction), most);
        const int after = equal_ones(direction, most - before);
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
