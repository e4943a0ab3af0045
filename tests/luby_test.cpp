// Lengths of runs between restarts, held to the paper's sequence.

#include <catch2/catch.hpp>

#include "random/luby.hpp"

TEST_CASE("restart lengths follow the sequence of Luby, Sinclair and Zuckerman") {
    // Information Processing Letters 47 (1993); OEIS A182105.
    const std::vector<std::uint64_t> published{1, 1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8, 1,
                                               1, 2, 1, 1, 2, 4, 1, 1, 2, 1, 1, 2, 4, 8, 16};
    for (std::size_t at = 0; at < published.size(); ++at) {
        CAPTURE(at);
        CHECK(lode::luby(at + 1) == published[at]);
    }
}

TEST_CASE("the first 2^k - 1 restart lengths sum to k 2^(k-1)") {
    std::uint64_t sum = 0;
    std::uint64_t number = 0;
    for (std::uint64_t k = 1; k <= 16; ++k) {
        while (number < (std::uint64_t{1} << k) - 1) sum += lode::luby(++number);
        CAPTURE(k);
        CHECK(sum == k << (k - 1));
    }
}

TEST_CASE("restart lengths are found far out as well") {
    CHECK(lode::luby((std::uint64_t{1} << 40) - 1) == std::uint64_t{1} << 39);
    CHECK(lode::luby(std::uint64_t{1} << 40) == 1);
}
