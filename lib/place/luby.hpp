#pragma once
// Lengths of runs between restarts: 1 1 2 1 1 2 4 ..., within a constant factor of the best for every search
// whose run times are unknown. Luby, Sinclair, Zuckerman, "Optimal speedup of Las Vegas algorithms", 1993
// (OEIS A182105).

#include <cstdint>

namespace lode {

// The number-th length, from 1.
[[nodiscard]] std::uint64_t luby(std::uint64_t number);

}  // namespace lode
