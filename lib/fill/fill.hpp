#pragma once
// Completes a grid of placed words: gives every empty cell a letter so that no listed word can be read a
// second time and no avoided word at all, in any of the eight directions.

#include <atomic>
#include <cstdint>
#include <vector>

#include <letterlode/grid.hpp>

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
    // completes no copy. Whether a grid can be filled does not depend on it.
    const Grid* kept = nullptr;
};

struct FillResult {
    enum class End { filled, impossible, unfinished, cancelled };
    End end = End::unfinished;
    std::uint64_t effort_spent = 0;
    Grid grid;  // where filled
};

// `impossible` is proved, for these placements and these letters. Throws std::invalid_argument where no
// letter is allowed and a cell is empty.
[[nodiscard]] FillResult fill(const Grid& placed, const FillTask& task, Random& random);

}  // namespace lode
