#include "place/luby.hpp"

namespace lode {

std::uint64_t luby(std::uint64_t number) {
    // The sequence of length 2^k - 1 is the one of length 2^(k-1) - 1 twice, then 2^(k-1).
    for (;;) {
        std::uint64_t power = 1;
        while (2 * power - 1 < number) power *= 2;
        if (number == 2 * power - 1) return power;
        number -= power - 1;
    }
}

}  // namespace lode
