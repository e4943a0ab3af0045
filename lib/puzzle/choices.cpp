// Several puzzles of one recipe, from seeds that follow each other. Seeds are handed out to threads in blocks
// and taken in their order, so that the outcome does not depend on how many threads there are.

#include <algorithm>
#include <thread>

#include <letterlode/puzzle.hpp>

namespace lode {
namespace {

// Seeds that give no puzzle, or one that is there already, are passed over, up to so many a puzzle.
constexpr std::size_t seeds_per_choice = 4;

bool is_cancelled(const MakeControl& control) {
    return control.cancel && control.cancel->load(std::memory_order_relaxed);
}

// The puzzles of so many seeds. The calling thread works too, and is the one that reports.
std::vector<std::optional<Outcome<Puzzle>>> make_block(const CheckedRecipe& checked, std::uint64_t first_seed,
                                                       std::size_t count, const MakeControl& control) {
    std::vector<std::optional<Outcome<Puzzle>>> made(count);
    std::vector<std::exception_ptr> thrown(count);
    std::atomic<std::size_t> next = 0;
    const auto work = [&](const MakeControl& own) {
        for (std::size_t at = next++; at < count && !is_cancelled(control); at = next++) try {
                made[at] = checked.make(first_seed + at, own);
            } catch (...) {
                thrown[at] = std::current_exception();
            }
    };
    {
        std::vector<std::jthread> helpers;
        for (unsigned thread = 1; thread < control.threads && thread < count; ++thread)
            helpers.emplace_back([&] { work({{}, control.cancel, 1}); });
        work({control.progress, control.cancel, 1});
    }
    for (const auto& exception : thrown)
        if (exception) std::rethrow_exception(exception);
    return made;
}

}  // namespace

Outcome<std::vector<Puzzle>> make_choices(const CheckedRecipe& checked, std::uint64_t first_seed,
                                          std::size_t count, const MakeControl& control) {
    std::vector<Puzzle> choices;
    std::optional<Refusal> refusal;
    const auto is_new = [&](const Puzzle& puzzle) {
        return std::none_of(choices.begin(), choices.end(), [&](const Puzzle& other) {
            return other.words == puzzle.words && other.grid.grid.letters() == puzzle.grid.grid.letters();
        });
    };
    const std::size_t most_seeds = seeds_per_choice * count;
    for (std::size_t tried = 0; tried < most_seeds && choices.size() < count && !is_cancelled(control);) {
        const std::size_t block = std::min(count - choices.size(), most_seeds - tried);
        for (auto& made : make_block(checked, first_seed + tried, block, control)) {
            if (!made) break;  // cancelled
            if (*made) {
                if (is_new(**made)) choices.push_back(std::move(**made));
                continue;
            }
            if (!refusal) refusal = made->refusal();
            // What is impossible or unusable is so for every seed.
            if (made->refusal().reason != Refusal::Reason::unfinished) return *refusal;
        }
        tried += block;
    }
    if (choices.empty())
        return refusal.value_or(Refusal{Refusal::Reason::unfinished,
                                        "Interrupted before a puzzle was made.",
                                        {},
                                        {"Run the same recipe again: it starts from the same seed."},
                                        {},
                                        0});
    return choices;
}

}  // namespace lode
