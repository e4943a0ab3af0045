#pragma once
// While a grid is made: which copies of which words stand in it, all of them or those through one cell? Place
// and fill ask this. The finder that judges the finished grid shares nothing with it.

#include <algorithm>
#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include <letterlode/grid.hpp>
#include <letterlode/text.hpp>

namespace lode {

// Words are kept by their last letters, up to four of them, and so is each word read backward: a walk along a
// line, in one of four directions, keeps the last four letters in a number and looks it up in a small set of
// bits. Hardly any number is in it, so that a cell costs a few looks however many words there are (Karp and
// Rabin, "Efficient randomized pattern-matching algorithms", IBM J. Res. Dev. 31(2), 1987: a window is
// compared by a number, and letter by letter where that agrees).
class CopyGuard {
  public:
    CopyGuard() = default;
    // Each word, of two letters or more, as letters of the grid's alphabet. `seen_as` gives the letter that
    // each of the alphabet's letters counts as (itself, or one without case and marks); the words are then in
    // those.
    CopyGuard(std::span<const Letters> words, Letters seen_as);

    // The same words by the same numbers, of which only those of at most so many letters are found.
    [[nodiscard]] CopyGuard up_to(std::size_t letters) const;
    // Whether it can find anything at all.
    [[nodiscard]] bool finds_nothing() const { return tails_.empty(); }

    [[nodiscard]] std::size_t count() const { return words_.size(); }
    [[nodiscard]] int length(std::size_t word) const { return static_cast<int>(words_[word].count); }

    // Calls visit(word, placement) for every complete copy that runs through the cell, which holds a letter;
    // a palindrome's from both ends. Stops where visit returns false, and returns whether it came to the end.
    // Its time grows with the longest word, and with the letters that follow each other about the cell.
    template <class Visit>
    bool through(const Grid& grid, Cell cell, Visit&& visit) const {
        if (finds_nothing() || code(grid[cell]) == no_code) return true;
        for (const Direction direction :
             {Direction::right, Direction::down, Direction::down_right, Direction::down_left})
            if (!through(grid, cell, direction, visit)) return false;
        return true;
    }

    // The same for every copy in the grid, each visited once. Linear in the cells.
    template <class Visit>
    bool everywhere(const Grid& grid, Visit&& visit) const;

  private:
    static constexpr std::size_t most_in_tail = 4;
    static constexpr int bits_per_code = 5;
    static constexpr std::uint32_t no_code = 0;  // of what is in no word: it stands in no tail
    using Key = std::uint32_t;                   // the codes of letters that follow each other

    struct Run {
        std::uint32_t first;
        std::uint32_t count;
    };
    // A word that ends in the tail, read from its first letter or from its last.
    struct Ending {
        Key key;
        std::uint32_t word;
        bool turned;
    };
    // The endings of so many letters.
    class Tail {
      public:
        Tail(std::size_t letters, std::vector<Ending> endings);
        [[nodiscard]] bool may_end(Key key) const {
            const std::uint32_t at = place(key);
            return (bits_[at / 64] >> (at % 64) & 1) != 0;
        }
        // Those of the key, where may_end; others may lie between them.
        [[nodiscard]] std::span<const Ending> endings(Key key) const {
            const std::uint32_t at = place(key) >> bits_per_slot;
            return {endings_.data() + starts_[at], starts_[at + 1] - starts_[at]};
        }
        [[nodiscard]] Key cut(Key key) const { return key & mask_; }

      private:
        static constexpr int bits_per_slot = 4;
        [[nodiscard]] std::uint32_t place(Key key) const { return cut(key) * 0x9E37'79B1u >> shift_; }

        Key mask_;
        int shift_;
        std::vector<std::uint64_t> bits_;
        std::vector<std::uint32_t> starts_;
        std::vector<Ending> endings_;  // by slot
    };

    void index(std::size_t longest);
    [[nodiscard]] std::uint32_t code(Letter letter) const {
        return letter < codes_.size() ? codes_[letter] : no_code;
    }
    [[nodiscard]] static Key next(Key key, std::uint32_t code) { return key << bits_per_code | code; }
    [[nodiscard]] bool stands(const Grid& grid, std::uint32_t word, Cell first, Direction direction) const;

    // Visits the copies whose last or first letter is at the cell, as the walk in the direction met it.
    template <class Visit>
    bool visit_ends(const Grid& grid, const Tail& tail, Key key, Cell last, Direction direction,
                    Visit& visit) const {
        for (const Ending& ending : tail.endings(key)) {
            if (ending.key != tail.cut(key)) continue;
            const Placement copy =
                ending.turned ? Placement{last, opposite(direction)}
                              : Placement{moved(last, direction, 1 - length(ending.word)), direction};
            if (stands(grid, ending.word, copy.first, copy.direction) &&
                !visit(std::size_t{ending.word}, copy))
                return false;
        }
        return true;
    }
    template <class Visit>
    bool visit_ends(const Grid& grid, Key key, Cell last, Direction direction, Visit& visit) const {
        for (const Tail& tail : tails_)
            if (tail.may_end(key) && !visit_ends(grid, tail, key, last, direction, visit)) return false;
        return true;
    }
    template <class Visit>
    bool through(const Grid& grid, Cell cell, Direction direction, Visit& visit) const;

    Letters seen_as_;
    std::vector<std::uint8_t> codes_;  // by letter of the grid; several letters may have one
    std::size_t longest_ = 0;          // of the words that are found
    Letters letters_;                  // of all words, one after another
    std::vector<Run> words_;
    std::vector<Tail> tails_;  // by their number of letters
};

// Over words in letters of an alphabet of so many, each of which counts as itself.
[[nodiscard]] CopyGuard exact_guard(std::span<const Letters> words, std::size_t letters);

template <class Visit>
bool CopyGuard::through(const Grid& grid, Cell cell, Direction direction, Visit& visit) const {
    // The letters before the cell that a tail may reach back to.
    Key key = 0;
    for (int back = static_cast<int>(most_in_tail) - 1; back > 0; --back) {
        const Cell before = moved(cell, direction, -back);
        key = next(key, grid.inside(before) ? code(grid[before]) : no_code);
    }
    Cell last = cell;
    for (std::size_t ahead = 0; ahead < longest_ && grid.inside(last); ++ahead) {
        const std::uint32_t here = code(grid[last]);
        if (here == no_code) break;
        key = next(key, here);
        const auto covers = [&](std::size_t word, const Placement& copy) {
            return static_cast<std::size_t>(length(word)) <= ahead || visit(word, copy);
        };
        if (!visit_ends(grid, key, last, direction, covers)) return false;
        last = moved(last, direction, 1);
    }
    return true;
}

template <class Visit>
bool CopyGuard::everywhere(const Grid& grid, Visit&& visit) const {
    if (finds_nothing()) return true;
    const auto [rows, columns] = grid.size();
    // The walks down each column and each diagonal, by the column that they came to; what lies beyond a side
    // is in no word.
    struct Walks {
        Key down = 0;
        Key down_right = 0;
        Key down_left = 0;
    };
    std::vector<Walks> walks(static_cast<std::size_t>(columns) + 1);
    const Letter* letter = grid.letters().data();
    for (int row = 0; row < rows; ++row) {
        Key right = 0;
        Key from_left = 0;  // the walk that comes from the row above, one column to the left
        for (int column = 0; column < columns; ++column, ++letter) {
            Walks& here = walks[static_cast<std::size_t>(column)];
            const std::uint32_t code_here = code(*letter);
            right = next(right, code_here);
            const Key down_right = next(from_left, code_here);
            from_left = here.down_right;
            here.down = next(here.down, code_here);
            here.down_right = down_right;
            here.down_left = next(walks[static_cast<std::size_t>(column) + 1].down_left, code_here);
            if (code_here == no_code) continue;
            const Cell cell{row, column};
            for (const Tail& tail : tails_) {
                if (tail.may_end(right) && !visit_ends(grid, tail, right, cell, Direction::right, visit))
                    return false;
                if (tail.may_end(here.down) &&
                    !visit_ends(grid, tail, here.down, cell, Direction::down, visit))
                    return false;
                if (tail.may_end(here.down_right) &&
                    !visit_ends(grid, tail, here.down_right, cell, Direction::down_right, visit))
                    return false;
                if (tail.may_end(here.down_left) &&
                    !visit_ends(grid, tail, here.down_left, cell, Direction::down_left, visit))
                    return false;
            }
        }
    }
    return true;
}

}  // namespace lode
