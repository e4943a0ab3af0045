// A class set: versions made, rated and chosen, and their pages with keys.

#include <benchmark/benchmark.h>
#include <letterlode/print.hpp>

#include "gardens.hpp"

namespace {

using namespace lode;
using namespace lode::bench;

CheckedRecipe class_recipe() {
    return CheckedRecipe::open(recipe_of(invented_words(20, 4, 9, 5), {15, 15})).value();
}

std::vector<Worksheet> class_set() {
    std::vector<Worksheet> worksheets;
    auto versions = make_versions(class_recipe(), 1, 15);
    char mark = 'A';
    for (Puzzle& puzzle : versions.value().puzzles)
        worksheets.push_back({std::move(puzzle), "Beds", std::string(1, mark++)});
    return worksheets;
}

void make_15_versions_of_15x15(benchmark::State& state) {
    const CheckedRecipe checked = class_recipe();
    std::uint64_t seed = 1;
    for (auto _ : state) benchmark::DoNotOptimize(make_versions(checked, seed += 1'000, 15));
}
BENCHMARK(make_15_versions_of_15x15)->Unit(benchmark::kMillisecond);

void print_30_pages(benchmark::State& state) {
    const std::vector<Worksheet> worksheets = class_set();
    for (auto _ : state) benchmark::DoNotOptimize(print_worksheets(worksheets, {}));
}
BENCHMARK(print_30_pages)->Unit(benchmark::kMillisecond);

void write_solve_page_of_15x15(benchmark::State& state) {
    const Worksheet worksheet = class_set().front();
    for (auto _ : state) benchmark::DoNotOptimize(solve_page(worksheet, {}));
}
BENCHMARK(write_solve_page_of_15x15)->Unit(benchmark::kMicrosecond);

}  // namespace
