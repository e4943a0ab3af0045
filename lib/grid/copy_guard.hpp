#pragma once
// While a grid is made: which copies of which words does a letter, just written, complete? Place and fill ask
// after every letter. The finder that judges the finished grid shares nothing with this.

#include <cstdint>
#include <span>
#include <vector>

#include <letterlode/grid.hpp>
#include <letterlode/text.hpp>

namespace lode {

// Words are kept by pairs of letters that follow each other in them. A cell and its eight neighbours make
// eight pairs, of which hardly any belongs to a word: most cells are done with after sixteen looks into a
// table.
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
    [[nodiscard]] bool finds_nothing() const { return letter_count_ == 0; }

    [[nodiscard]] std::size_t count() const { return words_.size(); }
    [[nodiscard]] int length(std::size_t word) const { return static_cast<int>(words_[word].count); }

    // Calls visit(word, placement) for every complete copy that runs through the cell, which holds a letter;
    // a palindrome's from both ends. Stops where visit returns false, and returns whether it came to the end.
    template <class Visit>
    bool through(const Grid& grid, Cell cell, Visit&& visit) const {
        if (finds_nothing()) return true;
        const Letter here = seen_as_[grid[cell]];
        if (here >= letter_count_) return true;
        for (const Direction direction : all_directions) {
            const Cell neighbour = moved(cell, direction, 1);
            if (!grid.inside(neighbour)) continue;
            const Letter letter = grid[neighbour];
            if (letter >= seen_as_.size()) continue;  // closed or empty
            const Letter there = seen_as_[letter];
            if (there >= letter_count_) continue;
            // The neighbour is the next letter, read in the direction, or the one before the word's last,
            // read back from it.
            if (!visit_uses(grid, cell, direction, not_last_.at(here, there), visit)) return false;
            if (!visit_uses(grid, cell, opposite(direction), last_.at(here, there), visit)) return false;
        }
        return true;
    }

  private:
    struct Run {
        std::uint32_t first;
        std::uint32_t count;
    };
    void index(std::size_t longest);

    // A place in a word.
    struct Use {
        std::uint32_t word;
        std::uint32_t index;
    };
    // Uses by the letter there and a neighbouring one; by the first alone where an alphabet has too many
    // pairs for a table.
    class Table {
      public:
        void build(std::size_t letters, std::span<const Use> uses, std::span<const Letter> here,
                   std::span<const Letter> there);
        [[nodiscard]] std::span<const Use> at(Letter here, Letter there) const {
            const std::size_t key = here * stride_ + (stride_ > 1 ? there : 0);
            return {uses_.data() + starts_[key], starts_[key + 1] - starts_[key]};
        }

      private:
        std::size_t stride_ = 1;
        std::vector<std::uint32_t> starts_;
        std::vector<Use> uses_;
    };

    template <class Visit>
    bool visit_uses(const Grid& grid, Cell cell, Direction direction, std::span<const Use> uses,
                    Visit& visit) const {
        for (const auto [word, index] : uses) {
            const Cell first = moved(cell, direction, -static_cast<int>(index));
            if (stands(grid, word, first, direction) &&
                !visit(std::size_t{word}, Placement{first, direction}))
                return false;
        }
        return true;
    }
    [[nodiscard]] bool stands(const Grid& grid, std::uint32_t word, Cell first, Direction direction) const;

    Letters seen_as_;
    std::size_t letter_count_ = 0;  // letters that words use lie below
    Letters letters_;               // of all words, one after another
    std::vector<Run> words_;
    Table not_last_;  // places but the last of a word, by the letter that follows
    Table last_;      // last places, by the letter before
};

// Over words in letters of an alphabet of so many, each of which counts as itself.
[[nodiscard]] CopyGuard exact_guard(std::span<const Letters> words, std::size_t letters);

}  // namespace lode
