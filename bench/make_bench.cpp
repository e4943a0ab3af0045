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

std::vector<Recipe> recipes_of_15x15(const char* locale, bool avoid_list) {
    std::vector<Recipe> recipes;
    for (std::uint64_t list = 7; recipes.size() < 64; ++list) {
        Recipe recipe = recipe_of(invented_words(20, 4, 10, list), {15, 15});
        recipe.text.locale = locale;
        recipe.default_avoid_list = avoid_list;
        // Now and then a word that is invented is one that is avoided.
        if (CheckedRecipe::open(recipe)) recipes.push_back(std::move(recipe));
    }
    return recipes;
}

// The check that every recipe needs once: its words read, and the avoid list of its language made ready.
void open_15x15(benchmark::State& state, const char* locale, bool avoid_list) {
    const auto recipes = recipes_of_15x15(locale, avoid_list);
    std::size_t next = 0;
    for (auto _ : state) {
        auto checked = CheckedRecipe::open(recipes[next++ % recipes.size()]);
        benchmark::DoNotOptimize(checked);
    }
}

// By what the recipe has in common with one that was checked before: all but its words.
void open_15x15_like_another(benchmark::State& state, const char* locale, bool avoid_list) {
    const auto recipes = recipes_of_15x15(locale, avoid_list);
    const auto groundwork = CheckedRecipe::open(recipes.front())->groundwork();
    std::size_t next = 0;
    for (auto _ : state) {
        auto checked = CheckedRecipe::open(recipes[next++ % recipes.size()], groundwork);
        benchmark::DoNotOptimize(checked);
    }
}

#define LODE_OPEN_15X15(name, locale, avoid_list)                                           \
    BENCHMARK_CAPTURE(open_15x15, name, locale, avoid_list)->Unit(benchmark::kMicrosecond); \
    BENCHMARK_CAPTURE(open_15x15_like_another, name, locale, avoid_list)->Unit(benchmark::kMicrosecond)
LODE_OPEN_15X15(no_list, "en", false);
LODE_OPEN_15X15(root, "root", true);
LODE_OPEN_15X15(en, "en", true);
LODE_OPEN_15X15(cy, "cy", true);
LODE_OPEN_15X15(de, "de", true);
LODE_OPEN_15X15(hu, "hu", true);
LODE_OPEN_15X15(nl, "nl", true);
#undef LODE_OPEN_15X15

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
