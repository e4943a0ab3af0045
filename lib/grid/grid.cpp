#include <letterlode/grid.hpp>

namespace lode {

Grid::Grid(const Mask& mask) : Grid(mask.size(), empty_cell) {
    for (int row = 0; row < size_.rows; ++row)
        for (int column = 0; column < size_.columns; ++column)
            if (!mask.open({row, column})) (*this)[{row, column}] = closed_cell;
}

bool same_cells(const Placement& a, const Placement& b, int length) {
    if (a == b) return true;
    return b.direction == opposite(a.direction) && b.first == moved(a.first, a.direction, length - 1);
}

std::string grid_text(const Grid& grid, const Alphabet& alphabet) {
    std::string text;
    for (int row = 0; row < grid.size().rows; ++row) {
        for (int column = 0; column < grid.size().columns; ++column) {
            if (column > 0) text += ' ';
            const Letter letter = grid[{row, column}];
            if (letter == closed_cell || letter == empty_cell)
                text += '.';
            else
                text += alphabet.text(letter);
        }
        text += '\n';
    }
    return text;
}

}  // namespace lode
