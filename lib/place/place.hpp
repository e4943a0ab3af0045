#pragma once
// Places every word on open cells so that letters agree where words cross, that every copy of a listed word
// is explained by a placement, that no avoided word can be read, and that what is demanded is met.

#include <atomic>
#include <cstdint>
#include <functional>
#include <vector>

#include <letterlode/grid.hpp>

#include "grid/copy_guard.hpp"
#include "place/demands.hpp"
#include "random/random.hpp"

namespace lode {

struct PlaceTask {
    const Mask& mask;
    Directions directions;
    const std::vector<Letters>& words;
    // Over `words`, in the same order; after them over the listed words that others bring with them.
    const CopyGuard& words_guard;
    const CopyGuard& avoided_guard;                            // over the avoided words
    std::uint64_t effort = 0;                                  // placements tried at the most
    std::function<void(std::uint64_t effort_spent)> progress;  // may be empty
    const std::atomic<bool>* cancel = nullptr;
    Demands demands = {};
    std::vector<InnerCopy> nested = {};  // each is a copy of its own, and expected
    unsigned threads = 1;                // the result is the same
};

struct PlaceResult {
    enum class End { placed, impossible, unfinished, cancelled };
    End end = End::unfinished;
    std::uint64_t effort_spent = 0;
    std::vector<Placement> placements;  // by word, where placed
    Grid grid;                          // the words' letters and the message's; other open cells are empty
    std::size_t hardest = 0;            // the word that failed most often, where not placed
};

// `impossible` is given only when a run without a limit in its way tried everything.
[[nodiscard]] PlaceResult place(const PlaceTask& task, Random& random);

}  // namespace lode
