// Rating a puzzle, and what difficulty goes with: the rank correlation of fixations with the grid's size and
// with the number of directions, over 200 puzzles (as counters).

#include <benchmark/benchmark.h>
#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>

#include <letterlode/art.hpp>
#include <letterlode/puzzle.hpp>

#include "gardens.hpp"

namespace {

using namespace lode;
using namespace lode::bench;

void rate_15x15_with_20_words(benchmark::State& state) {
    const Puzzle puzzle = make(recipe_of(invented_words(20, 4, 10, 7), {15, 15})).value();
    RatingRules rules;
    rules.looks = letter_looks(puzzle.grid.alphabet, "DejaVu Sans:bold").value();
    for (auto _ : state) benchmark::DoNotOptimize(rate(puzzle, rules));
}
BENCHMARK(rate_15x15_with_20_words)->Unit(benchmark::kMicrosecond);

void looks_of_26_letters(benchmark::State& state) {
    Alphabet alphabet;
    for (char letter = 'A'; letter <= 'Z'; ++letter) alphabet.add(std::string(1, letter));
    for (auto _ : state) benchmark::DoNotOptimize(letter_looks(alphabet, "DejaVu Sans:bold"));
}
BENCHMARK(looks_of_26_letters)->Unit(benchmark::kMillisecond);

void choose_of_100_puzzles(benchmark::State& state) {
    const auto checked = CheckedRecipe::open(recipe_of(invented_words(20, 4, 10, 7), {15, 15})).value();
    for (auto _ : state) {
        const auto puzzles = make_choices(checked, 1, 100).value();
        benchmark::DoNotOptimize(rank_puzzles(puzzles));
    }
}
BENCHMARK(choose_of_100_puzzles)->Unit(benchmark::kMillisecond);

void rate_1000x1000_with_20000_words(benchmark::State& state) {
    Recipe recipe = recipe_of({}, {1000, 1000});
    // Letters of all kinds: words of nine of them stand in no other.
    std::uint64_t number = 88172645463325252u;
    for (int word = 0; word < 20'000; ++word) {
        std::string letters;
        for (int at = 0; at < 9; ++at) {
            number ^= number << 13;
            number ^= number >> 7;
            number ^= number << 17;
            letters += static_cast<char>('A' + number % 26);
        }
        recipe.words.words.push_back({letters, 0});
    }
    const Puzzle puzzle = make(recipe).value();
    for (auto _ : state) benchmark::DoNotOptimize(rate(puzzle));
}
BENCHMARK(rate_1000x1000_with_20000_words)->Unit(benchmark::kMillisecond)->Iterations(3);

// Spearman 1904, American Journal of Psychology 15:72: the correlation of ranks, equal values sharing theirs.
std::vector<double> ranks_of(const std::vector<double>& values) {
    std::vector<std::size_t> order(values.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(),
              [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
    std::vector<double> ranks(values.size());
    for (std::size_t first = 0; first < order.size();) {
        std::size_t end = first;
        while (end < order.size() && values[order[end]] == values[order[first]]) ++end;
        for (std::size_t at = first; at < end; ++at)
            ranks[order[at]] = static_cast<double>(first + end - 1) / 2;
        first = end;
    }
    return ranks;
}

double rank_correlation(const std::vector<double>& one, const std::vector<double>& other) {
    const auto a = ranks_of(one), b = ranks_of(other);
    const double mean = static_cast<double>(a.size() - 1) / 2;
    double both = 0, first = 0, second = 0;
    for (std::size_t at = 0; at < a.size(); ++at) {
        both += (a[at] - mean) * (b[at] - mean);
        first += (a[at] - mean) * (a[at] - mean);
        second += (b[at] - mean) * (b[at] - mean);
    }
    return both / std::sqrt(first * second);
}

void difficulty_of_200_puzzles(benchmark::State& state) {
    std::vector<double> cells, directions, sized, turned;
    for (auto _ : state) {
        cells.clear(), directions.clear(), sized.clear(), turned.clear();
        for (int number = 0; number < 100; ++number) {
            const auto words = invented_words(12, 4, 8, static_cast<std::uint64_t>(number) + 1);
            const int side = 10 + number % 20;
            cells.push_back(side * side);
            sized.push_back(rate(make(recipe_of(words, {side, side})).value())->difficulty.fixations);

            Recipe recipe = recipe_of(words, {15, 15});
            Directions some;
            const int count = 1 + number % 8;
            for (int at = 0; at < count; ++at) some.insert(all_directions[static_cast<std::size_t>(at)]);
            recipe.directions = some;
            directions.push_back(count);
            turned.push_back(rate(make(recipe).value())->difficulty.fixations);
        }
    }
    state.counters["with_size"] = rank_correlation(cells, sized);
    state.counters["with_directions"] = rank_correlation(directions, turned);
}
BENCHMARK(difficulty_of_200_puzzles)->Unit(benchmark::kMillisecond)->Iterations(1);

}  // namespace
