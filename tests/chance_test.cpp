// How often a word stands in a random grid by chance: the finder's counts against the formula.

#include <catch2/catch.hpp>
#include <cmath>
#include <numeric>

#include <letterlode/find.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"

using namespace lode;
using namespace lode::test;

namespace {

struct Mean {
    double mean = 0;
    double standard_error = 0;
    double at_least_one = 0;
};

Mean copies_by_chance(const std::string& word, Size size, const std::vector<std::uint32_t>& weights,
                      int grids, std::uint64_t seed) {
    std::vector<std::uint32_t> sums(weights.size());
    std::partial_sum(weights.begin(), weights.end(), sums.begin());
    const Matcher matcher(std::vector<Letters>{word_of(word)});
    Random random(seed);
    Grid grid(size);
    double sum = 0;
    double squares = 0;
    int with = 0;
    for (int round = 0; round < grids; ++round) {
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                grid[{row, column}] = static_cast<Letter>(
                    std::upper_bound(sums.begin(), sums.end(), random.below(sums.back())) - sums.begin());
        double copies = 0;
        matcher.search(grid, [&](std::size_t, const Copy&) {
            ++copies;
            return true;
        });
        sum += copies;
        squares += copies * copies;
        if (copies > 0) ++with;
    }
    const double mean = sum / grids;
    const double variance = (squares - sum * mean) / (grids - 1);
    return {mean, std::sqrt(variance / grids), static_cast<double>(with) / grids};
}

// Letters of English text, in hundreds of millions: Peter Norvig, "English Letter Frequency Counts: Mayzner
// Revisited", 2013.
const std::vector<std::uint32_t> norvig{2865, 529,  1192, 1360, 4452, 856,  666, 1801, 2697,
                                        57,   193,  1450, 895,  2578, 2723, 761, 43,   2238,
                                        2321, 3305, 973,  375,  597,  84,   593, 32};
const std::vector<std::uint32_t> uniform(26, 1);

void within_four_standard_errors(const Mean& seen, double expected) {
    CAPTURE(seen.mean, seen.standard_error, expected);
    CHECK(seen.standard_error > 0);
    CHECK(seen.standard_error < expected / 10);
    CHECK(std::abs(seen.mean - expected) < 4 * seen.standard_error);
}

}  // namespace

TEST_CASE("random letters spell a word as often as its places times the chances of its letters") {
    // 576 places for three letters in 10x10 and 1456 in 15x15, each with chance 26^-3.
    within_four_standard_errors(copies_by_chance("CAT", {10, 10}, uniform, 40'000, 1), 0.032772);
    within_four_standard_errors(copies_by_chance("CAT", {15, 15}, uniform, 20'000, 2), 0.082840);
}

TEST_CASE("letters as frequent as in English spell words more often") {
    within_four_standard_errors(copies_by_chance("CAT", {10, 10}, norvig, 20'000, 3), 0.14366);
    within_four_standard_errors(copies_by_chance("TEE", {10, 10}, norvig, 20'000, 4), 0.83375);
    within_four_standard_errors(copies_by_chance("SEE", {10, 10}, norvig, 20'000, 5), 0.58552);
    within_four_standard_errors(copies_by_chance("DOG", {10, 10}, norvig, 40'000, 6), 0.03139);
}

TEST_CASE("few letters spell a palindrome in half of all grids, and half as many copies as other words") {
    // Seven letters: 576 / 343 = 1.6793 places read CAT, and EVE as often, but a copy of EVE is read from
    // both ends. At least one EVE stands in 53 percent of grids (computed by another program).
    const std::vector<std::uint32_t> seven{1, 0, 1, 0, 1, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1, 1, 0, 1};
    REQUIRE(std::accumulate(seven.begin(), seven.end(), 0u) == 7);
    within_four_standard_errors(copies_by_chance("CAT", {10, 10}, seven, 10'000, 7), 1.6793);
    const Mean eve = copies_by_chance("EVE", {10, 10}, seven, 10'000, 8);
    within_four_standard_errors(eve, 1.6793 / 2);
    CHECK(eve.at_least_one == Approx(0.529).margin(0.02));
}
