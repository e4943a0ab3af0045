#pragma once
// Some rows of a grid as codes, with a column and rows of code 0 around the grid: a line that leaves the grid
// meets a cell that no word covers before it meets anything else, so that nothing need ask where the border
// is. The rows lie one after another, and a step in any direction is a constant number of bytes.

#include <cstddef>
#include <vector>

#include <letterlode/grid.hpp>

#include "find/sought_words.hpp"
#include "find/window_filter.hpp"

namespace lode {

class LineBand {
  public:
    // For up to `rows` rows at once and as far as `reach` rows above and below them. Grid, words and loops
    // must outlive it.
    LineBand(const Grid& grid, const SoughtWords& words, const FindLoops& loops, int rows, int reach);

    // Holds rows first to last - 1 from now on, and those in reach. Rows that it held already are kept.
    void move_to(int first, int last);

    [[nodiscard]] const FindLoops& loops() const { return loops_; }
    // A step of one row; of one column it is 1.
    [[nodiscard]] std::ptrdiff_t stride() const { return stride_; }
    // The first cell of a row in reach. Two steps before the first row and five behind the last can be read,
    // and 64 cells more.
    [[nodiscard]] const LetterCode* row(int row) const { return cells_.data() + start(row); }

  private:
    [[nodiscard]] std::size_t start(int row) const {
        return static_cast<std::size_t>((row - top_ + 2) * stride_ + 2);
    }
    const Grid& grid_;
    const SoughtWords& words_;
    const FindLoops& loops_;
    int reach_;
    std::ptrdiff_t stride_;
    int top_ = 0;     // the grid's row that is held first
    int bottom_ = 0;  // the row behind the last one that is held
    std::vector<LetterCode> cells_;
};

}  // namespace lode
