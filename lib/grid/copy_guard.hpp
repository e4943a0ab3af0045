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

// Each word is kept by a window of up to four letters in it, or of five where words are many, the one that
// the fewest words share, and so is the word read backward: a walk along a line, in one of four directions,
// keeps the last letters in a number and looks it up in a small set of bits. Hardly any number is in it, so
// that a cell costs a few looks however many words there are (Karp and Rabin, "Efficient randomized
// pattern-matching algorithms", IBM J. Res. Dev. 31(2), 1987: a window is compared by a number, and letter by
// letter where that agrees).
class CopyGuard {
  public:
    CopyGuard() = default;
    // Each word, of two letters or more, as letters of the grid's alphabet. `seen_as` gives the letter that
    // each of the alphabet's letters counts as (itself, or one without case and marks); the words are then in
    // those.
    CopyGuard(std::span<const Letters> words, Letters seen_as);

    // The same words, in grids whose letters count as these.
    [[nodiscard]] CopyGuard seen_as(Letters letters) const;
    // The same words by the same numbers, of which only those of at most so many letters are found.
    [[nodiscard]] CopyGuard up_to(std::size_t letters) const;
    // The same, of which only these words, by their numbers, are found.
    [[nodiscard]] CopyGuard only(std::span<const std::uint32_t> words) const;
    // Whether it can find anything at all.
    [[nodiscard]] bool finds_nothing() const { return windows_.empty(); }

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

    // Whether this copy stands in the grid.
    [[nodiscard]] bool stands(const Grid& grid, std::size_t word, const Placement& copy) const;

  private:
    static constexpr std::size_t most_in_window = 5;
    static constexpr int bits_per_code = 5;
    static constexpr std::uint32_t no_code = 0;  // of what is in no word: it stands in no window
    using Key = std::uint32_t;                   // the codes of letters that follow each other

    struct Run {
        std::uint32_t first;
        std::uint32_t count;
        bool wanted = true;
    };
    // A word with the window in it, read from its first letter or from its last.
    struct Use {
        Key key;
        std::uint32_t word;
        std::uint32_t ahead;   // letters of the word that follow the window's last one on the walk
        std::uint32_t behind;  // and those before it, on the walk
        bool turned;
    };
    // The windows of so many letters.
    class Windows {
      public:
        Windows(std::size_t letters, const std::vector<Use>& uses);
        [[nodiscard]] bool has(Key key) const {
            const std::uint32_t at = place(key);
            return (bits_[at / 64] >> (at % 64) & 1) != 0;
        }
        // Those of the key, where it has it; others may lie between them.
        [[nodiscard]] std::span<const Use> uses(Key key) const {
            const std::uint32_t at = place(key) >> bits_per_slot;
            return {uses_.data() + starts_[at], starts_[at + 1] - starts_[at]};
        }
        [[nodiscard]] Key cut(Key key) const { return key & mask_; }

      private:
        static constexpr int bits_per_slot = 4;
        [[nodiscard]] std::uint32_t place(Key key) const { return cut(key) * 0x9E37'79B1u >> shift_; }

        Key mask_;
        int shift_;
        std::vector<std::uint64_t> bits_;
        std::vector<std::uint32_t> starts_;
        std::vector<Use> uses_;  // by slot
    };

    void index();  // the words that are wanted
    void give_codes();
    [[nodiscard]] std::uint32_t code(Letter letter) const {
        return letter < codes_.size() ? codes_[letter] : no_code;
    }
    [[nodiscard]] static Key next(Key key, std::uint32_t code) { return key << bits_per_code | code; }
    // Visits the copies whose window ends at the cell, as the walk in the direction met it, and of which
    // `may` says that they are wanted: what it costs to compare letters is spent on no others.
    template <class May, class Visit>
    bool visit_uses(const Grid& grid, const Windows& windows, Key key, Cell end, Direction direction,
                    const May& may, Visit& visit) const {
        for (const Use& use : windows.uses(key)) {
            if (use.key != windows.cut(key) || !may(use)) continue;
            const Cell last = moved(end, direction, static_cast<int>(use.ahead));
            const Placement copy = use.turned
                                       ? Placement{last, opposite(direction)}
                                       : Placement{moved(last, direction, 1 - length(use.word)), direction};
            if (stands(grid, use.word, copy) && !visit(std::size_t{use.word}, copy)) return false;
        }
        return true;
    }
    template <class Visit>
    bool through(const Grid& grid, Cell cell, Direction direction, Visit& visit) const;

    Letters seen_as_;
    std::vector<std::uint8_t> code_of_;  // by letter of the words; several letters may have one
    std::vector<std::uint8_t> codes_;    // by letter of the grid
    std::size_t longest_ = 0;            // of the words that are found
    Letters letters_;                    // of all words, one after another
    std::vector<Run> words_;
    std::vector<Windows> windows_;  // by their number of letters
};

// A copy that one of several guards saw.
struct SeenCopy {
    const CopyGuard* guard;
    std::size_t word;
    Placement copy;
    [[nodiscard]] bool stands(const Grid& grid) const { return guard->stands(grid, word, copy); }
};

// Over words in letters of an alphabet of so many, each of which counts as itself.
[[nodiscard]] CopyGuard exact_guard(std::span<const Letters> words, std::size_t letters);

template <class Visit>
bool CopyGuard::through(const Grid& grid, Cell cell, Direction direction, Visit& visit) const {
    const auto code_at = [&](Cell at) { return grid.inside(at) ? code(grid[at]) : no_code; };
    const int reach = static_cast<int>(longest_) - 1;
    int at = 0;
    while (at > -reach && code_at(moved(cell, direction, at - 1)) != no_code) --at;
    Key key = 0;
    for (Cell end = moved(cell, direction, at); at <= reach; ++at, end = moved(end, direction, 1)) {
        const std::uint32_t here = code_at(end);
        if (here == no_code) break;
        key = next(key, here);
        const auto covers = [at](const Use& use) {
            return at + static_cast<int>(use.ahead) >= 0 && at - static_cast<int>(use.behind) <= 0;
        };
        for (const Windows& windows : windows_)
            if (windows.has(key) && !visit_uses(grid, windows, key, end, direction, covers, visit))
                return false;
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
            for (const Windows& windows : windows_) {
                const auto all = [](const Use&) { return true; };
                const auto visit_all = [&](Key key, Direction direction) {
                    return !windows.has(key) || visit_uses(grid, windows, key, cell, direction, all, visit);
                };
                if (!visit_all(right, Direction::right) || !visit_all(here.down, Direction::down) ||
                    !visit_all(down_right, Direction::down_right) ||
                    !visit_all(here.down_left, Direction::down_left))
                    return false;
            }
        }
    }
    return true;
}

}  // namespace lode
