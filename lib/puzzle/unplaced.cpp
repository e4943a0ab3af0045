// The words to blame by deletion: one word after another is left out, and stays out where the rest still
// cannot be placed. Whatever is in at the end is irreducible, since fewer words are never harder to place
// than more (Chinneck and Dravnieks, "Locating minimal infeasible constraint sets in linear programs", ORSA
// Journal on Computing 3(2), 1991: the deletion filter). Judged by tests/unplaced_test.cpp.

#include "puzzle/unplaced.hpp"

#include <algorithm>
#include <cmath>

#include "puzzle/sizes.hpp"

namespace lode {
namespace {

using End = PlaceResult::End;

// One trial of one set of words costs no more than this: a proof or a placement of a few words takes far
// less.
constexpr std::uint64_t effort_per_trial = 4'000'000;
constexpr int larger_sizes_tried = 24;
constexpr std::size_t words_told = 12;

std::string size_text(Size size) {
    return std::to_string(size.columns) + "x" + std::to_string(size.rows);
}

std::vector<std::uint32_t> all_words(const Job& job) {
    std::vector<std::uint32_t> all(job.words.size());
    for (std::uint32_t word = 0; word < all.size(); ++word) all[word] = word;
    return all;
}

// Tries words under a recipe that may differ from the one that failed, and keeps the account.
class Trials {
  public:
    Trials(const Job& job, std::uint64_t& effort, const std::atomic<bool>* cancel)
        : job_(job), effort_(effort), cancel_(cancel) {}

    [[nodiscard]] bool is_spent() const { return effort_ == 0; }

    [[nodiscard]] End run(const Recipe& recipe, const std::vector<std::uint32_t>& which, const Mask& mask,
                          Directions directions) {
        const auto placing = placing_of(job_, recipe.nested, which);
        if (!placing) return End::unfinished;
        const auto demands = demands_on(mask, recipe, job_, *placing);
        if (!demands)
            return demands.refusal().reason == Refusal::Reason::impossible ? End::impossible
                                                                           : End::unfinished;
        Random random(recipe.seed);
        const PlaceResult result = place({mask,
                                          directions,
                                          placing->words,
                                          placing->guard,
                                          job_.avoided_guard,
                                          std::min(effort_, effort_per_trial),
                                          {},
                                          cancel_,
                                          *demands,
                                          placing->nested},
                                         random);
        effort_ -= result.effort_spent;
        return result.end;
    }
    [[nodiscard]] bool places_all(const Recipe& recipe, const Mask& mask, Directions directions) {
        return !is_spent() && run(recipe, all_words(job_), mask, directions) == End::placed;
    }

  private:
    const Job& job_;
    std::uint64_t& effort_;
    const std::atomic<bool>* cancel_;
};

// Without what fewer words may fail to meet though more do: only so are words to blame.
Recipe for_fewer_words(const Recipe& recipe) {
    Recipe less = recipe;
    less.leftover.reset();
    less.message.clear();
    less.crossings.least = 0;
    less.weights.reset();
    less.equal_shares = false;
    less.earlier.reset();
    return less;
}

// Pins of words that are left out would be a fault.
Recipe with_pins_of(const Recipe& recipe, const Job& job, const std::vector<std::uint32_t>& which) {
    Recipe some = recipe;
    std::erase_if(some.pins, [&](const Pin& pin) {
        const auto letters = job.segmenter().spell(pin.word).letters;
        return std::none_of(which.begin(), which.end(),
                            [&](std::uint32_t word) { return job.list.words[word].letters == letters; });
    });
    return some;
}

// "'A', 'B' and 'C'"
std::string listed(const std::vector<std::string>& words) {
    std::string text;
    const std::size_t told = std::min(words.size(), words_told);
    for (std::size_t at = 0; at < told; ++at) {
        if (at > 0) text += at + 1 == words.size() ? " and " : ", ";
        text += "'" + words[at] + "'";
    }
    if (told < words.size()) text += " and " + std::to_string(words.size() - told) + " more";
    return text;
}

// The first of some larger grids of the same shape, and near the same aspect, on which the words were placed.
std::optional<Size> size_that_helps(const Recipe& recipe, const Job& job, Size size, Trials& trials) {
    const double aspect = static_cast<double>(size.columns) / size.rows;
    Size larger = size;
    for (int tried = 0; tried < larger_sizes_tried; ++tried) {
        // The side that is the shorter for the aspect grows, by one at first and by more the longer nothing
        // fits.
        const int growth = 1 + tried / 4;
        if (static_cast<double>(larger.columns) <= aspect * larger.rows)
            larger.columns += growth;
        else
            larger.rows += growth;
        if (larger.cells() > max_made_cells) break;
        const Mask mask = shape_mask(recipe.shape, larger);
        if (!too_long_for(mask, job) && trials.places_all(recipe, mask, job.directions)) return larger;
    }
    return std::nullopt;
}

// The directions to add, as few as possible: one that helps, or all.
std::optional<std::string> directions_that_help(const Recipe& recipe, const Job& job, const Mask& mask,
                                                Trials& trials) {
    if (job.directions == Directions::all() || recipe.weights || recipe.equal_shares) return std::nullopt;
    if (!trials.places_all(recipe, mask, Directions::all())) return std::nullopt;
    for (const Direction direction : all_directions) {
        Directions more = job.directions;
        more.insert(direction);
        if (!(more == job.directions) && trials.places_all(recipe, mask, more))
            return "the direction " + std::string(name(direction)) + " besides";
    }
    return "all eight directions";
}

// The demands of a recipe that can be left out one by one: their option, and the recipe without.
std::vector<std::pair<std::string, Recipe>> without_each_demand(const Recipe& recipe) {
    std::vector<std::pair<std::string, Recipe>> all;
    const auto without = [&](const std::string& option, bool is_set, const auto& leave_out) {
        if (!is_set) return;
        all.emplace_back(option, recipe);
        leave_out(all.back().second);
    };
    without("--leftover", recipe.leftover && recipe.message.empty(), [](Recipe& r) { r.leftover.reset(); });
    without("--message", !recipe.message.empty(), [](Recipe& r) {
        r.message.clear();
        r.leftover.reset();
    });
    without("--crossings", recipe.crossings.least > 0 || recipe.crossings.most,
            [](Recipe& r) { r.crossings = {}; });
    without("--spacing", recipe.spacing > 0, [](Recipe& r) { r.spacing = 0; });
    without("--shares", recipe.weights || recipe.equal_shares, [](Recipe& r) {
        r.weights.reset();
        r.equal_shares = false;
    });
    without("--backward", recipe.most_backward.has_value(), [](Recipe& r) { r.most_backward.reset(); });
    without("--pin", !recipe.pins.empty(), [](Recipe& r) { r.pins.clear(); });
    return all;
}

void advise(const Recipe& recipe, const Job& job, const Mask& mask, Trials& trials, Refusal& refusal) {
    for (const auto& [option, less] : without_each_demand(recipe)) {
        if (trials.places_all(less, mask, job.directions))
            refusal.advice.push_back("Without " + option + " they can be placed in this grid.");
    }
    if (!recipe.mask)
        if (const auto size = size_that_helps(recipe, job, mask.size(), trials))
            refusal.advice.push_back("A grid of " + size_text(*size) + " holds them: --grid " +
                                     size_text(*size) + ".");
    if (const auto directions = directions_that_help(recipe, job, mask, trials))
        refusal.advice.push_back("With " + *directions + " they can be placed in this grid.");
}

}  // namespace

Conflict find_conflict(const Recipe& recipe, const Job& job, const Mask& mask, std::uint64_t& effort,
                       const std::atomic<bool>* cancel) {
    const Recipe less = for_fewer_words(recipe);
    Trials trials(job, effort, cancel);
    Conflict conflict{all_words(job), true};
    // Short words first: what is left at the end are then the few long ones, which tell a maker more.
    std::vector<std::uint32_t> order = conflict.words;
    std::stable_sort(order.begin(), order.end(),
                     [&](auto a, auto b) { return job.words[a].size() < job.words[b].size(); });
    for (const std::uint32_t word : order) {
        if (trials.is_spent()) {
            conflict.irreducible = false;
            break;
        }
        std::vector<std::uint32_t> rest = conflict.words;
        std::erase(rest, word);
        const End end = rest.empty() ? End::placed
                                     : trials.run(with_pins_of(less, job, rest), rest, mask, job.directions);
        if (end == End::impossible) conflict.words = std::move(rest);
        if (end == End::unfinished || end == End::cancelled) conflict.irreducible = false;
    }
    return conflict;
}

namespace {

// Names the words that stand in each other's way, where it is they and not what is demanded of all of them.
void blame(const Recipe& recipe, const Job& job, const Mask& mask, std::uint64_t& effort,
           const std::atomic<bool>* cancel, Refusal& refusal) {
    Trials trials(job, effort, cancel);
    const Recipe less = for_fewer_words(recipe);
    const bool words_alone =
        !recipe.leftover && recipe.message.empty() && recipe.crossings.least == 0 && !recipe.weights;
    if (!words_alone && trials.run(less, all_words(job), mask, job.directions) != End::impossible) return;
    const Conflict conflict = find_conflict(recipe, job, mask, effort, cancel);
    for (const std::uint32_t word : conflict.words) refusal.words.push_back(job.list.words[word].shown);
    if (conflict.words.size() < job.words.size() || conflict.irreducible)
        refusal.message +=
            " " + listed(refusal.words) +
            (refusal.words.size() == 1 ? " cannot be placed even alone."
             : conflict.irreducible    ? " cannot stand together; any one of them left out, the others can."
                                       : " cannot stand together.");
}

}  // namespace

Refusal explain_unplaced(const Recipe& recipe, const Job& job, const Mask& mask, const PlaceResult& result,
                         std::uint64_t effort, const std::atomic<bool>* cancel) {
    const std::string what = std::to_string(job.words.size()) + (job.words.size() == 1 ? " word" : " words") +
                             " in a grid of " + size_text(mask.size());
    const std::string& hardest = job.list.words[job.nested.placed[result.hardest]].shown;
    Refusal refusal;
    refusal.source = recipe.words.source;
    if (result.end == End::impossible) {
        refusal.reason = Refusal::Reason::impossible;
        refusal.message = "There is no way to place " + what + ": every one was tried.";
        blame(recipe, job, mask, effort, cancel, refusal);
    } else {
        refusal.reason = Refusal::Reason::unfinished;
        refusal.message = "No way was found to place " + what + " within an effort of " +
                          std::to_string(recipe.effort) + " steps; it is not known whether there is one.";
        if (result.effort_spent > 0) refusal.words = {hardest};
    }
    Trials trials(job, effort, cancel);
    advise(recipe, job, mask, trials, refusal);
    if (result.end == End::unfinished) {
        if (result.effort_spent > 0)
            refusal.advice.push_back("'" + hardest + "' failed most often: leave it out.");
        refusal.advice.push_back("Allow more effort with --effort, or try another --seed.");
    }
    if (refusal.advice.empty())
        refusal.advice.push_back("Take a larger grid or more directions, or leave a word out.");
    return refusal;
}

}  // namespace lode
