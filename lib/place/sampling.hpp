#pragma once
// The search for everyday puzzles and for large grids: placements by chance, words that fail first in the
// next run.

#include <cstdint>
#include <optional>
#include <vector>

#include "place/by_word.hpp"
#include "place/effort.hpp"
#include "place/message.hpp"
#include "place/nesting.hpp"
#include "place/tally.hpp"
#include "random/random.hpp"

namespace lode {

class SamplingSearch {
  public:
    SamplingSearch(const PlaceTask& task, Random& random, Effort& effort);

    // Runs from the start, again and again, for at most so many steps in all. `exhausted` is a proof.
    [[nodiscard]] SearchEnd search(std::uint64_t most_steps);

    // Where search ended with `placed`.
    [[nodiscard]] std::vector<Placement> placements() const { return all_of(placed_); }
    [[nodiscard]] Grid finished_grid() const { return with_message(grid_, task_.demands); }
    // The word that failed most often.
    [[nodiscard]] std::uint32_t hardest() const { return most_failed(weight_); }

  private:
    // One word's place in the order of a run, and how far its placements have been tried.
    struct Level {
        std::uint32_t word = 0;
        std::uint64_t start = 0;
        std::uint64_t stride = 1;
        std::uint64_t tried = 0;
        std::size_t written = 0;   // how many cells had been written before this word
        std::size_t foretold = 0;  // how many copies had been foretold before this word
        std::size_t open = 0;      // how many copies had been left open before this word
    };

    void start_run();
    [[nodiscard]] SearchEnd run();
    void enter(std::size_t depth);
    [[nodiscard]] bool try_next(Level& level);
    void undo(const Level& level);
    void clear();
    [[nodiscard]] bool write(std::uint32_t word, const Placement& placement);
    [[nodiscard]] bool copies_are_right(std::size_t written_before);

    [[nodiscard]] bool is_complete() const;
    void list_cells(std::uint32_t word, const Placement& placement);
    // How many placements of the word there are to walk, out of the grid or not.
    [[nodiscard]] std::uint64_t candidates(std::uint32_t word) const {
        return is_pinned(word) ? 2 : mask_cells_ * choices_.size();
    }
    [[nodiscard]] bool is_pinned(std::uint32_t word) const {
        return !task_.demands.pins.empty() && task_.demands.pins[word].has_value();
    }
    [[nodiscard]] std::optional<Placement> candidate(std::uint32_t word, std::uint64_t number) const;
    [[nodiscard]] std::optional<Placement> pinned(std::uint32_t word, std::uint64_t number) const;

    const PlaceTask& task_;
    Random& random_;
    Effort& effort_;
    std::uint64_t mask_cells_;
    std::vector<Direction> choices_;
    std::vector<std::uint8_t> palindrome_;
    std::vector<std::uint32_t> weight_;

    Grid grid_;
    std::vector<Level> levels_;
    std::vector<Cell> written_;
    std::vector<std::optional<Placement>> placed_;
    // A copy of a word that others spelled before the word was placed: the word must stand there and nowhere
    // else.
    std::vector<std::optional<Placement>> foretold_;
    std::vector<std::uint32_t> foretold_trail_;
    // Copies that words to come may explain, by a word's own placement or by one that holds it.
    std::vector<std::pair<std::size_t, Placement>> open_;
    Nesting nesting_;
    Tally tally_;
    std::vector<std::uint32_t> cells_;  // of the word in hand
    std::uint64_t run_number_ = 0;
    std::uint64_t run_stop_ = 0;  // the effort at which a run ends
    std::uint64_t stop_ = 0;      // the effort at which a call ends
};

}  // namespace lode
