#include "c/control.hpp"
#include "c/making.hpp"
#include "c/range.hpp"

using namespace lode::c;

namespace {

// A judge whose rules are changed is opened anew; the one that was there stays until that is done.
template <class Change>
std::int32_t changed_rules(const char* function, lode_judge* judge, lode_error** error,
                           const Change& change) {
    return guarded(function, error, [&] {
        lode_judge& handle = need(judge, "judge");
        lode::CheckRules rules = handle.rules;
        change(rules);
        handle.judge = taken(lode::GridJudge::open(handle.recipe, rules));
        handle.rules = std::move(rules);
        return LODE_OK;
    });
}

}  // namespace

std::int32_t lode_judge_create(lode_judge** judge, const lode_recipe* recipe, lode_error** error) {
    clear(judge);
    return guarded(__func__, error, [&] {
        auto& result = need(judge, "judge");
        const lode::Recipe& rules = need(recipe, "recipe").recipe;
        result = new lode_judge{rules, {}, taken(lode::GridJudge::open(rules))};
        return LODE_OK;
    });
}

std::int32_t lode_judge_add_dictionary_text(lode_judge* judge, const char* given, const char* source,
                                            lode_error** error) {
    return changed_rules(__func__, judge, error, [&](lode::CheckRules& rules) {
        const auto words = taken(lode::read_dictionary(text(given, "text"), source_name(source)));
        rules.dictionary.insert(rules.dictionary.end(), words.begin(), words.end());
    });
}

std::int32_t lode_judge_set_chance_letters(lode_judge* judge, std::int32_t letters, lode_error** error) {
    return changed_rules(__func__, judge, error, [&](lode::CheckRules& rules) {
        rules.shortest_by_chance = static_cast<std::size_t>(in_range(letters, "number of letters", 1, 100));
    });
}

std::int32_t lode_judge_audit(lode_audit** audit, const lode_judge* judge, const lode_grid* grid,
                              const lode_control* control, lode_error** error) {
    clear(audit);
    return guarded(__func__, error, [&] {
        auto& result = need(audit, "audit");
        const lode::GridJudge& judging = need(judge, "judge").judge;
        result = new lode_audit{
            taken(judging.audit(need(grid, "grid").grid, {}, search_control(control))), {}, {}};
        return LODE_OK;
    });
}

std::int32_t lode_judge_audit_puzzle(lode_audit** audit, const lode_judge* judge, const lode_puzzle* puzzle,
                                     const lode_control* control, lode_error** error) {
    clear(audit);
    return guarded(__func__, error, [&] {
        auto& result = need(audit, "audit");
        const lode::GridJudge& judging = need(judge, "judge").judge;
        const lode::Puzzle& judged = need(puzzle, "puzzle").puzzle;
        result =
            new lode_audit{taken(judging.audit(judged.grid, judged.words, search_control(control))), {}, {}};
        return LODE_OK;
    });
}

std::int32_t lode_judge_puzzle(lode_puzzle** puzzle, const lode_judge* judge, const lode_grid* grid,
                               const lode_control* control, lode_error** error) {
    clear(puzzle);
    return guarded(__func__, error, [&] {
        auto& result = need(puzzle, "puzzle");
        const lode::GridJudge& judging = need(judge, "judge").judge;
        result = new_puzzle(taken(judging.puzzle_of(need(grid, "grid").grid, {}, search_control(control))));
        return LODE_OK;
    });
}

std::int32_t lode_judge_rate(lode_rating** rating, const lode_judge* judge, const lode_grid* grid,
                             const lode_seen* seen, lode_error** error) {
    clear(rating);
    return guarded(__func__, error, [&] {
        auto& result = need(rating, "rating");
        const lode::GridJudge& judging = need(judge, "judge").judge;
        lode::RatingRules rules;
        if (seen) rules.seen = seen->seen;
        result = new lode_rating{taken(judging.rate(need(grid, "grid").grid, {}, rules)), {}, {}};
        return LODE_OK;
    });
}

void lode_judge_free(lode_judge* judge) {
    delete judge;
}
