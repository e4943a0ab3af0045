// The source of chance, held to the C++ standard and to statistics.

#include <catch2/catch.hpp>
#include <numeric>
#include <random>
#include <vector>

#include "random/random.hpp"

using lode::Random;

namespace {

double chi_square(const std::vector<long>& counts) {
    const double total = static_cast<double>(std::accumulate(counts.begin(), counts.end(), 0L));
    const double expected = total / static_cast<double>(counts.size());
    double sum = 0;
    for (const long count : counts)
        sum += (static_cast<double>(count) - expected) * (static_cast<double>(count) - expected);
    return sum / expected;
}

// The mean of chi-square is its degrees of freedom, its variance twice that: four standard deviations above
// are passed by chance less than once in a thousand seeds, and the seeds here are fixed.
double chi_square_limit(std::size_t bins) {
    const double freedom = static_cast<double>(bins - 1);
    return freedom + 4 * std::sqrt(2 * freedom);
}

}  // namespace

TEST_CASE("the engine beneath is the one whose ten thousandth output the C++ standard prints") {
    // ISO/IEC 14882:2020, [rand.predef]: mt19937_64, default-constructed, yields 9981545732273789042.
    std::mt19937_64 engine;
    engine.discard(9999);
    CHECK(engine() == 9981545732273789042u);
}

TEST_CASE("numbers below a bound come from the engine's upper halves, by Lemire's rule") {
    // Lemire 2019, algorithm 5, written down again from the paper for a bound that divides 2^32: no number is
    // drawn again, and the result is the half times the bound over 2^32.
    std::mt19937_64 engine(7);
    Random random(7);
    for (int draw = 0; draw < 1000; ++draw) REQUIRE(random.below(1u << 20) == (engine() >> 32) >> 12);
}

TEST_CASE("numbers stay below their bound, and the bound 1 gives 0") {
    Random random(1);
    for (const std::uint32_t bound : {1u, 2u, 3u, 26u, 65521u, 0x80000001u, 0xFFFFFFFFu})
        for (int draw = 0; draw < 1000; ++draw) REQUIRE(random.below(bound) < bound);
    CHECK(random.below(1) == 0);
}

TEST_CASE("each number below a bound is as likely as the next") {
    for (const std::uint32_t bound : {2u, 7u, 26u, 100u}) {
        CAPTURE(bound);
        Random random(bound);
        std::vector<long> counts(bound);
        for (int draw = 0; draw < 1'000'000; ++draw) ++counts[random.below(bound)];
        CHECK(chi_square(counts) < chi_square_limit(bound));
    }
}

TEST_CASE("a bound that does not divide the engine's range gives no number twice as often") {
    // 3 x 2^30 values out of 2^32: without drawing again every third value would come twice as often.
    Random random(3);
    std::vector<long> counts(3);
    for (int draw = 0; draw < 300'000; ++draw) ++counts[random.below(3u << 30) % 3];
    CHECK(chi_square(counts) < chi_square_limit(3));
}

TEST_CASE("the same seed gives the same numbers and another seed gives others") {
    Random first(42);
    Random again(42);
    Random other(43);
    std::vector<std::uint32_t> drawn, drawn_again, drawn_otherwise;
    for (int draw = 0; draw < 100; ++draw) {
        drawn.push_back(first.below(1'000'000));
        drawn_again.push_back(again.below(1'000'000));
        drawn_otherwise.push_back(other.below(1'000'000));
    }
    CHECK(drawn == drawn_again);
    CHECK(drawn != drawn_otherwise);
}

TEST_CASE("a shuffle gives each of the six orders of three things as often") {
    Random random(5);
    std::vector<long> counts(6);
    for (int draw = 0; draw < 600'000; ++draw) {
        std::vector<int> things{0, 1, 2};
        random.shuffle(things);
        const int order = things[0] * 2 + (things[1] > things[2] ? 1 : 0);
        ++counts[static_cast<std::size_t>(order)];
    }
    CHECK(chi_square(counts) < chi_square_limit(6));
}

TEST_CASE("a shuffle keeps all things and takes none and one as well") {
    Random random(9);
    std::vector<int> none;
    random.shuffle(none);
    CHECK(none.empty());
    std::vector<int> one{4};
    random.shuffle(one);
    CHECK(one == std::vector{4});
    std::vector<int> many(1000);
    std::iota(many.begin(), many.end(), 0);
    auto shuffled = many;
    random.shuffle(shuffled);
    CHECK(shuffled != many);
    std::sort(shuffled.begin(), shuffled.end());
    CHECK(shuffled == many);
}
