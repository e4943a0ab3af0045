#pragma once
// The search that finds tight placements: words are moved one at a time to places drawn by what they cost,
// and push out those that are in their way.

#include <cstdint>
#include <optional>
#include <vector>

#include "place/by_word.hpp"
#include "place/cost_planes.hpp"
#include "place/effort.hpp"
#include "place/nesting.hpp"
#include "random/random.hpp"

namespace lode {

class HeatBathSearch {
  public:
    // It knows of no demands but pins that fit, a leftover, and no crossings, and costs every placement of a
    // word at each move: not for large grids.
    [[nodiscard]] static bool suits(const PlaceTask& task);
    // The task suits.
    HeatBathSearch(const PlaceTask& task, Random& random, Effort& effort);

    // Goes on from where the last call ended, for at most so many moves. Never `exhausted`.
    [[nodiscard]] SearchEnd search(std::uint64_t most_moves);

    [[nodiscard]] std::uint64_t steps_per_move() const { return steps_per_move_; }

    // Where search ended with `placed`.
    [[nodiscard]] std::vector<Placement> placements() const { return all_of(placed_); }
    [[nodiscard]] const Grid& finished_grid() const { return grid_; }
    // The word that pushed others out most often.
    [[nodiscard]] std::uint32_t hardest() const { return most_failed(failed_); }

  private:
    using Block = std::uint64_t;

    void place_pinned();
    [[nodiscard]] std::uint32_t choose_word();
    void move(std::uint32_t word);
    [[nodiscard]] std::optional<Placement> draw_place(std::uint32_t word);
    [[nodiscard]] std::optional<Placement> draw_own_place(std::uint32_t word);
    [[nodiscard]] bool is_spelled(std::uint32_t word, const Placement& placement) const;
    void push_out(std::uint32_t word, const Placement& placement);
    void place(std::uint32_t word, const Placement& placement);
    void lift(std::uint32_t word);
    void set_costs(Cell cell);
    [[nodiscard]] Cost cost_of_covering(std::size_t cell) const;
    [[nodiscard]] bool leaves_what_is_asked() const;
    void pull();
    [[nodiscard]] bool has_only_explained_copies();
    void lift_one_of(const CopyGuard& guard, std::size_t word, const Placement& copy);
    void mark_owners(Cell cell);
    void lift_marked();

    template <class Visit>
    void each_cell(std::uint32_t word, const Placement& placement, Visit&& visit) const;
    [[nodiscard]] bool is_pinned(std::uint32_t word) const {
        return !task_.demands.pins.empty() && task_.demands.pins[word].has_value();
    }
    [[nodiscard]] Block* owners(Cell cell) { return owners_.data() + grid_.index(cell) * blocks_; }

    const PlaceTask& task_;
    Random& random_;
    Effort& effort_;
    Nesting nesting_;
    CostPlanes planes_;
    std::uint64_t steps_per_move_;
    Grid grid_;
    std::vector<std::optional<Placement>> placed_;
    std::vector<std::uint32_t> movable_;  // the words that are not pinned
    std::vector<std::uint32_t> out_;      // those of them that are not in place
    std::vector<std::uint32_t> failed_;   // by word
    // By cell: the words that stand there, how many they are, and what it costs to push them all out.
    std::size_t blocks_;
    std::vector<Block> owners_;
    std::vector<std::uint16_t> cover_;
    std::vector<std::uint32_t> value_;
    std::size_t covered_ = 0;  // how many cells words stand on
    int new_cell_;             // what it costs to cover one more
    // By cell: how much less it costs to cover this one, where a leftover is demanded.
    std::vector<std::uint8_t> pull_;
    std::vector<Block> marked_;  // of words
};

}  // namespace lode
