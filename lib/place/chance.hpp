#pragma once
// The search for everyday puzzles and for large grids: each word at the first of some random places where its
// letters agree with what stands; what is wrong in the end is mended.

#include <cstdint>
#include <optional>
#include <vector>

#include "place/by_word.hpp"
#include "place/effort.hpp"
#include "place/nesting.hpp"
#include "random/random.hpp"

namespace lode {

class ChanceSearch {
  public:
    // It knows of no demands.
    [[nodiscard]] static bool suits(const PlaceTask& task) {
        return task.demands.pins.empty() && !task.demands.count_anything();
    }
    ChanceSearch(const PlaceTask& task, Random& random, Effort& effort);

    // Runs from the start, again and again, for at most so many steps in all. Never `exhausted`. A run is
    // linear in the words' letters and in the cells.
    [[nodiscard]] SearchEnd search(std::uint64_t most_steps);

    // Where search ended with `placed`.
    [[nodiscard]] std::vector<Placement> placements() const { return all_of(placed_); }
    [[nodiscard]] const Grid& finished_grid() const { return grid_; }
    // The word that was left without a place most often.
    [[nodiscard]] std::uint32_t hardest() const { return most_failed(failed_); }

  private:
    [[nodiscard]] bool run();
    template <class Accept>
    [[nodiscard]] bool place(std::uint32_t word, Accept&& accept);
    [[nodiscard]] bool agrees(std::uint32_t word, const Placement& placement) const;
    void write(std::uint32_t word, const Placement& placement);
    void lift(std::uint32_t word);

    [[nodiscard]] bool mend();
    [[nodiscard]] bool has_only_explained_copies_of(std::uint32_t word) const;
    [[nodiscard]] bool place_elsewhere(std::uint32_t word);
    [[nodiscard]] bool are_explained_along(std::uint32_t word, const Placement& placement) const;
    [[nodiscard]] bool is_explained(std::size_t word, const Placement& copy) const;
    [[nodiscard]] std::uint32_t word_on(const SeenCopy& stray);
    void note_words_on_cells();
    [[nodiscard]] bool stands_on(std::uint32_t word, Cell cell) const;

    const PlaceTask& task_;
    Random& random_;
    Effort& effort_;
    Nesting nesting_;
    std::vector<Direction> choices_;
    std::vector<std::uint32_t> order_;  // long words first, since they have the fewest places
    std::vector<std::uint32_t> failed_;
    Grid grid_;
    std::vector<std::optional<Placement>> placed_;
    // By cell: how many words stand there, and which was laid last; empty until something is to be mended.
    std::vector<std::uint16_t> cover_;
    std::vector<std::uint32_t> last_on_;
};

}  // namespace lode
