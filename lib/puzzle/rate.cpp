// What a reader meets in a puzzle, or in any grid with a list.

#include <map>

#include "puzzle/recipe_judge.hpp"

namespace lode {
namespace {

// A word with a letter that the grid lacks is looked for all the same: by a number beyond the alphabet.
Letters numbered(const std::vector<std::string>& letters, const Alphabet& alphabet) {
    Letters numbers;
    for (const auto& letter : letters)
        numbers.push_back(alphabet.find(letter).value_or(static_cast<Letter>(alphabet.size())));
    return numbers;
}

struct Standing {
    Placement placed;
    bool is_nested = false;
};

// Where each word is met first, as the audit found it.
std::map<std::string, Standing> standing_of(const Audit& audit) {
    std::map<std::string, Standing> standing;
    for (const WordFinding& word : audit.words) {
        if (word.copies.empty()) continue;
        const bool is_nested = !word.inside.empty() && !word.inside.front().empty();
        standing.emplace(word.shown,
                         Standing{{word.copies.front().first, word.copies.front().direction}, is_nested});
    }
    return standing;
}

using KnownPlaces = std::map<std::vector<std::string>, Standing>;  // by letters
using MetPlaces = std::map<std::string, Standing>;                 // by the word as shown

KnownPlaces known_places(std::span<const PlacedWord> placed, Nested nested) {
    KnownPlaces known;
    for (const PlacedWord& word : placed)
        known.emplace(word.letters, Standing{word.placed, nested == Nested::inside && !word.inside.empty()});
    return known;
}

Outcome<Rating> rated(const LetteredGrid& grid, const WordList& list, const KnownPlaces& known,
                      const MetPlaces& met, const RatingRules& rules) {
    std::vector<SoughtWord> words;
    for (const Word& word : list.words) {
        SoughtWord sought{word.shown, numbered(word.letters, grid.alphabet)};
        const auto own = known.find(word.letters);
        const auto first = met.find(word.shown);
        if (own != known.end() || first != met.end()) {
            const Standing& standing = own != known.end() ? own->second : first->second;
            sought.placed = standing.placed;
            sought.is_nested = standing.is_nested;
        }
        words.push_back(std::move(sought));
    }
    Reader reader;
    reader.right_to_left = is_right_to_left(list.words.front().shown);
    auto difficulty = rate_difficulty(grid, words, reader);
    if (!difficulty) return difficulty.refusal();
    return Rating{
        rate_readability(grid, rules.looks ? *rules.looks : built_in_looks(grid.alphabet), rules.seen),
        std::move(*difficulty)};
}

}  // namespace

Outcome<Rating> rate(const LetteredGrid& grid, const Recipe& recipe, const RecipeJudge& judge,
                     std::span<const PlacedWord> placed, const RatingRules& rules) {
    if (!placed.empty()) return rated(grid, judge.list(), known_places(placed, recipe.nested), {}, rules);
    const auto audited = judge.audit(grid, {}, {});
    if (!audited) return audited.refusal();
    return rated(grid, judge.list(), {}, standing_of(*audited), rules);
}

Outcome<Rating> rate(const LetteredGrid& grid, const Recipe& recipe, std::span<const PlacedWord> placed,
                     const RatingRules& rules) {
    if (placed.empty()) {
        const auto judge = RecipeJudge::open(recipe, {});
        if (!judge) return judge.refusal();
        return rate(grid, recipe, **judge, placed, rules);
    }
    // Nothing is looked for where all is known.
    const auto segmenter = Segmenter::open(recipe.text);
    if (!segmenter) return segmenter.refusal();
    const auto list = spell(recipe.words, *segmenter);
    if (!list) return list.refusal();
    return rated(grid, *list, known_places(placed, recipe.nested), {}, rules);
}

Outcome<Rating> rate(const Puzzle& puzzle, const RatingRules& rules) {
    return rate(puzzle.grid, puzzle.recipe, puzzle.words, rules);
}

}  // namespace lode
