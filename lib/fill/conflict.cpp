// First a cell that can hold no letter whatever the others hold: that tells a maker most. Otherwise the
// causes in the proof by deletion: one after another is allowed, and stays so where the rest still cannot be
// filled; what is in at the end is irreducible, since more allowed is never harder to fill (Chinneck and
// Dravnieks, "Locating minimal infeasible constraint sets in linear programs", ORSA Journal on Computing
// 3(2), 1991: the deletion filter). Judged by tests/fill_test.cpp.

#include "fill/conflict.hpp"

#include <algorithm>
#include <optional>

namespace lode {
namespace {

using Kind = FillCause::Kind;

// One trial of what is left costs no more than this: where it takes more, what was in doubt stays in.
constexpr std::uint64_t effort_per_trial = 1'000'000;

// What the letter in the cell clashes with, if anything.
std::optional<FillCause> clash(const Grid& grid, const FillTask& task, Cell cell) {
    std::optional<FillCause> cause;
    const auto check = [&](const CopyGuard& guard, Kind kind) {
        return guard.through(grid, cell, [&](std::size_t word, const Placement&) {
            cause = {kind, static_cast<std::uint32_t>(word)};
            return false;
        });
    };
    if (!check(task.words_guard, Kind::listed_word) || !check(task.avoided_guard, Kind::avoided_word))
        return cause;
    if (const auto broken = broken_rule(grid, task.rules, cell))
        return FillCause{broken->rule == RuleBreak::Rule::longest_run ? Kind::longest_run : Kind::look_alikes,
                         0};
    return std::nullopt;
}

// What bars each letter of a cell beside nothing but the placed words; empty where one is not barred.
std::vector<FillConflict::Barred> barred_at(Grid& grid, const FillTask& task, Cell cell) {
    std::vector<FillConflict::Barred> barred;
    bool is_free = false;
    const auto try_letter = [&](Letter letter) {
        grid[cell] = letter;
        const auto cause = clash(grid, task, cell);
        if (cause) barred.push_back({letter, *cause});
        is_free = !cause;
    };
    if (const Letter kept = task.kept ? (*task.kept)[cell] : empty_cell;
        kept < task.weights.size() && task.weights[kept] == 0)
        try_letter(kept);
    for (std::size_t letter = 0; letter < task.weights.size() && !is_free; ++letter)
        if (task.weights[letter] > 0) try_letter(static_cast<Letter>(letter));
    grid[cell] = empty_cell;
    if (is_free) barred.clear();
    return barred;
}

bool is_impossible(const Grid& placed, const FillTask& task, const std::vector<FillCause>& causes,
                   std::uint64_t& effort, Random& random) {
    const auto numbers = [&](Kind kind) {
        std::vector<std::uint32_t> words;
        for (const FillCause& cause : causes)
            if (cause.kind == kind) words.push_back(cause.word);
        return words;
    };
    const auto has = [&](Kind kind) {
        return std::any_of(causes.begin(), causes.end(),
                           [&](const auto& cause) { return cause.kind == kind; });
    };
    const CopyGuard words = task.words_guard.only(numbers(Kind::listed_word));
    const CopyGuard avoided = task.avoided_guard.only(numbers(Kind::avoided_word));
    FillTask less{words,       avoided,   task.weights, std::min(effort, effort_per_trial),
                  task.cancel, task.kept, task.rules};
    if (!has(Kind::longest_run)) less.rules.longest_run = 0;
    if (!has(Kind::look_alikes)) less.rules.looks.clear();
    const FillResult result = fill(placed, less, random);
    effort -= result.effort_spent;
    return result.end == FillResult::End::impossible;
}

}  // namespace

FillConflict find_fill_conflict(const Grid& placed, const FillTask& task,
                                const std::vector<FillCause>& causes, Random& random) {
    FillConflict conflict{causes, false, {}, {}};
    std::uint64_t effort = task.effort;
    Grid grid = placed;
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            if (grid[{row, column}] != empty_cell) continue;
            conflict.barred = barred_at(grid, task, {row, column});
            if (conflict.barred.empty()) continue;
            conflict.cell = {row, column};
            conflict.causes.clear();
            for (const auto& [letter, cause] : conflict.barred) conflict.causes.push_back(cause);
            std::sort(conflict.causes.begin(), conflict.causes.end());
            conflict.causes.erase(std::unique(conflict.causes.begin(), conflict.causes.end()),
                                  conflict.causes.end());
            row = grid.size().rows;
            break;
        }
    bool each_tried = true;
    for (std::size_t at = 0; at < conflict.causes.size();) {
        auto rest = conflict.causes;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(at));
        const std::uint64_t before = effort;
        each_tried = each_tried && effort > 0;
        if (is_impossible(placed, task, rest, effort, random)) {
            conflict.causes = std::move(rest);
        } else {
            each_tried = each_tried && before - effort < effort_per_trial && effort > 0;
            ++at;
        }
    }
    conflict.irreducible = each_tried;
    return conflict;
}

}  // namespace lode
