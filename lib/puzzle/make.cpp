#include <algorithm>
#include <optional>

#include <letterlode/puzzle.hpp>

#include "puzzle/attempt.hpp"
#include "puzzle/judged_words.hpp"
#include "puzzle/sizes.hpp"
#include "puzzle/unplaced.hpp"

namespace lode {
namespace {

// A refusal may cost as much again as the search did at the most.
std::uint64_t explaining(const Recipe& recipe) {
    return recipe.effort;
}

bool is_cancelled(const MakeControl& control) {
    return control.cancel && control.cancel->load(std::memory_order_relaxed);
}

}  // namespace

struct Groundwork::State {
    TextRules text;
    bool default_avoid_list;
    std::vector<std::string> avoid;
    std::vector<std::string> allow;
    std::shared_ptr<const Language> language;    // by the rules of text
    std::shared_ptr<const Avoidance> avoidance;  // by all of that

    [[nodiscard]] KnownOfRecipe known_of(const Recipe& recipe) const {
        if (recipe.text != text) return {};
        if (recipe.default_avoid_list != default_avoid_list || recipe.avoid != avoid || recipe.allow != allow)
            return {language, nullptr};
        return {language, avoidance};
    }
};

struct CheckedRecipe::State {
    Recipe recipe;
    Job job;
    Placing placing;
    Judge judge;
    std::optional<Sizes> sizes;  // as they start

    void certify(Puzzle& puzzle) const {
        std::vector<std::optional<Placement>> placed;
        for (const PlacedWord& word : puzzle.words) placed.push_back(word.placed);
        puzzle.audit = named_as_listed(judge.audit(puzzle.grid.grid, placed), job.avoidance->readings());
        if (!puzzle.audit.certified)
            throw AuditContradiction("the audit contradicts the engine, at seed " +
                                     std::to_string(puzzle.recipe.seed));
    }
};

CheckedRecipe::CheckedRecipe(std::unique_ptr<State> state) : state_(std::move(state)) {}
CheckedRecipe::CheckedRecipe(CheckedRecipe&&) noexcept = default;
CheckedRecipe& CheckedRecipe::operator=(CheckedRecipe&&) noexcept = default;
CheckedRecipe::~CheckedRecipe() = default;

Outcome<CheckedRecipe> CheckedRecipe::open(Recipe recipe) {
    return open(std::move(recipe), Groundwork());
}

Outcome<CheckedRecipe> CheckedRecipe::open(Recipe recipe, const Groundwork& groundwork) {
    auto job = check(recipe, groundwork.state_ ? groundwork.state_->known_of(recipe) : KnownOfRecipe());
    if (!job) return job.refusal();
    Placing placing = placing_of(*job);
    Judge judge(job->alphabet, judged_words(job->list, job->nested), job->avoidance->judged());
    auto state = std::unique_ptr<State>(
        new State{std::move(recipe), std::move(*job), std::move(placing), std::move(judge), std::nullopt});
    // They refer to the recipe and the job, which stay where they are from here on.
    auto sizes = Sizes::open(state->recipe, state->job);
    if (!sizes) return sizes.refusal();
    state->sizes = std::move(*sizes);
    return CheckedRecipe(std::move(state));
}

Groundwork CheckedRecipe::groundwork() const {
    const auto& [recipe, job, placing, judge, sizes] = *state_;
    Groundwork groundwork;
    groundwork.state_ = std::make_shared<const Groundwork::State>(Groundwork::State{
        recipe.text, recipe.default_avoid_list, recipe.avoid, recipe.allow, job.language, job.avoidance});
    return groundwork;
}

Outcome<Puzzle> CheckedRecipe::make(std::uint64_t seed, const MakeControl& control) const {
    const auto& [recipe, job, placing, judge, first_sizes] = *state_;
    Sizes sizes = *first_sizes;
    std::uint64_t effort = 0;
    std::optional<Outcome<Puzzle>> best;
    for (bool more = true; more;) {
        const std::uint64_t most = std::min(sizes.effort_for_one(), recipe.effort - effort);
        Attempt attempt(recipe, job, placing, sizes.mask(), control, most, effort);
        Outcome<Puzzle> made = attempt.run(seed);
        effort += attempt.effort_spent();
        const bool is_made = static_cast<bool>(made);
        if (is_made) state_->certify(*made);
        if (is_cancelled(control)) return best && *best ? std::move(*best) : std::move(made);

        const Mask mask = sizes.mask();
        more = sizes.go_on(is_made) && effort < recipe.effort;
        if (is_made || !best) best = std::move(made);
        if (!more && !*best && attempt.unplaced())
            return explain_unplaced(recipe, job, mask, *attempt.unplaced(), explaining(recipe),
                                    control.cancel);
        if (!more && !*best && attempt.unfilled())
            return explain_unfilled(recipe, job, placing, *attempt.unfilled(), explaining(recipe),
                                    control.cancel);
    }
    return std::move(*best);
}

Outcome<Puzzle> CheckedRecipe::make(const MakeControl& control) const {
    return make(state_->recipe.seed, control);
}

Outcome<Puzzle> make(const Recipe& recipe, const MakeControl& control) {
    const auto checked = CheckedRecipe::open(recipe);
    if (!checked) return checked.refusal();
    return checked->make(control);
}

}  // namespace lode
