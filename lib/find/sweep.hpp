#pragma once
// Finds every copy in time linear in cells and copies, whatever the grid and the words.
//
// The automaton of Aho and Corasick ("Efficient string matching", Communications of the ACM 18(6), 1975) runs
// along every line against the reading direction, for the words spelt backward: where it stands in a state at
// a cell, exactly the words of that state begin there. So copies come by their first cell, nothing waits, and
// no list of copies is kept. A column holds a state for each direction, and a row of the grid takes the
// states of the row before it one cell along: nothing is copied out. Up, up-left and up-right run down the
// rows, left and right along each row; down, down-right and down-left run up, from the last row: their states
// are kept at every so many rows, about the square root of all, and made again a block at a time, so that
// memory is a few times the square root of the rows times the columns.
//
// States are few and transitions sparse, so that a list in any alphabet has an automaton no greater than its
// letters. Judged, as the Sieve is, by find_test, where both must give the same.

#include <cstdint>
#include <span>
#include <vector>

#include <letterlode/grid.hpp>

#include "find/giver.hpp"
#include "find/sought_words.hpp"
#include "find/wanted.hpp"

namespace lode {

class Sweep {
  public:
    // Linear in the letters, but for sorting.
    explicit Sweep(const SoughtWords& words);

    // Gives the copies that begin in rows first_row to last_row - 1, in the order of findings.hpp. Returns
    // whether it came to the end.
    bool run(const Grid& grid, int first_row, int last_row, const Wanted& wanted, Giver& giver) const;

  private:
    using State = std::uint32_t;
    static constexpr State start = 0;
    struct Edge {
        Letter letter;
        State to;
    };
    [[nodiscard]] State child(State state, Letter letter) const;
    [[nodiscard]] State next(State state, Letter letter) const;
    void add_words();
    void link();
    void tabulate(std::span<const State> by_length);
    // Of a row, the states of a direction from those of the row that is read after it.
    using Row = std::vector<State>;
    void cross(const Grid& grid, int row, Direction direction, const Row& after, Row& here) const;
    // Of a row, the states of right or left.
    void run_along(const Grid& grid, int row, Direction direction, Row& here) const;
    bool give(State state, Cell first, Direction direction, const Wanted& wanted, Giver& giver) const;

    const SoughtWords& words_;
    std::vector<State> table_;               // by state and code of letter, or empty
    std::vector<State> roots_;               // children of the start, by letter; `start` where there is none
    std::vector<Edge> edges_;                // by state, and by letter
    std::vector<std::uint32_t> first_edge_;  // by state, and the end
    std::vector<State> shorter_;             // by state: the longest state that its letters end with
    std::vector<State> speaking_;  // by state: itself or the longest such state that ends words, or `start`
    std::vector<std::uint32_t> ending_;  // words, by state
    std::vector<std::uint32_t> first_ending_;
};

}  // namespace lode
