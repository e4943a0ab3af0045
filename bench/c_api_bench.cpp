// What the C API costs beside the C++ API: the same puzzles of 15 x 15 with 20 words, made and audited in
// turn, each time with a fresh seed. One run measures both, so that a busy machine slows both: a pair is one
// of each, the first of the two changing from pair to pair, and the ratio is the median over pairs.

#include <benchmark/benchmark.h>
#include <algorithm>
#include <array>
#include <ctime>
#include <stdexcept>

#include <letterlode/letterlode.h>
#include <letterlode/puzzle.hpp>

#include "gardens.hpp"

namespace {

using namespace lode;
using namespace lode::bench;

// CPU time of this process, in microseconds: rusage tells the user's share of it by ticks, which are too
// coarse.
double cpu_time() {
    timespec used{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &used);
    return 1e6 * static_cast<double>(used.tv_sec) + 1e-3 * static_cast<double>(used.tv_nsec);
}

void succeed(std::int32_t status) {
    if (status != LODE_OK) throw std::logic_error("a call of the C API failed");
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

// Runs each of the two so many times a pair, which the clock can tell apart, with the same seeds.
template <class Cpp, class C>
void side_by_side(benchmark::State& state, int repeats, const Cpp& in_cpp, const C& in_c) {
    std::vector<double> cpp_times;
    std::vector<double> c_times;
    std::vector<double> ratios;
    std::uint64_t seed = 1;
    bool c_first = false;
    for (auto _ : state) {
        double took[2] = {};
        for (const bool c : {c_first, !c_first}) {
            const double start = cpu_time();
            for (int at = 0; at < repeats; ++at) {
                const std::uint64_t own = seed + static_cast<std::uint64_t>(at);
                if (c)
                    in_c(own);
                else
                    in_cpp(own);
            }
            took[c ? 1 : 0] = (cpu_time() - start) / repeats;
        }
        seed += static_cast<std::uint64_t>(repeats);
        c_first = !c_first;
        cpp_times.push_back(took[0]);
        c_times.push_back(took[1]);
        ratios.push_back(took[1] / took[0]);
    }
    state.counters["cpp_us"] = median(cpp_times);
    state.counters["c_us"] = median(c_times);
    state.counters["ratio"] = median(ratios);
}

Recipe twenty_words() {
    return recipe_of(invented_words(20, 4, 10, 7), {15, 15});
}

// A handle, freed where it goes.
template <class T, void (*free)(T*)>
struct Handle {
    T* its = nullptr;
    Handle() = default;
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;
    ~Handle() { free(its); }
};
using RecipeHandle = Handle<lode_recipe, lode_recipe_free>;
using PuzzleHandle = Handle<lode_puzzle, lode_puzzle_free>;
using RefusalHandle = Handle<lode_refusal, lode_refusal_free>;
using AuditHandle = Handle<lode_audit, lode_audit_free>;

// As a C program would say it.
void fill_in(RecipeHandle& recipe) {
    succeed(lode_recipe_create(&recipe.its, nullptr));
    for (const auto& word : twenty_words().words.words)
        succeed(lode_recipe_add_word(recipe.its, word.shown.c_str(), nullptr));
    succeed(lode_recipe_set_grid(recipe.its, 15, 15, nullptr));
    succeed(lode_recipe_set_directions(recipe.its, "all", nullptr));
    succeed(lode_recipe_set_default_avoid_list(recipe.its, 0, nullptr));
}

// From a recipe to a puzzle, and its audit once more.
void c_beside_cpp_make_and_audit(benchmark::State& state) {
    Recipe recipe = twenty_words();
    RecipeHandle handle;
    fill_in(handle);
    side_by_side(
        state, 20,
        [&](std::uint64_t seed) {
            recipe.seed = seed;
            const Puzzle puzzle = make(recipe).value();
            if (!audit(puzzle)->certified) throw std::logic_error("not certified");
        },
        [&](std::uint64_t seed) {
            PuzzleHandle puzzle;
            RefusalHandle refusal;
            AuditHandle found;
            succeed(lode_recipe_set_seed(handle.its, seed, nullptr));
            succeed(lode_make(&puzzle.its, &refusal.its, handle.its, nullptr, nullptr));
            succeed(lode_audit_puzzle(&found.its, puzzle.its, nullptr));
            if (!lode_audit_is_certified(found.its)) throw std::logic_error("not certified");
        });
}
BENCHMARK(c_beside_cpp_make_and_audit)->Iterations(100)->Unit(benchmark::kMillisecond);

// From a recipe that is checked once, and by a judge that is kept.
void c_beside_cpp_made_and_judged_again(benchmark::State& state) {
    const Recipe recipe = twenty_words();
    const auto checked = CheckedRecipe::open(recipe).value();
    const auto judge = GridJudge::open(recipe).value();
    RecipeHandle handle;
    fill_in(handle);
    Handle<lode_maker, lode_maker_free> maker;
    RefusalHandle none;
    Handle<lode_judge, lode_judge_free> c_judge;
    succeed(lode_maker_create(&maker.its, &none.its, handle.its, nullptr));
    succeed(lode_judge_create(&c_judge.its, handle.its, nullptr));
    side_by_side(
        state, 50,
        [&](std::uint64_t seed) {
            const Puzzle puzzle = checked.make(seed).value();
            if (!judge.audit(puzzle.grid, puzzle.words)->certified) throw std::logic_error("not certified");
        },
        [&](std::uint64_t seed) {
            PuzzleHandle puzzle;
            RefusalHandle refusal;
            AuditHandle found;
            succeed(lode_maker_make(&puzzle.its, &refusal.its, maker.its, seed, nullptr, nullptr));
            succeed(lode_judge_audit_puzzle(&found.its, c_judge.its, puzzle.its, nullptr, nullptr));
            if (!lode_audit_is_certified(found.its)) throw std::logic_error("not certified");
        });
}
BENCHMARK(c_beside_cpp_made_and_judged_again)->Iterations(100)->Unit(benchmark::kMillisecond);

// One grid audited by a judge that is kept, and by one that is made for it.
void judge_kept_or_new_15x15(benchmark::State& state) {
    const Recipe recipe = twenty_words();
    const Puzzle puzzle = make(recipe).value();
    const auto judge = GridJudge::open(recipe).value();
    const bool is_kept = state.range(0) != 0;
    for (auto _ : state)
        benchmark::DoNotOptimize(is_kept ? judge.audit(puzzle.grid, puzzle.words)
                                         : audit(puzzle.grid, recipe, puzzle.words));
}
BENCHMARK(judge_kept_or_new_15x15)->ArgName("kept")->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);

// All letters of a puzzle into a caller's buffer: cell by cell, from the list of all, and in C++.
void copy_cells(benchmark::State& state) {
    const Recipe recipe = twenty_words();
    RecipeHandle handle;
    fill_in(handle);
    PuzzleHandle puzzle;
    RefusalHandle refusal;
    succeed(lode_make(&puzzle.its, &refusal.its, handle.its, nullptr, nullptr));
    const Puzzle in_cpp = make(recipe).value();
    std::array<char, 15 * 15> letters{};
    for (auto _ : state) {
        std::size_t at = 0;
        if (state.range(0) == 0) {
            for (const Letter letter : in_cpp.grid.grid.letters())
                letters[at++] = in_cpp.grid.alphabet.text(letter).front();
        } else if (state.range(0) == 1) {
            for (std::int32_t row = 0; row < 15; ++row)
                for (std::int32_t column = 0; column < 15; ++column)
                    letters[at++] = *lode_puzzle_cell(puzzle.its, row, column);
        } else {
            const char* const* cells = nullptr;
            succeed(lode_puzzle_cells(&cells, puzzle.its, nullptr));
            for (; at < letters.size(); ++at) letters[at] = *cells[at];
        }
        benchmark::DoNotOptimize(letters);
    }
}
BENCHMARK(copy_cells)->ArgName("cpp_cell_list")->Arg(0)->Arg(1)->Arg(2)->Unit(benchmark::kNanosecond);

}  // namespace
