#pragma once
// Instances by families, from real words (package wamerican) of 4 to 10 letters written with a to z alone. No
// word of an instance stands in another, from either end. The same seed gives the same instances; figures are
// worth something only for seeds that nothing was tuned on.

#include <cstdint>
#include <string>
#include <vector>

#include "contest.hpp"

namespace lode::bench {

struct Set {
    std::string name;
    std::vector<Instance> instances;
    bool is_feasible = false;  // known from how they were made
};

struct Family {
    std::string name;
    std::string what;
    std::vector<Set> (*sets)(std::uint64_t seed, int count);
};

// ladder, planted, covers, small, everyday, large.
[[nodiscard]] const std::vector<Family>& families();

}  // namespace lode::bench
