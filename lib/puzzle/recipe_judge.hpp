#pragma once
// A recipe as a judge of grids: its words spelled, its rules in the order in which an audit takes them, and
// the search, which is kept from grid to grid.

#include <memory>
#include <mutex>
#include <optional>
#include <span>
#include <vector>

#include <letterlode/puzzle.hpp>

#include "puzzle/avoided_words.hpp"

namespace lode {

// Const calls may run on several threads at once.
class RecipeJudge {
  public:
    // Refused as unusable, as `audit` is. Of the rules the control is not used.
    [[nodiscard]] static Outcome<std::unique_ptr<RecipeJudge>> open(const Recipe& recipe,
                                                                    const CheckRules& rules);

    [[nodiscard]] const Segmenter& segmenter() const { return segmenter_; }
    [[nodiscard]] const WordList& list() const { return list_; }

    // Refused as unfinished where it was cancelled.
    [[nodiscard]] Outcome<Audit> audit(const LetteredGrid& grid, std::span<const PlacedWord> placed,
                                       const SearchControl& control) const;

  private:
    // A judge, and the letters by whose numbers it reads.
    struct Search {
        Alphabet alphabet;
        Judge judge;
    };
    RecipeJudge(Segmenter segmenter, WordList list)
        : segmenter_(std::move(segmenter)), list_(std::move(list)) {}
    [[nodiscard]] std::shared_ptr<const Search> search_for(const Alphabet& of_grid) const;
    [[nodiscard]] std::shared_ptr<const Search> built(Alphabet alphabet) const;
    [[nodiscard]] Alphabet with_all_letters(const Alphabet& known, const Alphabet& of_grid) const;
    [[nodiscard]] std::vector<std::optional<Placement>> places_of(std::span<const PlacedWord> placed) const;

    Segmenter segmenter_;
    WordList list_;
    std::vector<AuditedWord> words_;
    std::vector<AvoidedReading> avoided_;
    AuditRules rules_;
    mutable std::mutex mutex_;
    mutable std::shared_ptr<const Search> search_;  // of the grids before, if any
};

// What puzzle_of and rate do once the recipe is checked.
[[nodiscard]] Outcome<Puzzle> puzzle_of(LetteredGrid grid, Recipe recipe, const RecipeJudge& judge,
                                        std::span<const PlacedWord> placed, const SearchControl& control);
[[nodiscard]] Outcome<Rating> rate(const LetteredGrid& grid, const Recipe& recipe, const RecipeJudge& judge,
                                   std::span<const PlacedWord> placed, const RatingRules& rules);

}  // namespace lode
