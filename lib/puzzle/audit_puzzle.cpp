// Audits by recipe: the words, the avoided words and the placements that a puzzle brings with it.

#include <letterlode/puzzle.hpp>

#include "puzzle/avoided_words.hpp"
#include "puzzle/judged_words.hpp"
#include "puzzle/nested_words.hpp"
#include "puzzle/recipe_judge.hpp"

namespace lode {

std::vector<AuditedWord> judged_words(const WordList& list, const NestedWords& nested) {
    std::vector<AuditedWord> words;
    words.reserve(list.words.size());
    for (std::size_t word = 0; word < list.words.size(); ++word)
        words.push_back({list.words[word].shown, list.words[word].letters, {}, nested.expected[word], {}});
    for (const InnerCopy& copy : nested.copies) {
        auto& outer = words[copy.inner].outer;
        if (outer.empty() || outer.back() != copy.outer) outer.push_back(copy.outer);
    }
    return words;
}

AuditRules audit_rules(const Recipe& recipe, const std::vector<AvoidedReading>& avoided,
                       const Segmenter& segmenter) {
    AuditRules rules;
    for (const auto& reading : avoided) rules.avoid.push_back(reading.text);
    rules.allowed = allowed_readings(recipe, segmenter);
    return rules;
}

Outcome<Audit> audit(const LetteredGrid& grid, const Recipe& recipe, std::span<const PlacedWord> placed,
                     const CheckRules& rules) {
    const auto judge = RecipeJudge::open(recipe, rules);
    if (!judge) return judge.refusal();
    return (*judge)->audit(grid, placed, rules.control);
}

Outcome<Audit> audit(const Puzzle& puzzle, const CheckRules& rules) {
    return audit(puzzle.grid, puzzle.recipe, puzzle.words, rules);
}

}  // namespace lode
