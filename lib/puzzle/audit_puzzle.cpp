// Audits by recipe: the words, the avoided words and the placements that a puzzle brings with it.

#include <map>

#include <letterlode/puzzle.hpp>

#include "puzzle/inner_words.hpp"

namespace lode {
namespace {

AuditRules rules_of(const Recipe& recipe) {
    AuditRules rules;
    if (recipe.default_avoid_list) rules.avoid = avoid_list(recipe.text.locale);
    rules.avoid.insert(rules.avoid.end(), recipe.avoid.begin(), recipe.avoid.end());
    rules.allowed = recipe.allow;
    return rules;
}

// A word that stands once inside one other is expected once, where that other stands. More than one copy, or
// more than one outer word, leaves no grid in which it stands once.
std::optional<Refusal> nested_more_than_once(const WordList& list) {
    Alphabet alphabet;
    std::vector<Letters> words;
    for (const auto& word : list.words) words.push_back(alphabet.add_all(word.letters));
    std::optional<Refusal> refusal;
    std::map<std::size_t, std::size_t> outer_of;
    find_inner_words(words, words, [&](std::size_t inner, std::size_t outer, std::size_t copies) {
        if (inner == outer) return true;
        const Word& small = list.words[inner];
        const Word& large = list.words[outer];
        const auto [known, first] = outer_of.emplace(inner, outer);
        if (copies == 1 && first) return true;
        refusal = Refusal{Refusal::Reason::unusable,
                          place_in(list.source, small.line) + "'" + small.shown + "' stands " +
                              (copies > 1 ? "more than once inside '" + large.shown + "'."
                                          : "inside '" + list.words[known->second].shown + "' and inside '" +
                                                large.shown + "'."),
                          {small.shown, large.shown},
                          {"Take one of the words out: no grid can hold each of them once."},
                          list.source,
                          small.line};
        return false;
    });
    return refusal;
}

}  // namespace

Outcome<Audit> audit(const LetteredGrid& grid, const Recipe& recipe, std::span<const PlacedWord> placed) {
    const auto segmenter = Segmenter::open(recipe.text);
    if (!segmenter) return segmenter.refusal();
    const auto list = spell(recipe.words, *segmenter);
    if (!list) return list.refusal();
    if (auto refusal = nested_more_than_once(*list)) return std::move(*refusal);

    std::map<std::vector<std::string>, Placement> placements;
    for (const auto& word : placed) placements.emplace(word.letters, word.placed);
    std::vector<AuditedWord> words;
    for (const auto& word : list->words) {
        const auto known = placements.find(word.letters);
        words.push_back({word.shown, word.letters, {}});
        if (known != placements.end()) words.back().placed = known->second;
    }
    return audit(grid, words, rules_of(recipe), *segmenter);
}

Outcome<Audit> audit(const Puzzle& puzzle) {
    const auto segmenter = Segmenter::open(puzzle.recipe.text);
    if (!segmenter) return segmenter.refusal();
    std::vector<AuditedWord> words;
    for (const auto& word : puzzle.words) words.push_back({word.shown, word.letters, word.placed});
    return audit(puzzle.grid, words, rules_of(puzzle.recipe), *segmenter);
}

}  // namespace lode
