#include "puzzle/attempt.hpp"

#include <algorithm>

namespace lode {
namespace {

// How often a grid of words that no filler completes is thrown away before the maker is told.
constexpr int placements_thrown_away = 50;
// Where few words are to move, one number of them is tried with no more than this.
constexpr std::uint64_t effort_per_move = 4'000'000;

}  // namespace

Attempt::Attempt(const Recipe& recipe, const Job& job, const Placing& placing, const Mask& mask,
                 const MakeControl& control, std::uint64_t effort, std::uint64_t spent_before)
    : recipe_(recipe),
      job_(job),
      placing_(placing),
      mask_(mask),
      control_(control),
      effort_(effort),
      spent_before_(spent_before) {}

PlaceResult Attempt::place_once(const Demands& demands, std::uint64_t effort, Random& random) {
    PlaceTask task{mask_, job_.directions, placing_.words, placing_.guard, job_.avoided_guard, effort,
                   {},    control_.cancel, demands,        placing_.nested};
    task.threads = control_.threads;
    if (control_.progress)
        task.progress = [&, before = spent_before_ + spent_](std::uint64_t spent) {
            control_.progress(before + spent, recipe_.effort);
        };
    PlaceResult result = place(task, random);
    spent_ += result.effort_spent;
    return result;
}

// Where words stood before: first all of them stay, then one may move, then two.
PlaceResult Attempt::place_words(const Demands& demands, Random& random) {
    const auto stood = static_cast<std::size_t>(std::count_if(
        demands.before.begin(), demands.before.end(), [](const auto& place) { return place.has_value(); }));
    for (std::size_t moved = 0; moved < stood; ++moved) {
        Demands some = demands;
        some.most_moved = moved;
        PlaceResult result = place_once(some, std::min(effort_left(), effort_per_move), random);
        if (result.end == PlaceResult::End::placed || result.end == PlaceResult::End::cancelled ||
            effort_left() == 0)
            return result;
    }
    return place_once(demands, effort_left(), random);
}

FillResult Attempt::fill_rest(const Grid& placed, Random& random) {
    // A letter tried costs about as much as a placement tried: both count as one step.
    FillTask task{placing_.guard,   job_.avoided_guard, job_.filler_weights,
                  effort_left(),    control_.cancel,    kept_filler_ ? &*kept_filler_ : nullptr,
                  job_.filler_rules};
    FillResult result = fill(placed, task, random);
    spent_ += result.effort_spent;
    return result;
}

std::optional<Refusal> Attempt::read_kept_filler() {
    if (!recipe_.earlier || recipe_.earlier->filler.empty()) return std::nullopt;
    const auto& filler = recipe_.earlier->filler;
    if (filler.size() != mask_.size().cells())
        return Refusal{Refusal::Reason::unusable,
                       "The filler of the earlier puzzle cannot be kept in a grid of another size.",
                       {},
                       {"Leave --keep filler out, or take the size of the earlier puzzle."},
                       {},
                       0};
    kept_filler_.emplace(mask_);
    for (int row = 0; row < mask_.size().rows; ++row)
        for (int column = 0; column < mask_.size().columns; ++column)
            if (const auto letter = job_.alphabet.find(filler[kept_filler_->index({row, column})]))
                if (mask_.open({row, column})) (*kept_filler_)[{row, column}] = *letter;
    return std::nullopt;
}

Refusal Attempt::interrupted() const {
    return {Refusal::Reason::unfinished,
            "Interrupted after an effort of " + std::to_string(spent_before_ + spent_) + " steps.",
            {},
            {"Run the same recipe again: it starts from the same seed."},
            {},
            0};
}

// Only said where it is explained: see explain_unplaced.
Refusal Attempt::not_placed() const {
    return {Refusal::Reason::unfinished,
            "The words were not placed within the effort.",
            {},
            {"Allow more with --effort, or take a larger grid or more directions."},
            recipe_.words.source,
            0};
}

// Only said where it is explained: see explain_unfilled.
Refusal Attempt::not_filled() const {
    return {
        Refusal::Reason::unfinished, "The other cells could not be filled.", {}, {}, recipe_.words.source, 0};
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

Puzzle Attempt::finish(const PlaceResult& placed, Grid grid, std::uint64_t seed) const {
    Puzzle puzzle;
    puzzle.recipe = recipe_;
    puzzle.recipe.size = mask_.size();
    puzzle.recipe.directions = job_.directions;
    puzzle.recipe.seed = seed;
    puzzle.recipe.choices = 1;
    puzzle.grid = {job_.alphabet, std::move(grid)};
    const auto placements = all_placements(placing_, placed.placements);
    puzzle.words.reserve(job_.words.size());
    for (std::size_t word = 0; word < job_.words.size(); ++word) {
        const auto& outer = job_.nested.outer[word];
        puzzle.words.push_back({job_.list.words[word].shown, job_.list.words[word].letters, placements[word],
                                outer ? job_.list.words[*outer].shown : std::string()});
    }
    return puzzle;
}

Outcome<Puzzle> Attempt::run(std::uint64_t seed) {
    const auto demands = demands_on(mask_, recipe_, job_, placing_);
    if (!demands) return demands.refusal();
    if (auto refusal = read_kept_filler()) return std::move(*refusal);
    if (control_.cancel && control_.cancel->load(std::memory_order_relaxed)) return interrupted();

    const bool is_only_way = std::count_if(demands->pins.begin(), demands->pins.end(), [](const auto& pin) {
                                 return pin.has_value();
                             }) == static_cast<std::ptrdiff_t>(placing_.words.size());
    Random random(seed);
    for (int thrown_away = 0; thrown_away < placements_thrown_away; ++thrown_away) {
        const PlaceResult placed = place_words(*demands, random);
        if (placed.end == PlaceResult::End::cancelled) return interrupted();
        if (placed.end != PlaceResult::End::placed) {
            unplaced_ = placed;
            return not_placed();
        }
        FillResult filled = fill_rest(placed.grid, random);
        if (filled.end == FillResult::End::cancelled) return interrupted();
        if (filled.end == FillResult::End::filled) return finish(placed, std::move(filled.grid), seed);
        if (filled.end == FillResult::End::unfinished) return not_filled_in_time();
        unfilled_ = {placed.grid, kept_filler_, std::move(filled.causes), thrown_away + 1, is_only_way};
        if (is_only_way) break;
        if (effort_left() == 0) return not_filled_in_time();
    }
    return not_filled();
}

}  // namespace lode
