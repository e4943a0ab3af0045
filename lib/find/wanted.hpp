#pragma once
// Which of the ways in which a copy can be read is the one that is given.

#include <letterlode/grid.hpp>

namespace lode {

class Wanted {
  public:
    explicit Wanted(Directions directions) : directions_(directions) {
        for (const Direction direction : all_directions)
            if (directions.contains(direction)) {
                letter_ = direction;
                break;
            }
    }
    [[nodiscard]] bool direction(Direction direction) const { return directions_.contains(direction); }
    // A palindrome is met from both its ends. The first four directions are the ones that it is given in.
    [[nodiscard]] bool palindrome(Direction direction) const {
        return this->direction(direction) &&
               (static_cast<unsigned>(direction) < 4 || !directions_.contains(opposite(direction)));
    }
    // A single letter is met in every direction, and given in the first that is asked for.
    [[nodiscard]] Direction letter() const { return letter_; }
    [[nodiscard]] bool nothing() const { return directions_.empty(); }

  private:
    Directions directions_;
    Direction letter_ = Direction::right;
};

}  // namespace lode
