#pragma once
// References so plain that they can be checked by reading. They share no code with the library but its
// values, and have their own table of directions.

#include <functional>
#include <set>
#include <utility>
#include <vector>

#include <letterlode/find.hpp>
#include <letterlode/grid.hpp>

namespace lode::test {

using CellSet = std::set<std::pair<int, int>>;  // row, column

// The cells that a word of this length covers from a cell in a direction; empty where it leaves the grid.
std::vector<std::pair<int, int>> cells_from(Size size, Cell first, Direction direction, int length);

CellSet cells_of(const Copy& copy);

// Every set of cells in a line that can be read as the word.
std::set<CellSet> naive_copies(const Grid& grid, const Letters& word);

// The number of placements of a word of this length, by trying every cell in every direction.
long long naive_placements(Size size, Directions directions, int length);

int naive_longest_run(const Mask& mask, Directions directions);

// Whether the empty cells can be given letters from `allowed` so that no word can be read in cells of which
// one had been empty. By trying every combination of letters.
bool naive_can_fill(const Grid& grid, const std::vector<Letters>& forbidden, const Letters& allowed);

// Every grid of the size over the letters (which may hold closed_cell).
void every_grid(Size size, const Letters& letters, const std::function<void(const Grid&)>& visit);

// Every word of length `least` to `most` over the first `letters` letters.
std::vector<Letters> every_word(int letters, int least, int most);

}  // namespace lode::test
