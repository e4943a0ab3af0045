#pragma once
// Completes a grid of placed words: gives every empty cell a letter so that no listed word can be read a
// second time and no avoided word at all, in any of the eight directions, and so that the filler's rules are
// kept.

#include <atomic>
#include <compare>
#include <cstdint>
#include <vector>

#include <letterlode/grid.hpp>

#include "fill/filler_rules.hpp"
#include "grid/copy_guard.hpp"
#include "random/random.hpp"

namespace lode {

struct FillTask {
    const CopyGuard& words_guard;
    const CopyGuard& avoided_guard;
    // How often each letter of the alphabet is wanted among the filler; 0 where it is not allowed.
    const std::vector<std::uint32_t>& weights;
    std::uint64_t effort = 0;  // letters tried at the most
    const std::atomic<bool>* cancel = nullptr;
    // A grid of the same size, such as an older filling: an empty cell gets its letter again where that
    // completes no copy and breaks no rule. Whether a grid can be filled does not depend on it.
    const Grid* kept = nullptr;
    FillerRules rules = {};
};

// What bars letters: a word that may not be read, or a rule.
struct FillCause {
    enum class Kind { listed_word, avoided_word, longest_run, look_alikes };
    Kind kind;
    std::uint32_t word = 0;  // by its number in its guard; 0 for a rule
    friend auto operator<=>(const FillCause&, const FillCause&) = default;
};

struct FillResult {
    enum class End { filled, impossible, unfinished, cancelled };
    End end = End::unfinished;
    std::uint64_t effort_spent = 0;
    Grid grid;  // where filled
    // Where impossible: what bars letters in the proof, in order. It is so with nothing else forbidden; less
    // may do as well.
    std::vector<FillCause> causes;
};

// `impossible` is proved, for these placements, these letters and these rules. Throws std::invalid_argument
// where no letter is allowed and a cell is empty.
[[nodiscard]] FillResult fill(const Grid& placed, const FillTask& task, Random& random);

}  // namespace lode
