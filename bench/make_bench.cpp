// Making a puzzle: placed, filled and audited. Seeds vary, so that the figure is a mean over puzzles.

#include <benchmark/benchmark.h>
#include <letterlode/puzzle.hpp>

#include "gardens.hpp"

namespace {

using namespace lode;
using namespace lode::bench;

// Another seed each time.
void make_with_every_seed(benchmark::State& state, Recipe& recipe) {
    for (auto _ : state) {
        auto puzzle = make(recipe);
        if (!puzzle) {
            state.SkipWithError(puzzle.refusal().message.c_str());
            break;
        }
        benchmark::DoNotOptimize(puzzle);
        ++recipe.seed;
    }
}

// 15 x 15, 20 words of 4 to 10 letters, eight directions.
void make_15x15_with_20_words(benchmark::State& state) {
    Recipe recipe = recipe_of(invented_words(20, 4, 10, 7), {15, 15});
    recipe.default_avoid_list = state.range(0) != 0;
    make_with_every_seed(state, recipe);
}
BENCHMARK(make_15x15_with_20_words)->ArgName("avoid_list")->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);

// The same from a recipe that was checked once.
void make_15x15_again(benchmark::State& state) {
    Recipe recipe = recipe_of(invented_words(20, 4, 10, 7), {15, 15});
    recipe.default_avoid_list = state.range(0) != 0;
    const auto checked = CheckedRecipe::open(recipe);
    std::uint64_t seed = 1;
    for (auto _ : state) {
        auto puzzle = checked->make(seed++);
        benchmark::DoNotOptimize(puzzle);
    }
}
BENCHMARK(make_15x15_again)->ArgName("avoid_list")->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);

// As crowded as a maker may wish: words take two cells in three and more.
void make_12x12_with_20_words(benchmark::State& state) {
    Recipe recipe = recipe_of(invented_words(20, 4, 8, 8), {12, 12});
    make_with_every_seed(state, recipe);
}
BENCHMARK(make_12x12_with_20_words)->Unit(benchmark::kMicrosecond);

void make_300x300_with_300_words(benchmark::State& state) {
    Recipe recipe = recipe_of(invented_words(300, 5, 12, 1), {300, 300});
    make_with_every_seed(state, recipe);
    state.SetItemsProcessed(state.iterations() * 90'000);
}
BENCHMARK(make_300x300_with_300_words)->Unit(benchmark::kMillisecond);

}  // namespace
