#pragma once
// While a grid is made: which copies of which words does a letter, just written, complete? Place and fill ask
// after every letter. The finder that judges the finished grid shares nothing with this.

#include <cstdint>
#include <span>
#include <vector>

#include <letterlode/grid.hpp>
#include <letterlode/text.hpp>

namespace lode {

class CopyGuard {
  public:
    CopyGuard() = default;
    // Each word as letters of the grid's alphabet. `seen_as` gives the letter that each of the alphabet's
    // letters counts as (itself, or one without case and marks); the words are then in those.
    CopyGuard(std::span<const Letters> words, Letters seen_as);

    [[nodiscard]] bool empty() const { return uses_.empty(); }
    [[nodiscard]] int length(std::size_t word) const { return static_cast<int>(words_[word].count); }

    // Calls visit(word, placement) for every complete copy that runs through the cell, which holds a letter;
    // a palindrome's from both ends. Stops where visit returns false, and returns whether it came to the end.
    // Cost: the places of that letter in all words, times eight.
    template <class Visit>
    bool through(const Grid& grid, Cell cell, Visit&& visit) const {
        if (uses_.empty()) return true;
        const Letter here = seen_as_[grid[cell]];
        if (here + std::size_t{1} >= use_start_.size()) return true;
        for (std::uint32_t at = use_start_[here]; at < use_start_[here + std::size_t{1}]; ++at) {
            const auto [word, index] = uses_[at];
            for (const Direction direction : all_directions) {
                const Cell first = moved(cell, direction, -static_cast<int>(index));
                if (stands(grid, word, first, direction) &&
                    !visit(std::size_t{word}, Placement{first, direction}))
                    return false;
            }
        }
        return true;
    }

  private:
    struct Run {
        std::uint32_t first;
        std::uint32_t count;
    };
    struct Use {
        std::uint32_t word;
        std::uint32_t index;
    };
    [[nodiscard]] bool stands(const Grid& grid, std::uint32_t word, Cell first, Direction direction) const;

    Letters seen_as_;
    Letters letters_;  // of all words, one after another
    std::vector<Run> words_;
    std::vector<Use> uses_;  // by letter
    std::vector<std::uint32_t> use_start_;
};

}  // namespace lode
