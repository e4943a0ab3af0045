#include "support/naive.hpp"

#include <algorithm>
#include <stdexcept>

namespace lode::test {
namespace {

std::pair<int, int> step_of(Direction direction) {
    switch (direction) {
        case Direction::right:
            return {0, +1};
        case Direction::left:
            return {0, -1};
        case Direction::down:
            return {+1, 0};
        case Direction::up:
            return {-1, 0};
        case Direction::down_right:
            return {+1, +1};
        case Direction::up_left:
            return {-1, -1};
        case Direction::up_right:
            return {-1, +1};
        case Direction::down_left:
            return {+1, -1};
    }
    throw std::logic_error("no direction");
}

constexpr Direction eight[]{Direction::right,    Direction::left,       Direction::down,
                            Direction::up,       Direction::down_right, Direction::up_left,
                            Direction::up_right, Direction::down_left};

template <class Visit>
void each_cell(Size size, Visit visit) {
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column) visit(Cell{row, column});
}

CellSet as_set(const std::vector<std::pair<int, int>>& cells) {
    return {cells.begin(), cells.end()};
}

}  // namespace

std::vector<std::pair<int, int>> cells_from(Size size, Cell first, Direction direction, int length) {
    std::vector<std::pair<int, int>> cells;
    const auto [down, across] = step_of(direction);
    for (int at = 0; at < length; ++at) {
        const int row = first.row + at * down;
        const int column = first.column + at * across;
        if (row < 0 || row >= size.rows || column < 0 || column >= size.columns) return {};
        cells.emplace_back(row, column);
    }
    return cells;
}

CellSet cells_of(const Copy& copy) {
    CellSet cells;
    for (int at = 0; at < copy.length; ++at) {
        const Cell cell = moved(copy.first, copy.direction, at);
        cells.emplace(cell.row, cell.column);
    }
    return cells;
}

std::set<CellSet> naive_copies(const Grid& grid, const Letters& word) {
    std::set<CellSet> copies;
    each_cell(grid.size(), [&](Cell first) {
        for (const Direction direction : eight) {
            const auto cells = cells_from(grid.size(), first, direction, static_cast<int>(word.size()));
            bool reads = !cells.empty();
            for (std::size_t at = 0; at < cells.size() && reads; ++at)
                reads = grid[{cells[at].first, cells[at].second}] == word[at];
            if (reads) copies.insert(as_set(cells));
        }
    });
    return copies;
}

long long naive_placements(Size size, Directions directions, int length) {
    long long count = 0;
    each_cell(size, [&](Cell first) {
        for (const Direction direction : eight)
            if (directions.contains(direction) && !cells_from(size, first, direction, length).empty())
                ++count;
    });
    return count;
}

int naive_longest_run(const Mask& mask, Directions directions) {
    int longest = 0;
    each_cell(mask.size(), [&](Cell first) {
        for (const Direction direction : eight) {
            if (!directions.contains(direction)) continue;
            for (int length = 1;; ++length) {
                const auto cells = cells_from(mask.size(), first, direction, length);
                const auto [row, column] = cells.empty() ? std::pair{-1, -1} : cells.back();
                if (!mask.open({row, column})) break;
                longest = std::max(longest, length);
            }
        }
    });
    return longest;
}

bool naive_can_fill(const Grid& grid, const std::vector<Letters>& forbidden, const Letters& allowed) {
    std::vector<Cell> empty;
    each_cell(grid.size(), [&](Cell cell) {
        if (grid[cell] == empty_cell) empty.push_back(cell);
    });
    Grid filled = grid;
    const auto is_right = [&] {
        for (const auto& word : forbidden)
            for (const CellSet& copy : naive_copies(filled, word))
                for (const auto& [row, column] : copy)
                    if (grid[{row, column}] == empty_cell) return false;
        return true;
    };
    const std::function<bool(std::size_t)> fill_from = [&](std::size_t at) {
        if (at == empty.size()) return is_right();
        for (const Letter letter : allowed) {
            filled[empty[at]] = letter;
            if (fill_from(at + 1)) return true;
        }
        return false;
    };
    return fill_from(0);
}

void every_grid(Size size, const Letters& letters, const std::function<void(const Grid&)>& visit) {
    Grid grid(size);
    const std::function<void(std::size_t)> choose = [&](std::size_t at) {
        if (at == size.cells()) {
            visit(grid);
            return;
        }
        const auto columns = static_cast<std::size_t>(size.columns);
        for (const Letter letter : letters) {
            grid[{static_cast<int>(at / columns), static_cast<int>(at % columns)}] = letter;
            choose(at + 1);
        }
    };
    choose(0);
}

std::vector<Letters> every_word(int letters, int least, int most) {
    std::vector<Letters> words;
    std::vector<Letters> last{{}};
    for (int length = 1; length <= most; ++length) {
        std::vector<Letters> longer;
        for (const auto& word : last)
            for (int letter = 0; letter < letters; ++letter) {
                longer.push_back(word);
                longer.back().push_back(static_cast<Letter>(letter));
            }
        if (length >= least) words.insert(words.end(), longer.begin(), longer.end());
        last = std::move(longer);
    }
    return words;
}

}  // namespace lode::test
