#pragma once
// The search that finds tight placements: most words in place, a few of them near to each other lifted again
// and again, and put back with the ones that are still out.

#include <cstdint>
#include <vector>

#include "place/by_word.hpp"
#include "place/effort.hpp"
#include "place/position.hpp"
#include "random/random.hpp"

namespace lode {

class NeighbourhoodSearch {
  public:
    NeighbourhoodSearch(const PlaceTask& task, Candidates& candidates, Random& random, Effort& effort);

    // Goes on from where the last call ended, placing at most about so many candidates. Never `exhausted`.
    [[nodiscard]] SearchEnd search(std::uint64_t most_nodes);
    [[nodiscard]] const Position& position() const { return position_; }
    // The word that was left without a candidate most often.
    [[nodiscard]] std::uint32_t hardest() const { return most_failed(failed_); }

  private:
    enum class Settled { yes, no, limit };

    void restart();
    void choose_all();
    void choose_near(Cell centre);
    void lift_chosen();
    void put_back();
    void start_sets();
    [[nodiscard]] Settled settle(std::size_t depth, std::size_t letters_out);
    [[nodiscard]] Settled leave_out(std::size_t depth, std::size_t at, std::size_t letters_out);
    [[nodiscard]] Settled try_candidates(std::size_t depth, std::uint32_t word, std::size_t letters_out);
    void narrow(std::size_t depth);
    void rule(Block* set);
    [[nodiscard]] std::size_t count_letters_out() const;

    const PlaceTask& task_;
    Candidates& candidates_;
    Random& random_;
    Effort& effort_;
    const BlockOperations& operations_;
    Position position_;
    bool is_fresh_ = true;         // nothing is in place yet
    std::uint64_t idle_ = 0;       // rounds since fewer letters were out than ever before
    std::size_t letters_out_ = 0;  // of the words that are not in place
    std::size_t letters_allowed_ = 0;
    std::uint64_t nodes_ = 0;
    std::uint64_t nodes_limit_ = 0;
    std::vector<std::uint64_t> weight_;               // by word: how often it was left without a candidate
    std::vector<std::uint64_t> failed_;               // the same, never reset
    std::vector<std::uint32_t> chosen_;               // the words of this round
    std::vector<std::optional<Candidate>> before_;    // where those stood
    std::vector<std::uint32_t> to_come_;              // those of them that are to be placed yet
    std::vector<std::vector<Block>> sets_;            // by depth; only the runs of words to come hold
    std::vector<std::vector<std::uint32_t>> counts_;  // by depth
};

}  // namespace lode
