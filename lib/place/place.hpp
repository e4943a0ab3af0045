#pragma once
// Places every word on open cells so that letters agree where words cross, that each word can be read exactly
// once, and that no avoided word can be read.

#include <atomic>
#include <cstdint>
#include <functional>
#include <vector>

#include <letterlode/grid.hpp>

#include "grid/copy_guard.hpp"
#include "random/random.hpp"

namespace lode {

struct PlaceTask {
    const Mask& mask;
    Directions directions;
    const std::vector<Letters>& words;
    const CopyGuard& words_guard;                              // over `words`, in the same order
    const CopyGuard& avoided_guard;                            // over the avoided words
    std::uint64_t effort = 0;                                  // placements tried at the most
    std::function<void(std::uint64_t effort_spent)> progress;  // may be empty
    const std::atomic<bool>* cancel = nullptr;
};

struct PlaceResult {
    enum class End { placed, impossible, unfinished, cancelled };
    End end = End::unfinished;
    std::uint64_t effort_spent = 0;
    std::vector<Placement> placements;  // by word, where placed
    Grid grid;                          // the words' letters; other open cells are empty
    std::size_t hardest = 0;            // the word that failed most often, where not placed
};

// `impossible` is given only when a run without a limit in its way tried everything.
[[nodiscard]] PlaceResult place(const PlaceTask& task, Random& random);

}  // namespace lode
