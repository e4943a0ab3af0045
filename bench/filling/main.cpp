// Filling the cells between words that lie in a grid: without the guards, which are built once a recipe, and
// the guards alone. Where rules are asked for, it reports how far they bend the letters from their weights.

#include <cmath>
#include <fstream>
#include <set>
#include <stdexcept>

#include <benchmark/benchmark.h>

#include "fill/fill.hpp"
#include "puzzle/letter_shapes.hpp"
#include "puzzle/letter_table.hpp"

namespace {

using namespace lode;

constexpr std::size_t letters = 26;

std::vector<std::uint32_t> english_weights() {
    std::vector<std::uint32_t> weights;
    for (const auto& [letter, count] : letter_table("en")) weights.push_back(count);
    return weights;
}

// Different words of 4 to 10 letters, by chance.
std::vector<Letters> chance_words(std::size_t count, Random& random) {
    std::set<Letters> known;
    std::vector<Letters> words;
    while (words.size() < count) {
        Letters word(4 + random.below(7));
        for (Letter& letter : word) letter = static_cast<Letter>(random.below(letters));
        if (known.insert(word).second) words.push_back(word);
    }
    return words;
}

// English words of five letters and more, as many as there are up to so many.
std::vector<Letters> dictionary_words(std::size_t most) {
    std::ifstream file(LODE_ENGLISH_WORDS);
    if (!file) throw std::runtime_error("no English words: install wamerican");
    std::set<Letters> known;
    std::vector<Letters> words;
    for (std::string line; words.size() < most && std::getline(file, line);) {
        Letters word;
        for (const char letter : line) {
            const int number = (letter | 0x20) - 'a';
            if (number >= 0 && number < static_cast<int>(letters))
                word.push_back(static_cast<Letter>(number));
        }
        if (word.size() >= 5 && word.size() == line.size() && known.insert(word).second)
            words.push_back(word);
    }
    return words;
}

// Words in rows, as evenly as can be, the rest empty.
Grid grid_with(const std::vector<Letters>& words, int side) {
    Grid grid({side, side});
    const std::size_t in_a_row =
        (words.size() + static_cast<std::size_t>(side) - 1) / static_cast<std::size_t>(side);
    int column = 0;
    for (std::size_t at = 0; at < words.size(); ++at) {
        const int row = static_cast<int>(at / in_a_row);
        if (at % in_a_row == 0) column = 0;
        if (column + static_cast<int>(words[at].size()) > side) continue;
        for (const Letter letter : words[at]) grid[{row, column++}] = letter;
        column += 2;
    }
    return grid;
}

struct Garden {
    std::vector<Letters> words;
    Grid grid;
    CopyGuard words_guard;
    CopyGuard avoided_guard;
};

Garden garden_of(int side, std::size_t words, std::size_t avoided) {
    Random random(7);
    Garden garden;
    garden.words = chance_words(words, random);
    garden.grid = grid_with(garden.words, side);
    garden.words_guard = exact_guard(garden.words, letters);
    garden.avoided_guard = exact_guard(dictionary_words(avoided), letters);
    return garden;
}

// Another filling each time.
void fill_all(benchmark::State& state, const Garden& garden, const FillerRules& rules) {
    const auto weights = english_weights();
    std::uint64_t seed = 1;
    for (auto _ : state) {
        Random random(seed++);
        const FillResult result = fill(
            garden.grid,
            {garden.words_guard, garden.avoided_guard, weights, UINT64_MAX, nullptr, nullptr, rules}, random);
        if (result.end != FillResult::End::filled) state.SkipWithError("not filled");
    }
}

FillerRules rules_of(int longest_run, bool apart) {
    FillerRules rules{longest_run, {}};
    for (char letter = 'A'; apart && letter <= 'Z'; ++letter) rules.looks.push_back(look_of({&letter, 1}));
    return rules;
}

void fill_15x15_with_20_words(benchmark::State& state) {
    const Garden garden = garden_of(15, 20, static_cast<std::size_t>(state.range(0)));
    fill_all(state, garden, rules_of(static_cast<int>(state.range(1)), state.range(2) != 0));
}
BENCHMARK(fill_15x15_with_20_words)
    ->ArgNames({"avoided", "longest_run", "apart"})
    ->Args({0, 0, 0})
    ->Args({0, 3, 0})
    ->Args({50, 3, 0})
    ->Args({50'000, 3, 0})
    ->Args({0, 3, 1})
    ->Unit(benchmark::kMicrosecond);

void fill_1000x1000_with_20000_words(benchmark::State& state) {
    const Garden garden = garden_of(1000, 20'000, static_cast<std::size_t>(state.range(0)));
    fill_all(state, garden, rules_of(static_cast<int>(state.range(1)), state.range(2) != 0));
}
BENCHMARK(fill_1000x1000_with_20000_words)
    ->ArgNames({"avoided", "longest_run", "apart"})
    ->Args({0, 0, 0})
    ->Args({0, 3, 0})
    ->Args({50'000, 3, 0})
    ->Args({0, 3, 1})
    ->Unit(benchmark::kMillisecond);

void guard_over_words(benchmark::State& state) {
    const auto words = dictionary_words(static_cast<std::size_t>(state.range(0)));
    for (auto _ : state) benchmark::DoNotOptimize(exact_guard(words, letters));
}
BENCHMARK(guard_over_words)->Arg(20)->Arg(50'000)->Unit(benchmark::kMicrosecond);

// The filler of an empty grid of 300 x 300: chi-square against the weights, with 25 degrees of freedom (52.6
// at 0.1 percent), and the letter whose share the rules bend most, in percent of its share.
void letters_under_rules(benchmark::State& state) {
    const auto weights = english_weights();
    double all = 0;
    for (const auto weight : weights) all += weight;
    const CopyGuard none = exact_guard({}, letters);
    const FillerRules rules = rules_of(static_cast<int>(state.range(0)), state.range(1) != 0);
    std::vector<double> counts(letters, 0);
    double cells = 0;
    std::uint64_t seed = 1;
    for (auto _ : state) {
        Random random(seed++);
        const FillResult result =
            fill(Grid({300, 300}), {none, none, weights, UINT64_MAX, nullptr, nullptr, rules}, random);
        if (cells > 1e6) continue;
        for (const Letter letter : result.grid.letters()) ++counts[letter];
        cells += 90'000;
    }
    double chi_square = 0;
    double bent = 0;
    for (std::size_t letter = 0; letter < letters; ++letter) {
        const double expected = cells * weights[letter] / all;
        chi_square += (counts[letter] - expected) * (counts[letter] - expected) / expected;
        if (std::abs(counts[letter] / expected - 1) > std::abs(bent)) bent = counts[letter] / expected - 1;
    }
    // Per grid, so that it does not grow with how many were made.
    state.counters["chi_square"] = chi_square * 90'000 / cells;
    state.counters["bent_percent"] = 100 * bent;
}
BENCHMARK(letters_under_rules)
    ->ArgNames({"longest_run", "apart"})
    ->Args({0, 0})
    ->Args({3, 0})
    ->Args({2, 0})
    ->Args({1, 0})
    ->Args({3, 1})
    ->Unit(benchmark::kMillisecond);

}  // namespace
