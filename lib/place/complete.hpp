#pragma once
// The complete search: finds a placement, or proves that there is none. It is there for the proof; of tasks
// that have a placement, the neighbourhood search finds most sooner.

#include <cstdint>
#include <functional>
#include <span>
#include <vector>

#include "place/counting.hpp"
#include "place/effort.hpp"
#include "place/position.hpp"

namespace lode {

class CompleteSearch {
  public:
    CompleteSearch(const PlaceTask& task, Candidates& candidates, Effort& effort);

    // Searches from the start, for as many steps as placing so many candidates takes. `exhausted` is a
    // proof.
    [[nodiscard]] SearchEnd search(std::uint64_t most_nodes);
    [[nodiscard]] const Position& position() const { return position_; }
    // Calls visit with each solution once, images under symmetries and all. False where the effort did not
    // suffice for all of them.
    [[nodiscard]] bool visit_all(const std::function<void(const Position&)>& visit);

  private:
    enum class Filtered { possible, impossible, limit };

    [[nodiscard]] std::vector<Block> start() const;
    [[nodiscard]] SearchEnd search_in(std::vector<Block> set, std::uint64_t most_nodes);
    [[nodiscard]] SearchEnd judge_full();
    [[nodiscard]] SearchEnd descend(std::size_t depth);
    [[nodiscard]] SearchEnd try_candidate(std::size_t depth, Candidate candidate);
    void narrow(std::size_t depth);
    void rule(std::vector<Block>& set);
    [[nodiscard]] bool filter(Block* set);
    [[nodiscard]] Filtered filter_and_count(std::size_t depth);
    [[nodiscard]] bool spend(std::uint64_t steps);
    void keep_compatible(Block* set, std::uint32_t word);
    [[nodiscard]] const Block* compatible_with(Candidate candidate);

    const PlaceTask& task_;
    Candidates& candidates_;
    Effort& effort_;
    const BlockOperations& operations_;
    LineCounting counting_;
    Position position_;
    std::vector<std::vector<Block>> sets_;        // by depth: the candidates that are still possible
    std::vector<std::uint32_t> order_;            // the words that are to come, in no order
    std::vector<std::uint32_t> counts_;           // of each of those, how many candidates
    std::vector<std::uint32_t> filtered_;         // by word, its count when it last narrowed the others
    std::vector<std::vector<Block>> compatible_;  // by candidate; empty where not made yet
    std::vector<Block> joined_;
    std::vector<Block> scratch_;
    bool use_compatible_;
    std::uint64_t steps_left_ = 0;
    std::function<void(const Position&)> visit_;  // empty where the first solution ends the search
};

}  // namespace lode
