#pragma once
// The searches that tight tasks are handed to by turns. Each has its own share of the effort and its own
// chance, so that turns may be taken one after another or at the same time: what comes of them is the same.

#include <cstdint>
#include <memory>
#include <optional>
#include <vector>

#include "place/candidates.hpp"
#include "place/effort.hpp"
#include "random/random.hpp"

namespace lode {

class Lanes {
  public:
    // The candidates serve all searches where one processor works, and the first where several do.
    Lanes(const PlaceTask& task, Candidates& candidates, Random& random);
    ~Lanes();

    struct Found {
        std::vector<Placement> placements;
        Grid grid;
    };
    struct Outcome {
        SearchEnd end = SearchEnd::limit;
        std::uint64_t effort_spent = 0;
        std::optional<Found> found;  // where placed
    };
    // A turn for each search: at most about so many candidates placed, and a part of the effort that is left.
    // The first search in order that comes to an end decides.
    [[nodiscard]] Outcome take_turns(std::uint64_t nodes, std::uint64_t spent, std::uint64_t left);
    // The word that was left without a candidate most often.
    [[nodiscard]] std::uint32_t hardest() const;
    [[nodiscard]] bool is_cancelled() const;

    class Lane;

  private:
    void run_together(std::uint64_t nodes, std::uint64_t spent);

    const PlaceTask& task_;
    std::vector<std::unique_ptr<Lane>> lanes_;
};

}  // namespace lode
