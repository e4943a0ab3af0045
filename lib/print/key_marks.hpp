#pragma once
// Where words stand in an answer key: rings and lines that stay apart from each other.
//
// Words along one line that share cells get rings of different breadths, the longer word the broader one, so
// that no two rings run on one another. Where rings cross, the later one passes over the earlier: it is drawn
// with a margin that interrupts what lies below.

#include <letterlode/path.hpp>
#include <letterlode/puzzle.hpp>

namespace lode {

struct KeyMark {
    Point first;  // the middle of the first letter's cell
    Point last;
    double radius = 0;     // mm, of the ring
    std::size_t word = 0;  // its place in the puzzle's list
};

// Of all words, the longest first; cells are as large as this, and the grid's upper left corner stands there.
[[nodiscard]] std::vector<KeyMark> key_marks(const Puzzle& puzzle, Point corner, double cell_mm);

// The cells in which words stand, in row order.
[[nodiscard]] std::vector<bool> word_cells(const Puzzle& puzzle);

}  // namespace lode
