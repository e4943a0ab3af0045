#pragma once
// Letters drawn by their weights, in the same time however many there are.

#include <cstdint>
#include <vector>

#include <letterlode/text.hpp>

#include "random/random.hpp"

namespace lode {

// The alias method: Walker, "An efficient method for generating discrete random variables with general
// distributions", ACM TOMS 3(3), 1977; set up as Vose, "A linear algorithm for generating random numbers with
// a given distribution", IEEE Trans. Software Engineering 17(9), 1991; here in whole numbers.
class LetterDraw {
  public:
    // A weight a letter, 0 where it is never drawn.
    explicit LetterDraw(const std::vector<std::uint32_t>& weights);

    // Whether there is a letter to draw.
    [[nodiscard]] bool can_draw() const { return !columns_.empty(); }
    [[nodiscard]] Letter draw(Random& random) const {
        const Column& column = columns_[random.below(static_cast<std::uint32_t>(columns_.size()))];
        return random.below(height_) < column.own ? column.letter : column.alias;
    }

  private:
    // Of each column's height the lower part is its own letter's, the rest another's.
    struct Column {
        std::uint32_t own;
        Letter letter;
        Letter alias;
    };
    std::uint32_t height_ = 0;  // the sum of the weights
    std::vector<Column> columns_;
};

}  // namespace lode
