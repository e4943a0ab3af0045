#pragma once
// Which letters the filler has, how often, and what it must keep.

#include <optional>

#include "puzzle/job.hpp"

namespace lode {

// Sets the job's filler weights by the recipe's way, and adds the language's letters to its alphabet. Refused
// as unusable: counts that are of no letters, or too large, or that the way has no use for.
[[nodiscard]] std::optional<Refusal> choose_filler(const Recipe& recipe, Job& job);

// By the recipe, for the letters of the finished alphabet.
[[nodiscard]] FillerRules filler_rules(const Recipe& recipe, const Alphabet& alphabet);

}  // namespace lode
