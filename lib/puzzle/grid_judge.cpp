// A recipe's judge, for those who have many grids.

#include "puzzle/recipe_judge.hpp"

namespace lode {

struct GridJudge::State {
    Recipe recipe;
    std::unique_ptr<RecipeJudge> judge;
};

GridJudge::GridJudge(std::unique_ptr<State> state) : state_(std::move(state)) {}
GridJudge::GridJudge(GridJudge&&) noexcept = default;
GridJudge& GridJudge::operator=(GridJudge&&) noexcept = default;
GridJudge::~GridJudge() = default;

Outcome<GridJudge> GridJudge::open(Recipe recipe, const CheckRules& rules) {
    auto judge = RecipeJudge::open(recipe, rules);
    if (!judge) return judge.refusal();
    return GridJudge(std::unique_ptr<State>(new State{std::move(recipe), std::move(*judge)}));
}

const Segmenter& GridJudge::segmenter() const {
    return state_->judge->segmenter();
}

Outcome<Audit> GridJudge::audit(const LetteredGrid& grid, std::span<const PlacedWord> placed,
                                const SearchControl& control) const {
    return state_->judge->audit(grid, placed, control);
}

Outcome<Puzzle> GridJudge::puzzle_of(LetteredGrid grid, std::span<const PlacedWord> placed,
                                     const SearchControl& control) const {
    return lode::puzzle_of(std::move(grid), state_->recipe, *state_->judge, placed, control);
}

Outcome<Rating> GridJudge::rate(const LetteredGrid& grid, std::span<const PlacedWord> placed,
                                const RatingRules& rules) const {
    return lode::rate(grid, state_->recipe, *state_->judge, placed, rules);
}

}  // namespace lode
