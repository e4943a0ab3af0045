#pragma once
// What it would cost to put each letter in each cell, a plane of numbers a letter, and what it then costs to
// put a word anywhere at all: every placement of a direction is summed at once, along the planes of the
// word's letters, each shifted by a step more than the one before.

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include <letterlode/grid.hpp>

namespace lode {

// A cost in a cell lies below out_of_grid / letters of the longest word, so that no sum of them reaches it.
using Cost = std::uint16_t;

class CostPlanes {
  public:
    static constexpr Cost out_of_grid = 2047;
    static constexpr int most_letters_in_word = 31;  // 31 times out_of_grid can be held
    static constexpr int levels = 6;

    // Planes for letters 0 to letters - 1. Every cell is out of the grid until a cost is set.
    CostPlanes(Size size, std::size_t letters, int longest, Directions directions);

    void set(Cell cell, Letter letter, Cost cost) { planes_[letter * plane_ + offset(cell)] = cost; }
    void set_all(Cell cell, Cost cost);

    // Sums the costs of every placement of the word. Returns the least, out_of_grid or more where it fits
    // nowhere. Time: cells x letters x directions, in vectors of sixteen.
    Cost sum(std::span<const Letter> word);
    // Of the placements last summed: how many cost the least, one more, and so on.
    [[nodiscard]] std::array<std::uint32_t, levels> count_levels(Cost least) const;
    // The one of so many (from 0) among those that cost so much, in an order of its own.
    [[nodiscard]] Placement with_cost(Cost cost, std::uint32_t number) const;

  private:
    [[nodiscard]] std::size_t offset(Cell cell) const {
        return border_ + static_cast<std::size_t>(cell.row) * stride_ + static_cast<std::size_t>(cell.column);
    }
    [[nodiscard]] std::ptrdiff_t step_of(Direction direction) const {
        const Cell by = step(direction);
        return by.row * static_cast<std::ptrdiff_t>(stride_) + by.column;
    }

    // Sixteen costs at once. The memory is aligned for them.
    struct alignas(32) Sixteen {
        std::array<Cost, 16> costs;
    };

    std::vector<Direction> directions_;
    std::size_t stride_;  // from row to row: a column more than the grid has, which ends every line
    std::size_t border_;  // before the first cell and behind the last
    std::size_t plane_;   // from plane to plane
    std::size_t count_;   // of sixteens that hold the grid
    std::vector<Cost> planes_;
    std::vector<Sixteen> sums_;  // by direction
};

}  // namespace lode
