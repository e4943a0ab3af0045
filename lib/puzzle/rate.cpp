// What a reader meets in a puzzle, or in any grid with a list.

#include <map>

#include <letterlode/puzzle.hpp>

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

}  // namespace

Outcome<Rating> rate(const LetteredGrid& grid, const Recipe& recipe, std::span<const PlacedWord> placed,
                     const RatingRules& rules) {
    const auto segmenter = Segmenter::open(recipe.text);
    if (!segmenter) return segmenter.refusal();
    const auto list = spell(recipe.words, *segmenter);
    if (!list) return list.refusal();

    std::map<std::vector<std::string>, Standing> known;
    for (const PlacedWord& word : placed)
        known.emplace(word.letters,
                      Standing{word.placed, recipe.nested == Nested::inside && !word.inside.empty()});
    std::map<std::string, Standing> met;
    if (known.empty()) {
        const auto audited = audit(grid, recipe);
        if (!audited) return audited.refusal();
        met = standing_of(*audited);
    }
    std::vector<SoughtWord> words;
    for (const Word& word : list->words) {
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
    reader.right_to_left = is_right_to_left(list->words.front().shown);
    auto difficulty = rate_difficulty(grid, words, reader);
    if (!difficulty) return difficulty.refusal();
    return Rating{
        rate_readability(grid, rules.looks ? *rules.looks : built_in_looks(grid.alphabet), rules.seen),
        std::move(*difficulty)};
}

Outcome<Rating> rate(const Puzzle& puzzle, const RatingRules& rules) {
    return rate(puzzle.grid, puzzle.recipe, puzzle.words, rules);
}

}  // namespace lode
