// What a letter of the filler must keep, held to a walk over every line of cells that it could break a rule
// in.

#include <algorithm>

#include <catch2/catch.hpp>

#include "fill/filler_rules.hpp"
#include "random/random.hpp"

using namespace lode;

namespace {

// Whether so many equal letters stand in a line from the cell.
bool is_run(const Grid& grid, Cell first, Direction direction, int length) {
    for (int at = 0; at < length; ++at) {
        const Cell cell = moved(first, direction, at);
        if (!grid.inside(cell) || grid[cell] != grid[first]) return false;
    }
    return true;
}

bool has_run_through(const Grid& grid, Cell cell, int length) {
    return std::any_of(all_directions.begin(), all_directions.end(), [&](Direction direction) {
        for (int before = 0; before < length; ++before)
            if (const Cell first = moved(cell, direction, -before);
                grid.inside(first) && is_run(grid, first, direction, length))
                return true;
        return false;
    });
}

}  // namespace

TEST_CASE("a run is too long where a walk over all lines through the cell finds it, at borders too") {
    Random random(11);
    long broken_ones = 0, kept_ones = 0;
    for (int round = 0; round < 3'000; ++round) {
        Grid grid(Size{1 + static_cast<int>(random.below(6)), 1 + static_cast<int>(random.below(6))});
        FillerRules rules;
        rules.longest_run = 1 + static_cast<int>(random.below(4));
        for (int row = 0; row < grid.size().rows; ++row)
            for (int column = 0; column < grid.size().columns; ++column) {
                const std::uint32_t drawn = random.below(4);
                grid[{row, column}] = drawn == 2   ? empty_cell
                                      : drawn == 3 ? closed_cell
                                                   : static_cast<Letter>(drawn);
            }
        for (int row = 0; row < grid.size().rows; ++row)
            for (int column = 0; column < grid.size().columns; ++column) {
                const Cell cell{row, column};
                if (grid[cell] == empty_cell || grid[cell] == closed_cell) continue;
                CAPTURE(round, rules.longest_run, row, column);
                const auto broken = broken_rule(grid, rules, cell);
                REQUIRE(broken.has_value() == has_run_through(grid, cell, rules.longest_run + 1));
                ++(broken ? broken_ones : kept_ones);
                if (!broken) continue;
                REQUIRE(broken->rule == RuleBreak::Rule::longest_run);
                REQUIRE(broken->length == rules.longest_run + 1);
                REQUIRE(is_run(grid, broken->first, broken->direction, broken->length));
                bool is_on_it = false;
                for (int at = 0; at < broken->length; ++at)
                    is_on_it = is_on_it || moved(broken->first, broken->direction, at) == cell;
                REQUIRE(is_on_it);
            }
    }
    CHECK(broken_ones > 1'000);
    CHECK(kept_ones > 1'000);
}

TEST_CASE("a letter may stand between two that look like each other, but not beside one that it looks like") {
    FillerRules rules;
    rules.looks = {{1, 0}, {1, 1}, {2, 2}};
    Grid grid(Size{1, 3});
    for (int column = 0; const Letter letter : {Letter{0}, Letter{2}, Letter{1}})
        grid[{0, column++}] = letter;
    CHECK_FALSE(broken_rule(grid, rules, {0, 1}));
    grid[{0, 1}] = 1;
    const auto broken = broken_rule(grid, rules, {0, 1});
    REQUIRE(broken);
    CHECK(broken->rule == RuleBreak::Rule::look_alikes);
    grid[{0, 0}] = 1;  // the same letter is no look-alike
    CHECK_FALSE(broken_rule(grid, rules, {0, 1}));
}
