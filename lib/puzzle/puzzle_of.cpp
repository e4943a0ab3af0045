// A grid that was made elsewhere, with its words where the audit finds them.

#include <algorithm>

#include <letterlode/puzzle.hpp>

namespace lode {

Outcome<Puzzle> puzzle_of(LetteredGrid grid, Recipe recipe, std::span<const PlacedWord> placed,
                          const SearchControl& control) {
    const auto segmenter = Segmenter::open(recipe.text);
    if (!segmenter) return segmenter.refusal();
    const auto list = spell(recipe.words, *segmenter);
    if (!list) return list.refusal();
    auto found = audit(grid, recipe, placed, {{}, 4, control});
    if (!found) return found.refusal();
    Puzzle puzzle;
    for (std::size_t i = 0; i < list->words.size(); ++i) {
        const Word& word = list->words[i];
        const WordFinding& finding = found->words.at(i);
        const auto known = std::find_if(placed.begin(), placed.end(),
                                        [&](const PlacedWord& one) { return one.letters == word.letters; });
        if (known != placed.end()) {
            puzzle.words.push_back(*known);
        } else if (!finding.copies.empty()) {
            // Copies inside other words are the expected ones where such a word has no place of its own.
            const auto inner = std::find_if(finding.inside.begin(), finding.inside.end(),
                                            [](const std::string& outer) { return !outer.empty(); });
            const auto copy = inner == finding.inside.end()
                                  ? std::size_t{0}
                                  : static_cast<std::size_t>(inner - finding.inside.begin());
            puzzle.words.push_back({word.shown,
                                    word.letters,
                                    {finding.copies[copy].first, finding.copies[copy].direction},
                                    inner == finding.inside.end() ? std::string() : *inner});
        }
    }
    recipe.size = grid.grid.size();
    puzzle.recipe = std::move(recipe);
    puzzle.grid = std::move(grid);
    puzzle.audit = *std::move(found);
    return puzzle;
}

}  // namespace lode
