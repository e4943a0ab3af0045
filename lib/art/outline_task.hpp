#pragma once
// What the operations of combine.hpp share: outlines in, the loops round what is inside out.

#include <letterlode/path.hpp>

#include "art/arrangement.hpp"

namespace lode {

class OutlineTask {
  public:
    // Adds what the contours' curves turn round. Curves that were added already, in either direction, are not
    // added again, but count more often or less. Throws std::invalid_argument for a coordinate that is no
    // number or beyond 1e9.
    void add(const Path& path, Turns turns);
    void add(const Contour& contour, Turns turns);
    [[nodiscard]] Path result(Inside inside) const;

  private:
    std::vector<Cubic> curves_;
    std::vector<Turns> turns_;
};

}  // namespace lode
