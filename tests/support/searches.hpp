#pragma once
// The placing searches, all together and each by itself, held against brute force.

#include <optional>

#include "support/placing.hpp"

namespace lode::test {

// All of them, as the library runs them.
PlaceResult placed(const Task& task, std::uint64_t seed = 1);
// In a million steps this one decides nearly all small tasks, and says so where it does not.
PlaceResult by_sampling(const Task& task, std::uint64_t seed = 1);
PlaceResult completely(const Task& task);
// Only for tasks that say how many cells their words cover; nothing for others.
std::optional<PlaceResult> by_cells(const Task& task, std::uint64_t seed = 1);
// These prove nothing: where they find nothing they are `unfinished`. Nothing for tasks that do not suit
// them.
std::optional<PlaceResult> by_chance(const Task& task, std::uint64_t seed, std::uint64_t steps);
std::optional<PlaceResult> by_heat_bath(const Task& task, std::uint64_t seed, std::uint64_t moves);
PlaceResult by_neighbourhoods(const Task& task, std::uint64_t seed, std::uint64_t nodes);

// Requires that the result, of a search with plenty of effort that proves what it does not find, is what
// brute force says; returns whether there is a placement.
bool agrees_with_brute_force(const Task& task, const PlaceResult& result);

struct Agreement {
    bool exists = false;
    bool sampling_decided = false;
    bool is_cover = false;  // and decided by cells
    bool neighbourhoods_found_it = false;
    bool suits_chance = false;
    bool chance_found_it = false;
    bool suits_heat_bath = false;
    bool heat_bath_found_it = false;
};
// Requires all of the searches to be right.
Agreement all_agree_with_brute_force(const Task& task, std::uint64_t seed);

}  // namespace lode::test
