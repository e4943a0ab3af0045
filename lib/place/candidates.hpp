#pragma once
// Every placement of every word, numbered, and for each letter in each cell the set of those that it leaves
// possible. The tight searches work on these sets; the sampling search, which large grids are left to, does
// without.

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

    // Of all candidates, those that do not cover the cell or have the letter there. Made when first asked
    // for.
    [[nodiscard]] const Block* left_by(std::uint32_t cell, Letter letter) {
        auto& set = left_by_[cell * letters_ + letter];
        if (set.empty()) make_left_by(set, cell, letter);
        return set.data();
    }

  private:
    explicit Candidates(const PlaceTask& task);
    void number(std::uint32_t word);
    void make_left_by(std::vector<Block>& set, std::uint32_t cell, Letter letter) const;
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
