#pragma once
// The grids that are tried for a recipe, one after another.

#include <cstdint>
#include <optional>
#include <vector>

#include <letterlode/puzzle.hpp>

#include "puzzle/job.hpp"

namespace lode {

// Refused as unusable: a word that is longer than the mask allows in the directions.
[[nodiscard]] std::optional<Refusal> too_long_for(const Mask& mask, const Job& job);

// Sizes of the recipe's shape, with the proportions of `like`, on which the words can leave exactly so many
// cells over by the count of their letters: the best first, a few at the most.
[[nodiscard]] std::vector<Size> exact_sizes(const Recipe& recipe, const Job& job, std::size_t leftover,
                                            Size like);

// Where the recipe names a size or brings a mask there is one grid. Otherwise the sizes near the aspect are
// tried: from the smallest that is comfortable to larger ones; where cells are to be left over exactly, those
// on which the words can cover the rest, the ones with little overlap first; and for a tight grid from one
// that is easy enough to smaller ones, as long as they are found.
class Sizes {
  public:
    // Refused as unusable: a size or a mask that is too large, or a word too long for it; and where the size
    // is ours, words that no grid holds.
    [[nodiscard]] static Outcome<Sizes> open(const Recipe& recipe, const Job& job);

    [[nodiscard]] const Mask& mask() const { return mask_; }
    // Goes on to the next grid after a puzzle was made on this one, or none was. False where there is none.
    [[nodiscard]] bool go_on(bool made);
    // Whether a size is chosen here at all.
    [[nodiscard]] bool are_ours() const { return way_ != Way::given; }
    // How much of the recipe's effort one grid gets.
    [[nodiscard]] std::uint64_t effort_for_one() const;

  private:
    enum class Way { given, comfortable, exact, tight };
    Sizes(const Recipe& recipe, const Job& job) : recipe_(&recipe), job_(&job) {}

    [[nodiscard]] std::optional<Refusal> start();
    [[nodiscard]] std::optional<Refusal> start_given();
    [[nodiscard]] bool grow(std::size_t wanted);
    [[nodiscard]] std::optional<Refusal> start_exact();
    [[nodiscard]] std::optional<Refusal> start_tight();
    struct Choice {
        Size size;
        double open;  // cells
    };
    friend std::vector<Size> exact_sizes(const Recipe& recipe, const Job& job, std::size_t leftover,
                                         Size like);
    [[nodiscard]] std::vector<Choice> choices_near(double least, double most) const;
    [[nodiscard]] std::vector<Choice> exact_choices(double left) const;
    void take(std::size_t choice);
    [[nodiscard]] std::size_t room_wanted() const;

    const Recipe* recipe_;
    const Job* job_;
    Way way_ = Way::given;
    Mask mask_;
    int tried_ = 1;
    std::vector<Choice> choices_;  // exact in the order to try them, tight by size
    std::size_t at_ = 0;
    bool found_ = false;    // tight: a puzzle was made
    bool went_up_ = false;  // tight: the first size gave none
    int failed_ = 0;        // tight: sizes in a row that gave none
};

}  // namespace lode
