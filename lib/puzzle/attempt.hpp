#pragma once
// One grid's worth of work: the words placed on a mask and the rest filled.

#include <cstdint>
#include <optional>

#include <letterlode/puzzle.hpp>

#include "fill/fill.hpp"
#include "puzzle/placing.hpp"
#include "puzzle/unfilled.hpp"

namespace lode {

class Attempt {
  public:
    // Spends at most so much effort. What is spent already only counts in what the caller is shown.
    Attempt(const Recipe& recipe, const Job& job, const Placing& placing, const Mask& mask,
            const MakeControl& control, std::uint64_t effort, std::uint64_t spent_before);

    // Without an audit.
    [[nodiscard]] Outcome<Puzzle> run(std::uint64_t seed);
    [[nodiscard]] std::uint64_t effort_spent() const { return spent_; }
    // How the search for placements ended, where that is what failed.
    [[nodiscard]] const std::optional<PlaceResult>& unplaced() const { return unplaced_; }
    // What could not be filled, where that is what failed.
    [[nodiscard]] const std::optional<Unfilled>& unfilled() const { return unfilled_; }

  private:
    [[nodiscard]] std::uint64_t effort_left() const { return effort_ - spent_; }
    [[nodiscard]] PlaceResult place_words(const Demands& demands, Random& random);
    [[nodiscard]] PlaceResult place_once(const Demands& demands, std::uint64_t effort, Random& random);
    [[nodiscard]] FillResult fill_rest(const Grid& placed, Random& random);
    [[nodiscard]] std::optional<Refusal> read_kept_filler();
    [[nodiscard]] Refusal interrupted() const;
    [[nodiscard]] Refusal not_placed() const;
    [[nodiscard]] Refusal not_filled() const;
    [[nodiscard]] Refusal not_filled_in_time() const;
    [[nodiscard]] Puzzle finish(const PlaceResult& placed, Grid grid, std::uint64_t seed) const;

    const Recipe& recipe_;
    const Job& job_;
    const Placing& placing_;
    const Mask& mask_;
    const MakeControl& control_;
    std::uint64_t effort_;
    std::uint64_t spent_before_;
    std::uint64_t spent_ = 0;
    std::optional<Grid> kept_filler_;
    std::optional<PlaceResult> unplaced_;
    std::optional<Unfilled> unfilled_;
};

}  // namespace lode
