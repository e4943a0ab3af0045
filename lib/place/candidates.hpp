#pragma once
// Every placement of every word, numbered, and for each letter in each cell the set of those that it leaves
// possible. The tight searches work on these sets; the sampling search, which large grids are left to, does
// without.

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "place/blocks.hpp"
#include "place/place.hpp"

namespace lode {

using Candidate = std::uint32_t;

class Candidates {
  public:
    // Nothing where the sets of this task would take more memory than they are worth: see most_bytes in the
    // .cpp.
    [[nodiscard]] static std::optional<Candidates> list(const PlaceTask& task);

    [[nodiscard]] std::uint32_t words() const { return static_cast<std::uint32_t>(runs_.size()); }
    [[nodiscard]] std::size_t blocks() const { return all_.size(); }
    // Each word's candidates lie in blocks of their own; a run may end in numbers that are none, and are in
    // no set.
    [[nodiscard]] const std::vector<BlockRun>& runs() const { return runs_; }
    [[nodiscard]] const std::vector<Block>& all() const { return all_; }

    [[nodiscard]] std::uint32_t word(Candidate candidate) const { return word_of_[candidate / 64]; }
    [[nodiscard]] Placement placement(Candidate candidate) const { return placements_[candidate]; }
    // The cells of its letters in order, as indices into the grid.
    [[nodiscard]] std::span<const std::uint32_t> cells(Candidate candidate) const {
        return {cells_.data() + first_cell_[candidate], task_->words[word(candidate)].size()};
    }
    // The candidate of the word that covers the placement's cells, if any.
    [[nodiscard]] std::optional<Candidate> that_covers(std::uint32_t word, const Placement& placement) const;

    // Of all candidates, those that stay possible once a word has put the letter in the cell: they do not
    // cover it, or have the letter there too; where words may not cross, or must keep apart, they do not come
    // near. Made when first asked for.
    [[nodiscard]] const Block* left_by(std::uint32_t cell, Letter letter) {
        auto& set = left_by_[cell * letters_ + letter];
        if (set.empty()) make_left_by(set, cell, letter);
        return set.data();
    }

    // Of all candidates, those in other directions. Made when first asked for.
    [[nodiscard]] const Block* not_in(Direction direction);
    // Of all candidates, those that stand where their word stood before, or whose word stood nowhere. Made
    // when first asked for.
    [[nodiscard]] const Block* at_home();

  private:
    explicit Candidates(const PlaceTask& task);
    void number(std::uint32_t word);
    [[nodiscard]] bool is_wanted(std::uint32_t word, const Placement& placement) const;
    void make_left_by(std::vector<Block>& set, std::uint32_t cell, Letter letter) const;
    void take_away_near(std::vector<Block>& set, std::uint32_t cell) const;
    [[nodiscard]] std::size_t key(Cell first, Direction direction) const;

    const PlaceTask* task_;
    int columns_;
    std::size_t letters_ = 0;  // the words' letters lie below
    std::vector<BlockRun> runs_;
    std::vector<std::uint32_t> word_of_;  // by block
    std::vector<Placement> placements_;
    std::vector<std::uint32_t> first_cell_;
    std::vector<std::uint32_t> cells_;
    std::vector<std::vector<Candidate>> number_of_;  // by word, then by key; `none` where there is none
    std::vector<Block> all_;
    std::vector<std::vector<Candidate>> covering_;  // by cell
    std::vector<std::vector<Block>> left_by_;       // by cell and letter; empty where not made yet
    std::array<std::vector<Block>, 8> not_in_;      // by direction; empty where not made yet
    std::vector<Block> at_home_;
};

// Placing a candidate costs about as much as so many looks of the sampling search: sets are gone through
// whole, and large ones come from memory that no cache holds.
[[nodiscard]] inline std::uint64_t steps_per_node(const Candidates& candidates) {
    constexpr std::size_t cached = 256;
    const std::size_t blocks = candidates.blocks();
    return 2 + blocks / 24 + (blocks > cached ? blocks / 2 : 0);
}

// Leaves the candidate alone of its word's, if it is in the set, and none if it is not.
void keep_only(Block* set, const Candidates& candidates, Candidate candidate);

}  // namespace lode
