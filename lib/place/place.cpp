// No one search wins everywhere: a small portfolio does. Chance serves everyday puzzles within microseconds.
// What it does not place soon is handed to several searches by turns, each turn twice as long as the last:
// the neighbourhood search finds tight placements, one that goes by cells finds exact leftovers, the complete
// one proves that there is none. Turns are counted in steps, so that the outcome is the same on every
// machine, and the same whether they are taken one after another or on several processors. Grids too large
// for sets of candidates are left to chance alone.

#include "place/place.hpp"

#include <optional>

#include "place/lanes.hpp"
#include "place/sampling.hpp"

namespace lode {
namespace {

// By chance: a few hundred steps place an everyday puzzle, and what has not been placed in this many is
// tight.
constexpr std::uint64_t least_everyday_steps = 4'000;
constexpr std::uint64_t everyday_steps_per_word = 100;
// Candidates placed in the first turn.
constexpr std::uint64_t first_turn = 500;

using End = PlaceResult::End;

class Portfolio {
  public:
    Portfolio(const PlaceTask& task, Random& random)
        : task_(task), random_(random), effort_(task), sampling_(task, random, effort_) {}

    PlaceResult run() {
        SearchEnd end = sampling_.search(least_everyday_steps + everyday_steps_per_word * task_.words.size());
        if (end == SearchEnd::placed) return placed(sampling_.placements(), sampling_.finished_grid());
        if (end == SearchEnd::exhausted) return without(End::impossible, sampling_.hardest());
        if (auto candidates = Candidates::list(task_)) return run_tight(*candidates);
        end = sampling_.search(task_.effort);
        if (end == SearchEnd::placed) return placed(sampling_.placements(), sampling_.finished_grid());
        return without(end == SearchEnd::exhausted ? End::impossible : End::unfinished, sampling_.hardest());
    }

  private:
    PlaceResult run_tight(Candidates& candidates) {
        Lanes lanes(task_, candidates, random_);
        for (std::uint64_t turn = first_turn;; turn *= 2) {
            const std::uint64_t left = task_.effort - effort_.spent();
            const Lanes::Outcome outcome = lanes.take_turns(turn, effort_.spent(), left);
            effort_.add(outcome.effort_spent);
            if (outcome.end == SearchEnd::placed) return placed(*outcome.position);
            if (outcome.end == SearchEnd::exhausted) return without(End::impossible, lanes.hardest());
            // Where what is left is too little for a step, nothing is spent any more.
            if (outcome.effort_spent == 0 || lanes.is_cancelled()) break;
        }
        return without(End::unfinished, lanes.hardest());
    }

    [[nodiscard]] PlaceResult placed(const Position& position) const {
        return placed(position.placements(), position.finished_grid());
    }
    [[nodiscard]] PlaceResult placed(std::vector<Placement> placements, const Grid& grid) const {
        return {End::placed, effort_.spent(), std::move(placements), grid, 0};
    }
    [[nodiscard]] PlaceResult without(End end, std::uint32_t hardest) const {
        const bool cancelled = task_.cancel && task_.cancel->load(std::memory_order_relaxed);
        if (end == End::unfinished && cancelled) end = End::cancelled;
        return {end, effort_.spent(), {}, {}, hardest};
    }

    const PlaceTask& task_;
    Random& random_;
    Effort effort_;
    SamplingSearch sampling_;
};

}  // namespace

PlaceResult place(const PlaceTask& task, Random& random) {
    return Portfolio(task, random).run();
}

}  // namespace lode
