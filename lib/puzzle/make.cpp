#include <algorithm>
#include <optional>

#include <letterlode/puzzle.hpp>

#include "fill/fill.hpp"
#include "place/place.hpp"
#include "puzzle/job.hpp"
#include "puzzle/unplaced.hpp"

namespace lode {
namespace {

// How often a grid of words that no filler completes is thrown away before the maker is told.
constexpr int placements_thrown_away = 50;
// Where the size is left to us: how often a larger one is tried, each a tenth larger.
constexpr int sizes_tried = 12;

// A refusal may cost as much again as the search did at the most.
std::uint64_t explaining(const Recipe& recipe) {
    return recipe.effort;
}

Refusal interrupted(std::uint64_t effort) {
    return {Refusal::Reason::unfinished,
            "Interrupted after an effort of " + std::to_string(effort) + " steps.",
            {},
            {"Run the same recipe again: it starts from the same seed."},
            {},
            0};
}

bool is_cancelled(const MakeControl& control) {
    return control.cancel && control.cancel->load(std::memory_order_relaxed);
}

// One grid's worth of work: what became of it, and what it cost.
class Attempt {
  public:
    Attempt(const Recipe& recipe, const Job& job, const Mask& mask, const MakeControl& control,
            std::uint64_t effort_before)
        : recipe_(recipe),
          job_(job),
          mask_(mask),
          control_(control),
          effort_before_(effort_before),
          random_(recipe.seed) {}

    Outcome<Puzzle> run();
    [[nodiscard]] std::uint64_t effort_spent() const { return effort_; }
    // How the search for placements ended, where that is what failed.
    [[nodiscard]] const std::optional<PlaceResult>& unplaced() const { return unplaced_; }

  private:
    [[nodiscard]] std::uint64_t effort_left() const {
        const std::uint64_t spent = effort_before_ + effort_;
        return recipe_.effort > spent ? recipe_.effort - spent : 0;
    }
    PlaceResult place_words();
    FillResult fill_rest(const Grid& placed);
    Refusal not_placed() const;
    Refusal not_filled() const;
    Refusal not_filled_in_time() const;
    Puzzle finish(const PlaceResult& placed, Grid grid) const;

    const Recipe& recipe_;
    const Job& job_;
    const Mask& mask_;
    const MakeControl& control_;
    std::uint64_t effort_before_;
    std::uint64_t effort_ = 0;
    std::optional<PlaceResult> unplaced_;
    Random random_;
};

PlaceResult Attempt::place_words() {
    PlaceTask task{mask_, job_.directions, job_.words, job_.words_guard, job_.avoided_guard, effort_left(),
                   {},    control_.cancel};
    if (control_.progress)
        task.progress = [&, before = effort_before_ + effort_](std::uint64_t spent) {
            control_.progress(before + spent, recipe_.effort);
        };
    PlaceResult result = place(task, random_);
    effort_ += result.effort_spent;
    return result;
}

FillResult Attempt::fill_rest(const Grid& placed) {
    // A letter tried costs about as much as a placement tried: both count as one step.
    const FillTask task{job_.words_guard, job_.avoided_guard, job_.filler_weights, effort_left(),
                        control_.cancel};
    FillResult result = fill(placed, task, random_);
    effort_ += result.effort_spent;
    return result;
}

// Only said where it is explained: see explain_unplaced.
Refusal Attempt::not_placed() const {
    return {Refusal::Reason::unfinished, "The words could not be placed.", {}, {}, recipe_.words.source, 0};
}

Refusal Attempt::not_filled() const {
    return {Refusal::Reason::unfinished,
            "The words could be placed, but no letters for the other cells were found that spell no listed "
            "or avoided word a "
            "second time.",
            {},
            {"Give a locale with --locale, so that its letters serve as filler, or list words with more "
             "different letters."},
            recipe_.words.source,
            0};
}

Refusal Attempt::not_filled_in_time() const {
    return {Refusal::Reason::unfinished,
            "The words could be placed, but no letters for the other cells were found within an effort of " +
                std::to_string(recipe_.effort) + " steps.",
            {},
            {"Allow more effort with --effort, or try another --seed."},
            recipe_.words.source,
            0};
}

Puzzle Attempt::finish(const PlaceResult& placed, Grid grid) const {
    Puzzle puzzle;
    puzzle.recipe = recipe_;
    puzzle.recipe.size = mask_.size();
    puzzle.recipe.directions = job_.directions;
    puzzle.grid = {job_.alphabet, std::move(grid)};
    for (std::size_t word = 0; word < job_.words.size(); ++word)
        puzzle.words.push_back(
            {job_.list.words[word].shown, job_.list.words[word].letters, placed.placements[word]});
    return puzzle;
}

Outcome<Puzzle> Attempt::run() {
    if (is_cancelled(control_)) return interrupted(effort_before_);
    for (int thrown_away = 0; thrown_away < placements_thrown_away; ++thrown_away) {
        const PlaceResult placed = place_words();
        if (placed.end == PlaceResult::End::cancelled) return interrupted(effort_before_ + effort_);
        if (placed.end != PlaceResult::End::placed) {
            unplaced_ = placed;
            return not_placed();
        }
        FillResult filled = fill_rest(placed.grid);
        if (filled.end == FillResult::End::cancelled) return interrupted(effort_before_ + effort_);
        if (filled.end == FillResult::End::filled) return finish(placed, std::move(filled.grid));
        if (effort_left() == 0) return not_filled_in_time();
    }
    return not_filled();
}

}  // namespace

Outcome<Puzzle> make(const Recipe& recipe, const MakeControl& control) {
    const auto job = check(recipe);
    if (!job) return job.refusal();

    const bool size_is_ours = !recipe.size && !recipe.mask;
    std::uint64_t effort = 0;
    std::size_t growth = 0;
    for (int tried = 1;; ++tried) {
        const auto mask = choose_mask(recipe, *job, growth);
        if (!mask) return mask.refusal();
        if (auto refusal = too_long_for(*mask, *job)) return std::move(*refusal);

        Attempt attempt(recipe, *job, *mask, control, effort);
        auto made = attempt.run();
        effort += attempt.effort_spent();
        if (made) {
            auto judged = audit(*made);
            if (!judged)
                throw AuditContradiction("a puzzle could not be audited: " + judged.refusal().message);
            made->audit = std::move(*judged);
            if (!made->audit.certified)
                throw AuditContradiction("the audit contradicts the engine, at seed " +
                                         std::to_string(recipe.seed));
            return made;
        }
        const bool last = !size_is_ours || tried == sizes_tried || effort >= recipe.effort;
        if (is_cancelled(control)) return made;
        if (last && attempt.unplaced())
            return explain_unplaced(recipe, *job, *mask, *attempt.unplaced(), explaining(recipe),
                                    control.cancel);
        if (last) return made;
        growth += 1 + mask->open_count() / 10;
    }
}

}  // namespace lode
