#pragma once
// Finds the copies of a list's words in some rows of a grid by the windows of the words (see WindowIndex):
// vectors of cells are put through the pair sets along four axes at once, what passes is looked up, and what
// is found there is compared. Nothing is copied out of the grid: a diagonal is a constant step in memory,
// like a column.
//
// Fast where few windows pass, as in grids that people make. Where a grid is full of near copies (one letter
// everywhere, and a word of that letter) comparing costs the words' length a cell, so the work is counted,
// and given up in favour of a Sweep, whose cost has a bound.

#include <cstdint>
#include <vector>

#include <letterlode/grid.hpp>

#include "find/band.hpp"
#include "find/findings.hpp"
#include "find/sought_words.hpp"
#include "find/wanted.hpp"
#include "find/window_index.hpp"

namespace lode {

class Sieve {
  public:
    explicit Sieve(const SoughtWords& words);

    // How many rows above and below a window the first cell of its word, and the key's other letters, can
    // lie.
    [[nodiscard]] int reach() const { return reach_; }

    // Adds the copies whose windows begin (along right, down, down-right or down-left) in rows first to last
    // - 1, in no order. The band must hold these rows. False where it gave up: too much had to be compared.
    bool scan(const Grid& grid, const LineBand& band, int first, int last, const Wanted& wanted,
              std::vector<Finding>& found) const;

  private:
    struct Scan;
    struct SingleLetter {
        Letter letter;
        std::uint32_t word;
    };
    const SoughtWords& words_;
    WindowIndex short_;  // two and three letters
    WindowIndex long_;
    std::vector<SingleLetter> single_letters_;  // by letter
    std::uint32_t single_codes_ = 0;            // their codes, a bit each
    int reach_;
};

}  // namespace lode
