// A grid that was made elsewhere, with its words where the audit finds them.

#include <algorithm>

#include "puzzle/recipe_judge.hpp"

namespace lode {

Outcome<Puzzle> puzzle_of(LetteredGrid grid, Recipe recipe, std::span<const PlacedWord> placed,
                          const SearchControl& control) {
    const auto judge = RecipeJudge::open(recipe, {});
    if (!judge) return judge.refusal();
    return puzzle_of(std::move(grid), std::move(recipe), **judge, placed, control);
}

Outcome<Puzzle> puzzle_of(LetteredGrid grid, Recipe recipe, const RecipeJudge& judge,
                          std::span<const PlacedWord> placed, const SearchControl& control) {
    auto found = judge.audit(grid, placed, control);
    if (!found) return found.refusal();
    Puzzle puzzle;
    for (std::size_t i = 0; i < judge.list().words.size(); ++i) {
        const Word& word = judge.list().words[i];
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
