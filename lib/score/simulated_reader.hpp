#pragma once
// The reader of score.hpp, counted instead of walked: what they do at a cell does not depend on where they
// began, so that each row's cost is summed once and the expectation is a sum over rows.

#include <array>
#include <cstdint>
#include <vector>

#include <letterlode/score.hpp>

namespace lode {

// Sums over all rows that a reader may begin in, in thousandths of a fixation.
struct ReadingCost {
    std::int64_t cost = 0;
    bool is_found = false;
};

// How many letters agreed where a reader went on in vain: exactly two, three, and four or more.
using FalseStarts = std::array<std::int64_t, 3>;

class SimulatedReader {
  public:
    // `letters`: how many the alphabet has. Linear in the cells and letters.
    SimulatedReader(const Grid& grid, std::size_t letters, const Reader& reader);

    // Rows that have letters.
    [[nodiscard]] std::int64_t rows_to_begin_in() const { return beginnings_; }

    // Linear in the rows and in the places where the first two letters stand. Of no meaning once more than
    // max_rated_steps were taken: it stops there.
    [[nodiscard]] ReadingCost look_for(const Letters& word);
    // Letters compared so far.
    [[nodiscard]] std::int64_t steps() const { return steps_; }
    // Over all words that were looked for, wherever the word itself is met.
    [[nodiscard]] const FalseStarts& false_starts() const { return false_starts_; }

  private:
    // A cell and a direction in which its neighbour is a letter. Columns as the reader counts them, from the
    // side where rows begin, so that starts and visits stand in reading order.
    struct Start {
        std::uint16_t row;
        std::uint16_t column;
        std::uint8_t rank;  // of the direction
    };
    // What the reader does at a cell from which the first two letters go on.
    struct Visit {
        std::uint16_t row;
        std::uint16_t column;
        bool finds;
        std::int64_t cost;
    };
    static_assert(max_side <= UINT16_MAX);

    [[nodiscard]] Cell cell_at(int row, int column) const {
        return {row, reader_.right_to_left ? grid_.size().columns - 1 - column : column};
    }
    [[nodiscard]] bool is_letter(Cell cell) const { return grid_.inside(cell) && grid_[cell] < letters_; }
    [[nodiscard]] Letter second(const Start& start) const;
    void count_letters();
    void find_starts();
    void visit_starts(const Letters& word);

    const Grid& grid_;
    std::size_t letters_;
    Reader reader_;
    std::array<Direction, 8> order_of_directions_{};
    std::array<std::int64_t, 8> step_cost_{};  // by rank
    std::int64_t beginnings_ = 0;
    std::vector<std::int64_t> row_letters_;  // by row
    struct InRow {
        std::uint32_t row;
        std::uint32_t count;
    };
    std::vector<InRow> in_rows_;           // by letter and row: how often it stands there, where it does
    std::vector<std::size_t> in_rows_of_;  // by letter: where its rows begin in in_rows_, and one more
    std::vector<Start> starts_;            // by first letter, second letter, reading order
    std::vector<Visit> visits_;            // of the word that is looked for
    FalseStarts false_starts_{};
    std::int64_t steps_ = 0;
};

}  // namespace lode
