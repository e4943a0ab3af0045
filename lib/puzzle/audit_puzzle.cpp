// Audits by recipe: the words, the avoided words and the placements that a puzzle brings with it.

#include <algorithm>
#include <map>

#include <letterlode/puzzle.hpp>

#include "puzzle/avoided_words.hpp"
#include "puzzle/inner_words.hpp"

namespace lode {
namespace {

AuditRules rules_of(const Recipe& recipe) {
    AuditRules rules;
    rules.avoid = avoided_words(recipe);
    rules.allowed = recipe.allow;
    return rules;
}

Refusal nested(const WordList& list, const Word& small, const std::string& where, const Word& large) {
    return {Refusal::Reason::unusable,
            place_in(list.source, small.line) + "'" + small.shown + "' stands " + where + "'" + large.shown +
                "'.",
            {small.shown, large.shown},
            {"Take one of the words out: no grid can hold each of them once."},
            list.source,
            small.line};
}

// A word that stands once inside one other is expected once, where that other stands; in a chain (AN, ANN,
// ANNE) that is the longest. More than one copy in a word, or two outer words apart, leave no grid in which
// it stands once.
std::optional<Refusal> nested_more_than_once(const WordList& list) {
    Alphabet alphabet;
    std::vector<Letters> words;
    for (const auto& word : list.words) words.push_back(alphabet.add_all(word.letters));
    std::optional<Refusal> refusal;
    std::vector<std::vector<std::size_t>> outers_of(words.size());
    find_inner_words(words, words, [&](std::size_t inner, std::size_t outer, InnerCopies copies) {
        if (inner == outer) return true;
        outers_of[inner].push_back(outer);
        if (copies == InnerCopies::one) return true;
        refusal = nested(list, list.words[inner], "more than once inside ", list.words[outer]);
        return false;
    });
    if (refusal) return refusal;

    for (std::size_t inner = 0; inner < words.size(); ++inner) {
        const auto& outers = outers_of[inner];
        if (outers.size() < 2) continue;
        // The longest one must hold all the others.
        const std::size_t longest = *std::max_element(
            outers.begin(), outers.end(), [&](auto a, auto b) { return words[a].size() < words[b].size(); });
        for (const std::size_t outer : outers) {
            const auto& around = outers_of[outer];
            if (outer == longest || std::find(around.begin(), around.end(), longest) != around.end())
                continue;
            return nested(list, list.words[inner], "inside '" + list.words[longest].shown + "' and inside ",
                          list.words[outer]);
        }
    }
    return std::nullopt;
}

}  // namespace

Outcome<Audit> audit(const LetteredGrid& grid, const Recipe& recipe, std::span<const PlacedWord> placed) {
    const auto segmenter = Segmenter::open(recipe.text);
    if (!segmenter) return segmenter.refusal();
    const auto list = spell(recipe.words, *segmenter);
    if (!list) return list.refusal();
    if (auto refusal = bad_avoided_word(recipe, *segmenter)) return std::move(*refusal);
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
    if (auto refusal = bad_avoided_word(puzzle.recipe, *segmenter)) return std::move(*refusal);
    std::vector<AuditedWord> words;
    for (const auto& word : puzzle.words) words.push_back({word.shown, word.letters, word.placed});
    return audit(puzzle.grid, words, rules_of(puzzle.recipe), *segmenter);
}

}  // namespace lode
