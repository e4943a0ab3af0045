// Checking a finished grid of 300 x 300 for 300 words in eight directions, beside a peer: std::string::find
// along every line and its reverse. The peer has the lines ready, and only counts.

#include <benchmark/benchmark.h>
#include <algorithm>
#include <stdexcept>

#include <letterlode/puzzle.hpp>

#include "gardens.hpp"

namespace {

using namespace lode;
using namespace lode::bench;

// All rows, columns and diagonals, forward and backward.
std::vector<std::string> lines_of(const LetteredGrid& grid) {
    const auto [rows, columns] = grid.grid.size();
    std::vector<std::string> lines;
    const auto add = [&, rows = rows, columns = columns](int row, int column, int down, int across) {
        std::string line;
        for (; row >= 0 && row < rows && column >= 0 && column < columns; row += down, column += across)
            line += grid.alphabet.text(grid.grid[{row, column}]);
        lines.push_back(line);
        lines.emplace_back(line.rbegin(), line.rend());
    };
    for (int row = 0; row < rows; ++row) add(row, 0, 0, 1);
    for (int column = 0; column < columns; ++column) {
        add(0, column, 1, 0);
        add(0, column, 1, 1);
        add(0, column, 1, -1);
    }
    for (int row = 1; row < rows; ++row) {
        add(row, 0, 1, 1);
        add(row, columns - 1, 1, -1);
    }
    return lines;
}

std::vector<std::string> words_of(const Puzzle& puzzle) {
    std::vector<std::string> words;
    for (const auto& word : puzzle.words) {
        words.emplace_back();
        for (const auto& letter : word.letters) words.back() += letter;
    }
    return words;
}

void check_300x300_for_300_words(benchmark::State& state) {
    Puzzle puzzle = large_puzzle();
    puzzle.recipe.default_avoid_list = state.range(0) != 0;
    for (auto _ : state) {
        const auto found = audit(puzzle);
        if (!found || !std::all_of(found->words.begin(), found->words.end(),
                                   [](const WordFinding& word) { return word.copies.size() == 1; }))
            throw std::logic_error("the audit does not find each word once");
        benchmark::DoNotOptimize(found);
    }
    state.SetItemsProcessed(state.iterations() * 90'000);
}
BENCHMARK(check_300x300_for_300_words)->ArgName("avoid_list")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void check_300x300_by_string_find(benchmark::State& state) {
    const auto lines = lines_of(large_puzzle().grid);
    const auto words = words_of(large_puzzle());
    for (auto _ : state) {
        std::size_t copies = 0;
        for (const auto& word : words)
            for (const auto& line : lines)
                for (auto at = line.find(word); at != std::string::npos; at = line.find(word, at + 1))
                    ++copies;
        if (copies != words.size()) throw std::logic_error("std::string::find does not find each word once");
        benchmark::DoNotOptimize(copies);
    }
    state.SetItemsProcessed(state.iterations() * 90'000);
}
BENCHMARK(check_300x300_by_string_find)->Unit(benchmark::kMillisecond);

// The finder alone, built anew each time and built once.
void match_300x300_for_300_words(benchmark::State& state) {
    const bool build_each_time = state.range(0) != 0;
    const Puzzle& puzzle = large_puzzle();
    std::vector<Letters> words;
    for (const auto& word : puzzle.words) {
        words.emplace_back();
        for (const auto& letter : word.letters)
            words.back().push_back(puzzle.grid.alphabet.find(letter).value());
    }
    const Matcher ready(words);
    const auto count = [&](const Matcher& matcher) {
        std::size_t copies = 0;
        matcher.search(puzzle.grid.grid, [&](std::size_t, const Copy&) {
            ++copies;
            return true;
        });
        return copies;
    };
    for (auto _ : state) benchmark::DoNotOptimize(build_each_time ? count(Matcher(words)) : count(ready));
    state.SetItemsProcessed(state.iterations() * 90'000);
}
BENCHMARK(match_300x300_for_300_words)->ArgName("build")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

// The judge of a made puzzle, built once, as it is where puzzles are made from a checked recipe.
void audit_15x15_with_20_words(benchmark::State& state) {
    Recipe recipe = recipe_of(invented_words(20, 4, 10, 7), {15, 15});
    const Puzzle puzzle = make(recipe).value();
    std::vector<AuditedWord> words;
    std::vector<std::optional<Placement>> placed;
    for (const auto& word : puzzle.words) {
        words.push_back({word.shown, word.letters});
        placed.emplace_back(word.placed);
    }
    const Segmenter segmenter = Segmenter::open(recipe.text).value();
    const Judge judge(puzzle.grid.alphabet, words, {}, segmenter);
    for (auto _ : state) {
        const Audit found = judge.audit(puzzle.grid.grid, placed);
        if (!found.certified) throw std::logic_error("the audit does not find each word once");
        benchmark::DoNotOptimize(found);
    }
}
BENCHMARK(audit_15x15_with_20_words)->Unit(benchmark::kMicrosecond);

}  // namespace
