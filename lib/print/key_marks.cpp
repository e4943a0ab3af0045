#include "print/key_marks.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace lode {

namespace {

// Radii in cells. Neighbours along a row are a cell apart, parallel diagonals 0.71 of one: rings on them keep
// a tenth of a cell between them.
constexpr std::array straight_radii{0.44, 0.37, 0.30};
constexpr std::array diagonal_radii{0.315, 0.275, 0.235};

// The line that a word lies on, whichever way it reads, and its stretch of that line.
struct Stretch {
    int axis = 0;  // 0 to 3
    int line = 0;
    int from = 0;
    int to = 0;

    [[nodiscard]] bool meets(const Stretch& other) const {
        return axis == other.axis && line == other.line && from <= other.to && other.from <= to;
    }
};

Stretch stretch_of(const PlacedWord& word) {
    const Cell first = word.placed.first;
    const Cell last = moved(first, word.placed.direction, static_cast<int>(word.letters.size()) - 1);
    const int axis = static_cast<int>(word.placed.direction) % 4;
    const auto line = [&](Cell cell) {
        switch (static_cast<Direction>(axis)) {
            case Direction::right:
                return cell.row;
            case Direction::down:
                return cell.column;
            case Direction::down_right:
                return cell.row - cell.column;
            default:
                return cell.row + cell.column;
        }
    };
    const auto along = [&](Cell cell) {
        return axis == static_cast<int>(Direction::right) ? cell.column : cell.row;
    };
    return {axis, line(first), std::min(along(first), along(last)), std::max(along(first), along(last))};
}

}  // namespace

std::vector<KeyMark> key_marks(const Puzzle& puzzle, Point corner, double cell_mm) {
    std::vector<std::size_t> order(puzzle.words.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return puzzle.words[a].letters.size() > puzzle.words[b].letters.size();
    });
    const auto middle = [&](Cell cell) {
        return Point{corner.x + (cell.column + 0.5) * cell_mm, corner.y + (cell.row + 0.5) * cell_mm};
    };
    std::vector<KeyMark> marks;
    std::vector<Stretch> stretches;
    std::vector<std::size_t> levels;
    for (const std::size_t i : order) {
        const PlacedWord& word = puzzle.words[i];
        const Stretch stretch = stretch_of(word);
        std::size_t level = 0;
        for (std::size_t other = 0; other < stretches.size(); ++other)
            if (stretch.meets(stretches[other])) level = std::max(level, levels[other] + 1);
        const auto& radii = stretch.axis < 2 ? straight_radii : diagonal_radii;
        const double radius = radii[std::min(level, radii.size() - 1)];
        const Cell last =
            moved(word.placed.first, word.placed.direction, static_cast<int>(word.letters.size()) - 1);
        marks.push_back({middle(word.placed.first), middle(last), radius * cell_mm, i});
        stretches.push_back(stretch);
        levels.push_back(level);
    }
    return marks;
}

std::vector<bool> word_cells(const Puzzle& puzzle) {
    const Grid& grid = puzzle.grid.grid;
    std::vector<bool> cells(grid.size().cells());
    for (const PlacedWord& word : puzzle.words)
        for (int at = 0; at < static_cast<int>(word.letters.size()); ++at)
            cells[grid.index(moved(word.placed.first, word.placed.direction, at))] = true;
    return cells;
}

}  // namespace lode
