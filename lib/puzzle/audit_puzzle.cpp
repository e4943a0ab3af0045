// Audits by recipe: the words, the avoided words and the placements that a puzzle brings with it.

#include <map>

#include <letterlode/puzzle.hpp>

#include "puzzle/avoided_words.hpp"
#include "puzzle/judged_words.hpp"
#include "puzzle/nested_words.hpp"

namespace lode {

std::vector<AuditedWord> judged_words(const WordList& list, const NestedWords& nested) {
    std::vector<AuditedWord> words;
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
    const auto segmenter = Segmenter::open(recipe.text);
    if (!segmenter) return segmenter.refusal();
    const auto list = spell(recipe.words, *segmenter);
    if (!list) return list.refusal();
    if (auto refusal = bad_avoided_word(recipe, *segmenter)) return std::move(*refusal);
    Alphabet alphabet;
    std::vector<Letters> letters;
    for (const auto& word : list->words) letters.push_back(alphabet.add_all(word.letters));
    const auto nested = nest(*list, letters, recipe.nested);
    if (!nested) return nested.refusal();
    auto words = judged_words(*list, *nested);

    std::map<std::vector<std::string>, Placement> placements;
    for (const auto& word : placed) placements.emplace(word.letters, word.placed);
    for (auto& word : words) {
        const auto known = placements.find(word.letters);
        if (known != placements.end()) word.placed = known->second;
    }
    const auto avoided = avoided_readings(recipe, *segmenter);
    AuditRules judged_by = audit_rules(recipe, avoided, *segmenter);
    judged_by.dictionary = rules.dictionary;
    judged_by.shortest_by_chance = rules.shortest_by_chance;
    auto found = audit(grid, words, judged_by, *segmenter, rules.control);
    if (found.cancelled)
        return Refusal{
            Refusal::Reason::unfinished, "The check was interrupted before its end.", {}, {}, {}, 0};
    return named_as_listed(std::move(found), avoided);
}

Outcome<Audit> audit(const Puzzle& puzzle, const CheckRules& rules) {
    return audit(puzzle.grid, puzzle.recipe, puzzle.words, rules);
}

}  // namespace lode
