// The words to blame by deletion: one word after another is left out, and stays out where the rest still
// cannot be placed. Whatever is in at the end is irreducible, since fewer words are never harder to place
// than more (Chinneck and Dravnieks, "Locating minimal infeasible constraint sets in linear programs", ORSA
// Journal on Computing 3(2), 1991: the deletion filter). Judged by tests/unplaced_test.cpp.

#include "puzzle/unplaced.hpp"

#include <algorithm>
#include <cmath>

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

// Tries some of a job's words on a mask; takes the cost off the effort.
End try_words(const Job& job, const std::vector<std::size_t>& which, const Mask& mask, Directions directions,
              std::uint64_t seed, std::uint64_t& effort, const std::atomic<bool>* cancel) {
    std::vector<Letters> words;
    for (const std::size_t word : which) words.push_back(job.words[word]);
    Letters itself(job.alphabet.size());
    for (std::size_t letter = 0; letter < itself.size(); ++letter)
        itself[letter] = static_cast<Letter>(letter);
    const CopyGuard guard(words, std::move(itself));
    Random random(seed);
    const PlaceResult result = place(
        {mask, directions, words, guard, job.avoided_guard, std::min(effort, effort_per_trial), {}, cancel},
        random);
    effort -= result.effort_spent;
    return result.end;
}

std::vector<std::size_t> all_words(const Job& job) {
    std::vector<std::size_t> all(job.words.size());
    for (std::size_t word = 0; word < all.size(); ++word) all[word] = word;
    return all;
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
std::optional<Size> size_that_helps(const Recipe& recipe, const Job& job, Size size, std::uint64_t& effort,
                                    const std::atomic<bool>* cancel) {
    const double aspect = static_cast<double>(size.columns) / size.rows;
    Size larger = size;
    for (int tried = 0; tried < larger_sizes_tried && effort > 0; ++tried) {
        // The side that is the shorter for the aspect grows, by one at first and by more the longer nothing
        // fits.
        const int growth = 1 + tried / 4;
        if (static_cast<double>(larger.columns) <= aspect * larger.rows)
            larger.columns += growth;
        else
            larger.rows += growth;
        if (larger.cells() > max_made_cells) break;
        const Mask mask = shape_mask(recipe.shape, larger);
        if (!too_long_for(mask, job) &&
            try_words(job, all_words(job), mask, job.directions, recipe.seed, effort, cancel) == End::placed)
            return larger;
    }
    return std::nullopt;
}

// The directions to add, as few as possible: one that helps, or all.
std::optional<std::string> directions_that_help(const Recipe& recipe, const Job& job, const Mask& mask,
                                                std::uint64_t& effort, const std::atomic<bool>* cancel) {
    if (job.directions == Directions::all()) return std::nullopt;
    const auto helps = [&](Directions directions) {
        return effort > 0 &&
               try_words(job, all_words(job), mask, directions, recipe.seed, effort, cancel) == End::placed;
    };
    if (!helps(Directions::all())) return std::nullopt;
    for (const Direction direction : all_directions) {
        Directions more = job.directions;
        more.insert(direction);
        if (!(more == job.directions) && helps(more))
            return "the direction " + std::string(name(direction)) + " besides";
    }
    return "all eight directions";
}

void advise(const Recipe& recipe, const Job& job, const Mask& mask, std::uint64_t& effort,
            const std::atomic<bool>* cancel, Refusal& refusal) {
    if (!recipe.mask)
        if (const auto size = size_that_helps(recipe, job, mask.size(), effort, cancel))
            refusal.advice.push_back("A grid of " + size_text(*size) + " holds them: --grid " +
                                     size_text(*size) + ".");
    if (const auto directions = directions_that_help(recipe, job, mask, effort, cancel))
        refusal.advice.push_back("With " + *directions + " they can be placed in this grid.");
}

}  // namespace

Conflict find_conflict(const Job& job, const Mask& mask, std::uint64_t seed, std::uint64_t& effort,
                       const std::atomic<bool>* cancel) {
    Conflict conflict{all_words(job), true};
    // Short words first: what is left at the end are then the few long ones, which tell a maker more.
    std::vector<std::size_t> order = conflict.words;
    std::stable_sort(order.begin(), order.end(),
                     [&](auto a, auto b) { return job.words[a].size() < job.words[b].size(); });
    for (const std::size_t word : order) {
        if (effort == 0) {
            conflict.irreducible = false;
            break;
        }
        std::vector<std::size_t> rest = conflict.words;
        std::erase(rest, word);
        const End end = try_words(job, rest, mask, job.directions, seed, effort, cancel);
        if (end == End::impossible) conflict.words = std::move(rest);
        if (end == End::unfinished || end == End::cancelled) conflict.irreducible = false;
    }
    return conflict;
}

Refusal explain_unplaced(const Recipe& recipe, const Job& job, const Mask& mask, const PlaceResult& result,
                         std::uint64_t effort, const std::atomic<bool>* cancel) {
    const std::string what = std::to_string(job.words.size()) + (job.words.size() == 1 ? " word" : " words") +
                             " in a grid of " + size_text(mask.size());
    const std::string& hardest = job.list.words[result.hardest].shown;
    Refusal refusal;
    refusal.source = recipe.words.source;
    if (result.end == End::impossible) {
        refusal.reason = Refusal::Reason::impossible;
        refusal.message = "There is no way to place " + what + ": every one was tried.";
        const Conflict conflict = find_conflict(job, mask, recipe.seed, effort, cancel);
        for (const std::size_t word : conflict.words) refusal.words.push_back(job.list.words[word].shown);
        if (conflict.words.size() < job.words.size() || conflict.irreducible)
            refusal.message +=
                " " + listed(refusal.words) +
                (refusal.words.size() == 1 ? " cannot be placed even alone."
                 : conflict.irreducible ? " cannot stand together; any one of them left out, the others can."
                                        : " cannot stand together.");
    } else {
        refusal.reason = Refusal::Reason::unfinished;
        refusal.message = "No way was found to place " + what + " within an effort of " +
                          std::to_string(recipe.effort) + " steps; it is not known whether there is one.";
        if (result.effort_spent > 0) refusal.words = {hardest};
    }
    advise(recipe, job, mask, effort, cancel, refusal);
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
