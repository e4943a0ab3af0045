#pragma once
// Some or all of a job's words as place takes them, with what is demanded of them on a mask.

#include <cstdint>
#include <span>
#include <vector>

#include <letterlode/puzzle.hpp>

#include "place/place.hpp"
#include "puzzle/job.hpp"

namespace lode {

struct Placing {
    std::vector<std::uint32_t> listed;  // the words by their place in the list, in the guard's order
    std::vector<Letters> words;         // those with a place of their own, which are the first of `listed`
    CopyGuard guard;
    std::vector<InnerCopy> nested;
    Demands demands;
};

// Without demands. `which` gives the words by their place in the list. Refused as nest does.
[[nodiscard]] Outcome<Placing> placing_of(const Job& job, Nested rule, std::span<const std::uint32_t> which);
// Of all words, which cannot be refused any more.
[[nodiscard]] Placing placing_of(const Job& job);

// What the recipe demands of the words on the mask. Refused before any search: as unusable, demands that
// contradict each other, the mask or the list, and pins that clash; as impossible, what letters counted show
// that no grid meets.
[[nodiscard]] Outcome<Demands> demands_on(const Mask& mask, const Recipe& recipe, const Job& job,
                                          const Placing& placing);

// Where each of the list's words stands, by the places of those that have their own.
[[nodiscard]] std::vector<Placement> all_placements(const Placing& placing,
                                                    const std::vector<Placement>& placed);

}  // namespace lode
