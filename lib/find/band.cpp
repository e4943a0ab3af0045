#include "find/band.hpp"

#include <algorithm>
#include <cstring>

namespace lode {

// Around the rows of the grid, rows and columns of code 0; and what else is read without being looked at.
LineBand::LineBand(const Grid& grid, const SoughtWords& words, const FindLoops& loops, int rows, int reach)
    : grid_(grid), words_(words), loops_(loops), reach_(reach), stride_(grid.size().columns + 1) {
    const int held = std::min(grid.size().rows, rows + 2 * reach);
    cells_.assign(static_cast<std::size_t>((held + 2 + 6) * stride_) + 128, 0);
}

void LineBand::move_to(int first, int last) {
    const Size size = grid_.size();
    const int top = std::max(0, first - reach_);
    const int bottom = std::min(size.rows, last + reach_);
    const int kept = std::max(0, bottom_ - top);
    if (kept > 0 && top > top_)
        std::memmove(cells_.data() + start(top_), row(top), static_cast<std::size_t>(kept * stride_));
    top_ = top;
    for (int at = kept > 0 ? bottom_ : top; at < bottom; ++at) {
        const std::size_t begin = grid_.index({at, 0});
        const auto columns = static_cast<std::size_t>(size.columns);
        // Codes written behind the row are overwritten by the rows that follow.
        loops_.encode(grid_.letters().data() + begin, columns, size.cells() - begin, words_.code_of(),
                      cells_.data() + start(at));
        cells_[start(at) + columns] = 0;
    }
    bottom_ = bottom;
    if (bottom == size.rows)
        std::fill_n(cells_.begin() + static_cast<std::ptrdiff_t>(start(bottom)), stride_, LetterCode{0});
}

}  // namespace lode
