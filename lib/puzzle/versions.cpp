// Versions of a puzzle for a class: a pool of puzzles grows until enough of it lie near each other in
// difficulty.

#include <algorithm>
#include <stdexcept>

#include <letterlode/puzzle.hpp>

#include "text/fixed_decimals.hpp"

namespace lode {
namespace {

constexpr std::size_t pool_a_version = 40;
constexpr std::size_t first_pool_a_version =
    3;  // of which near half lie within the spread where words are many

struct Candidate {
    Puzzle puzzle;
    double fixations = 0;
};

std::size_t shared_places(const Puzzle& one, const Puzzle& other) {
    std::size_t shared = 0;
    for (std::size_t word = 0; word < one.words.size(); ++word)
        if (one.words[word].placed == other.words[word].placed) ++shared;
    return shared;
}

class VersionPool {
  public:
    [[nodiscard]] std::size_t size() const { return candidates_.size(); }
    [[nodiscard]] std::uint64_t next_seed() const { return candidates_.back().puzzle.recipe.seed + 1; }

    // The refusal of a rating, where there is one.
    std::optional<Refusal> add(std::vector<Puzzle> puzzles) {
        for (Puzzle& puzzle : puzzles) {
            const auto rating = rate(puzzle);
            if (!rating) return rating.refusal();
            candidates_.push_back({std::move(puzzle), rating->difficulty.fixations});
        }
        return std::nullopt;
    }

    // So many candidates within the spread, no two of which share a place; the easiest such set.
    [[nodiscard]] std::vector<std::size_t> chosen_apart(std::size_t count) const {
        for (const std::size_t easiest : by_difficulty()) {
            std::vector<std::size_t> chosen{easiest};
            for (const std::size_t one : near(easiest)) {
                if (chosen.size() == count) break;
                if (is_apart_from(one, chosen)) chosen.push_back(one);
            }
            if (chosen.size() == count) return sorted(chosen);
        }
        return {};
    }

    // The same where places have to be shared: each next one is that which shares least with those before it.
    [[nodiscard]] std::vector<std::size_t> chosen_nearly_apart(std::size_t count) const {
        std::vector<std::size_t> best;
        std::size_t least = 0;
        for (const std::size_t easiest : by_difficulty()) {
            std::vector<Sharing> rest;
            for (const std::size_t one : near(easiest)) rest.push_back({one, 0});
            if (rest.size() + 1 < count) continue;
            std::vector<std::size_t> chosen{easiest};
            std::size_t shared = 0;
            while (chosen.size() < count) {
                for (Sharing& one : rest)
                    one.places +=
                        shared_places(candidates_[one.candidate].puzzle, candidates_[chosen.back()].puzzle);
                const auto next =
                    std::min_element(rest.begin(), rest.end(),
                                     [](const Sharing& a, const Sharing& b) { return a.places < b.places; });
                shared += next->places;
                chosen.push_back(next->candidate);
                rest.erase(next);
            }
            if (best.empty() || shared < least) {
                best = sorted(chosen);
                least = shared;
            }
        }
        return best;
    }

    // The most that lie within the spread of each other.
    [[nodiscard]] std::size_t most_near() const {
        std::size_t most = 0;
        for (std::size_t one = 0; one < candidates_.size(); ++one)
            most = std::max(most, near(one).size() + 1);
        return most;
    }

    [[nodiscard]] Versions versions(const std::vector<std::size_t>& chosen) && {
        Versions result;
        result.tried = candidates_.size();
        for (std::size_t i = 0; i < chosen.size(); ++i)
            for (std::size_t j = 0; j < i; ++j)
                result.shared_places +=
                    shared_places(candidates_[chosen[i]].puzzle, candidates_[chosen[j]].puzzle);
        for (const std::size_t one : chosen) {
            result.fixations.push_back(candidates_[one].fixations);
            result.puzzles.push_back(std::move(candidates_[one].puzzle));
        }
        return result;
    }

  private:
    // A candidate, and how many words it has at the places of those that were chosen before.
    struct Sharing {
        std::size_t candidate = 0;
        std::size_t places = 0;
    };

    static std::vector<std::size_t> sorted(std::vector<std::size_t> chosen) {
        std::sort(chosen.begin(), chosen.end());
        return chosen;
    }

    [[nodiscard]] std::vector<std::size_t> by_difficulty() const {
        std::vector<std::size_t> order(candidates_.size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return candidates_[a].fixations < candidates_[b].fixations;
        });
        return order;
    }

    // The others that are as hard as this one, or harder by no more than the spread; in the order of their
    // seeds.
    [[nodiscard]] std::vector<std::size_t> near(std::size_t easiest) const {
        std::vector<std::size_t> others;
        const double from = candidates_[easiest].fixations;
        for (std::size_t one = 0; one < candidates_.size(); ++one)
            if (one != easiest && candidates_[one].fixations >= from &&
                candidates_[one].fixations <= version_spread * from)
                others.push_back(one);
        return others;
    }

    [[nodiscard]] bool is_apart_from(std::size_t one, const std::vector<std::size_t>& chosen) const {
        return std::none_of(chosen.begin(), chosen.end(), [&](std::size_t other) {
            return shared_places(candidates_[one].puzzle, candidates_[other].puzzle) > 0;
        });
    }

    std::vector<Candidate> candidates_;
};

Refusal too_few(std::size_t count, std::size_t near, std::size_t tried) {
    return {Refusal::Reason::unfinished,
            "Of " + std::to_string(tried) + " different puzzles at most " + std::to_string(near) +
                " lie within " + fixed_decimals(100 * (version_spread - 1), 0) +
                " percent of each other in difficulty, and " + std::to_string(count) +
                " versions are asked for.",
            {},
            {"More words, a larger grid or fewer versions make it easier."},
            {},
            0};
}

}  // namespace

Outcome<Versions> make_versions(const CheckedRecipe& checked, std::uint64_t first_seed, std::size_t count,
                                const MakeControl& control) {
    if (count == 0 || count > max_versions) throw std::invalid_argument("there are 1 to 26 versions");
    VersionPool pool;
    const std::size_t most = count == 1 ? 1 : pool_a_version * count;
    for (std::size_t wanted = count == 1 ? 1 : first_pool_a_version * count; pool.size() < most;
         wanted *= 2) {
        const std::size_t missing = std::min(wanted, most) - pool.size();
        auto more = make_choices(checked, pool.size() == 0 ? first_seed : pool.next_seed(), missing, control);
        if (!more) return more.refusal();
        const bool is_last = more->size() < missing;
        if (auto refusal = pool.add(std::move(*more))) return std::move(*refusal);
        if (control.cancel && control.cancel->load(std::memory_order_relaxed))
            return Refusal{
                Refusal::Reason::unfinished, "Interrupted before all versions were made.", {}, {}, {}, 0};
        if (const auto chosen = pool.chosen_apart(count); !chosen.empty())
            return std::move(pool).versions(chosen);
        if (is_last) break;
    }
    if (const auto chosen = pool.chosen_nearly_apart(count); !chosen.empty())
        return std::move(pool).versions(chosen);
    return too_few(count, pool.most_near(), pool.size());
}

}  // namespace lode
