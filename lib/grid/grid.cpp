#include <algorithm>

#include <letterlode/grid.hpp>

#include "text/clusters.hpp"
#include "text/direction.hpp"

namespace lode {
namespace {

bool is_letter(Letter letter) {
    return letter != closed_cell && letter != empty_cell;
}

// How many grapheme clusters each letter of the alphabet has.
std::vector<std::size_t> widths_of(const Alphabet& alphabet) {
    std::vector<std::size_t> widths(alphabet.size(), 1);
    std::optional<ClusterWalk> walk;
    for (std::size_t letter = 0; letter < alphabet.size(); ++letter) {
        const std::string& text = alphabet.text(static_cast<Letter>(letter));
        if (text.size() == 1) continue;
        if (!walk) walk.emplace(icu::Locale(""));
        widths[letter] = 0;
        walk->each(to_icu(text), [&](const icu::UnicodeString&) { ++widths[letter]; });
    }
    return widths;
}

}  // namespace

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
    const auto widths = widths_of(alphabet);
    std::size_t widest = 1;
    for (const Letter letter : grid.letters())
        if (is_letter(letter)) widest = std::max(widest, widths.at(letter));
    std::string text;
    for (int row = 0; row < grid.size().rows; ++row) {
        std::string line;
        std::size_t lacking = 0;  // to the width of the cell before
        for (int column = 0; column < grid.size().columns; ++column) {
            if (column > 0) line.append(lacking + 1, ' ');
            const Letter letter = grid[{row, column}];
            line += is_letter(letter) ? alphabet.text(letter) : ".";
            lacking = widest - (is_letter(letter) ? widths[letter] : 1);
        }
        text += in_columns(line) + '\n';
    }
    return text;
}

}  // namespace lode
