#pragma once
// Lengths of runs between restarts: 1 1 2 1 1 2 4 ..., within a constant factor of the best for every search
// whose run times are unknown. Luby, Sinclair, Zuckerman, "Optimal speedup of Las Vegas algorithms", 1993
// (OEIS A182105).

#include <cstdint>

namespace lode {

// The number-th length, from 1.
[[nodiscard]] constexpr std::uint64_t luby(std::uint64_t number) {
    // The sequence of length 2^k - 1 is the one of length 2^(k-1) - 1 twice, then 2^(k-1).
    for (;;) {
        std::uint64_t power = 1;
        while (2 * power - 1 < number) power *= 2;
        if (number == 2 * power - 1) return power;
        number -= power - 1;
    }
}

}  // namespace lode
