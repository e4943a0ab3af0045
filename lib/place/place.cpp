// No one search wins everywhere: a small portfolio does. Chance serves everyday puzzles and large grids
// within a few passes over the grid; the heat bath places what is tight. What neither places soon, or what is
// demanded beyond their means, is handed to several searches by turns, each turn twice as long as the last:
// the neighbourhood search finds placements that meet demands, one that goes by cells finds exact leftovers,
// the complete one proves that there is none. Turns are counted in steps, so that the outcome is the same on
// every machine, and the same whether they are taken one after another or on several processors. Grids too
// large for sets of candidates are left to chance and, up to some size, to the heat bath.

#include "place/place.hpp"

#include <algorithm>
#include <optional>

#include "place/chance.hpp"
#include "place/heat_bath.hpp"
#include "place/lanes.hpp"
#include "place/sampling.hpp"

namespace lode {
namespace {

// By chance: a few hundred steps place an everyday puzzle, and what has not been placed in this many is
// tight.
constexpr std::uint64_t least_everyday_steps = 4'000;
constexpr std::uint64_t everyday_steps_per_word = 100;
// Moves of the heat bath before others have their turns: fewer in small grids, where proofs are short.
constexpr std::uint64_t most_moves_per_word = 1'000;
constexpr std::uint64_t squared_cells_per_move = 10;
// Candidates placed in the first of those turns.
constexpr std::uint64_t first_turn = 500;

using End = PlaceResult::End;

class Portfolio {
  public:
    Portfolio(const PlaceTask& task, Random& random) : task_(task), random_(random), effort_(task) {}

    PlaceResult run() {
        if (auto result = run_everyday()) return std::move(*result);
        if (effort_.cancelled()) return without(End::unfinished, 0);
        if (auto candidates = Candidates::list(task_)) return run_tight(*candidates);
        if (heat_bath_ && heat_bath_->search(heat_bath_moves(2)) == SearchEnd::placed)
            return placed(heat_bath_->placements(), heat_bath_->finished_grid());
        const SearchEnd end = sampling_->search(task_.effort);
        if (end == SearchEnd::placed) return placed(sampling_->placements(), sampling_->finished_grid());
        return without(end == SearchEnd::exhausted ? End::impossible : End::unfinished, sampling_->hardest());
    }

  private:
    // What is soon placed, or soon proved impossible.
    std::optional<PlaceResult> run_everyday() {
        const std::uint64_t steps = least_everyday_steps + everyday_steps_per_word * task_.words.size();
        const bool heat_bath_suits = HeatBathSearch::suits(task_);
        if (ChanceSearch::suits(task_) && !must_cross()) {
            ChanceSearch chance(task_, random_, effort_);
            if (chance.search(heat_bath_suits ? steps / 4 : steps) == SearchEnd::placed)
                return placed(chance.placements(), chance.finished_grid());
        }
        if (heat_bath_suits) {
            heat_bath_.emplace(task_, random_, effort_);
            const std::uint64_t cells = task_.mask.open_count();
            const std::uint64_t per_word =
                std::min(most_moves_per_word, cells * cells / squared_cells_per_move);
            const std::uint64_t moves = std::min(per_word * task_.words.size(), heat_bath_moves(4));
            if (heat_bath_->search(moves) == SearchEnd::placed)
                return placed(heat_bath_->placements(), heat_bath_->finished_grid());
        }
        sampling_.emplace(task_, random_, effort_);
        const SearchEnd end = sampling_->search(steps);
        if (end == SearchEnd::placed) return placed(sampling_->placements(), sampling_->finished_grid());
        if (end == SearchEnd::exhausted) return without(End::impossible, sampling_->hardest());
        return std::nullopt;
    }
    // As many as can be had for a part of the effort that is left.
    [[nodiscard]] std::uint64_t heat_bath_moves(std::uint64_t parts) const {
        return (task_.effort - effort_.spent()) / parts / heat_bath_->steps_per_move();
    }
    // Whether the words have more letters than there are cells for them: chance is of no use then.
    [[nodiscard]] bool must_cross() const {
        std::size_t letters = 0;
        for (const Letters& word : task_.words) letters += word.size();
        return letters >= task_.mask.open_count();
    }

    PlaceResult run_tight(Candidates& candidates) {
        Lanes lanes(task_, candidates, random_);
        for (std::uint64_t turn = first_turn;; turn *= 2) {
            const std::uint64_t left = task_.effort - effort_.spent();
            Lanes::Outcome outcome = lanes.take_turns(turn, effort_.spent(), left);
            effort_.add(outcome.effort_spent);
            if (outcome.end == SearchEnd::placed)
                return placed(std::move(outcome.found->placements), outcome.found->grid);
            if (outcome.end == SearchEnd::exhausted) return without(End::impossible, lanes.hardest());
            // Where what is left is too little for a step, nothing is spent any more.
            if (outcome.effort_spent == 0 || lanes.is_cancelled()) break;
        }
        return without(End::unfinished, lanes.hardest());
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
    // Once their turn has come, which in everyday puzzles it never does.
    std::optional<HeatBathSearch> heat_bath_;  // where it suits
    std::optional<SamplingSearch> sampling_;
};

}  // namespace

PlaceResult place(const PlaceTask& task, Random& random) {
    return Portfolio(task, random).run();
}

}  // namespace lode
