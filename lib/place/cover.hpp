#pragma once
// The search for an exact leftover: every word placed, and exactly so many open cells outside all of them.

#include <cstdint>
#include <optional>
#include <vector>

#include "place/cover_tables.hpp"
#include "place/effort.hpp"
#include "place/position.hpp"

namespace lode {

class CoverSearch {
  public:
    // Whether the task says how many cells its words cover, which it does as well where words may not cross,
    // and is small enough for the tables.
    [[nodiscard]] static bool suits(const PlaceTask& task);

    // Only for a task that suits.
    CoverSearch(const PlaceTask& task, Candidates& candidates, Random& random, Effort& effort);

    // Searches from the start, again and again, for as many steps as placing so many candidates takes.
    // `exhausted` is a proof.
    [[nodiscard]] SearchEnd search(std::uint64_t most_nodes);
    [[nodiscard]] const Position& position() const { return position_; }

  private:
    // Candidates are told apart by how many written cells they cover, up to so many.
    static constexpr std::size_t most_overlap = 5;

    struct Choice {
        std::int64_t key;
        std::uint32_t number;
    };
    // What a depth of the search needs; kept from one visit to the next.
    struct Level {
        std::vector<Block> set;                    // the candidates that are still possible
        std::vector<std::vector<Block>> overlaps;  // [k]: those that cover more than k written cells
        std::vector<Choice> choices;
    };
    // The word or the cell with the fewest candidates for its weight.
    struct Fewest {
        std::size_t at = 0;
        std::uint64_t count = 0;
        std::uint64_t weight = 0;  // 0: none yet
        void look_at(std::size_t which, std::uint64_t count_there, std::uint64_t weight_there);
        [[nodiscard]] bool is_before(const Fewest& other) const;
    };

    [[nodiscard]] SearchEnd run(std::uint64_t most_steps);
    [[nodiscard]] SearchEnd descend(std::size_t depth);
    [[nodiscard]] SearchEnd try_choice(std::size_t depth, std::uint32_t number);
    [[nodiscard]] bool keep_what_fits(Level& level);
    [[nodiscard]] bool overlap_enough(const Level& level);
    [[nodiscard]] std::optional<Fewest> fewest_of_words(const Level& level);
    [[nodiscard]] bool look_at_cells(const Level& level, Fewest& fewest);
    void list_choices(Level& level, const Fewest& word, const Fewest& cell);
    void add_choice(Level& level, std::uint32_t number);
    void narrow(std::size_t depth, std::uint32_t word);
    [[nodiscard]] std::vector<Block> start() const;

    const PlaceTask& task_;
    Candidates& candidates_;
    Random& random_;
    Effort& effort_;
    std::size_t to_cover_;
    std::size_t letters_ = 0;
    bool may_share_;
    CoverTables tables_;
    Position position_;
    std::uint64_t steps_per_try_;
    std::size_t cells_left_ = 0;     // to be covered yet
    std::size_t overlaps_left_ = 0;  // letters of words to come that must fall on letters
    std::size_t spare_;              // cells that may stay uncovered
    std::vector<Level> levels_;
    std::vector<std::uint32_t> order_;  // the words that are to come, in no order
    std::vector<std::uint32_t> open_cells_;
    std::vector<std::uint32_t> uncovered_;
    std::vector<std::uint32_t> counts_;
    std::vector<std::uint64_t> word_weight_;  // how often it was left without a candidate, and 1
    std::vector<std::uint64_t> cell_weight_;
    std::uint64_t runs_ = 0;
    std::uint64_t steps_left_ = 0;
};

}  // namespace lode
