#pragma once
// The candidates once more, numbered line by line instead of word by word, for the cover search. What it asks
// most often is how many candidates cover a cell, and those lie on the four lines through it: a dozen blocks,
// where the numbers of Candidates spread them over all.

#include <cstdint>
#include <span>
#include <vector>

#include "place/candidates.hpp"

namespace lode {

class CoverTables {
  public:
    // What the tables of such a task take at the most, in bytes.
    [[nodiscard]] static double bytes_needed(const PlaceTask& task);

    CoverTables(const PlaceTask& task, const Candidates& candidates, bool may_share_cells);

    // A cell's part of a set: the blocks of one of the lines through it.
    struct Part {
        std::uint32_t first = 0;  // block of the set
        std::uint32_t count = 0;
        std::uint32_t at = 0;  // where the part's own masks begin
    };
    [[nodiscard]] std::span<const Part> parts(std::uint32_t cell) const {
        return {parts_.data() + first_part_[cell], first_part_[cell + 1] - first_part_[cell]};
    }
    // Of a part's blocks, the candidates that cover the cell.
    [[nodiscard]] const Block* covering(const Part& part) const { return covering_.data() + part.at; }
    // Of these, the ones that may share it with a word that has the letter there.
    [[nodiscard]] const Block* sharing(const Part& part, Letter letter) const {
        return sharing_.data() + std::size_t{part.at} * letters_ +
               std::size_t{number_of_[letter]} * part.count;
    }

    [[nodiscard]] std::uint32_t blocks() const { return static_cast<std::uint32_t>(all_.size()); }
    [[nodiscard]] const std::vector<Block>& all() const { return all_; }
    // The word's candidates, as a set.
    [[nodiscard]] const Block* of_word(std::uint32_t word) const {
        return of_word_.data() + std::size_t{word} * blocks();
    }
    // The candidate of this number in a set of these tables.
    [[nodiscard]] Candidate candidate(std::uint32_t number) const { return candidates_[number]; }
    [[nodiscard]] std::uint32_t number(Candidate candidate) const { return numbers_[candidate]; }

  private:
    void number_lines(const PlaceTask& task, const Candidates& candidates);
    void list_parts(const PlaceTask& task);
    void fill(const PlaceTask& task, const Candidates& candidates, bool may_share_cells);

    struct Line {
        std::uint32_t first = 0;
        std::uint32_t count = 0;
    };
    std::vector<Line> lines_;
    std::vector<std::uint32_t> line_at_;  // by cell and axis
    std::vector<std::uint32_t> first_part_;
    std::vector<Part> parts_;
    std::vector<std::uint32_t> part_at_;    // by cell and axis
    std::size_t letters_ = 0;               // how many different ones
    std::vector<std::uint32_t> number_of_;  // by letter
    std::vector<Block> covering_;
    std::vector<Block> sharing_;
    std::vector<Block> all_;
    std::vector<Block> of_word_;
    std::vector<Candidate> candidates_;   // by number
    std::vector<std::uint32_t> numbers_;  // by candidate
};

}  // namespace lode
