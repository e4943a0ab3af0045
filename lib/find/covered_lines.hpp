#pragma once
// Which parts of a grid's lines are covered by copies.

#include <vector>

#include <letterlode/find.hpp>

namespace lode {

// Built once from copies. Linear in them but for a sort; asking takes a logarithm.
class CoveredLines {
  public:
    explicit CoveredLines(std::vector<Copy> copies);
    // Whether one of the copies holds every cell of this one, in its line.
    [[nodiscard]] bool holds(const Copy& copy) const;

  private:
    // Cells from `start` to `end` along one of four axes, the two ways of each being one.
    struct Span {
        int axis = 0;
        int line = 0;
        int start = 0;
        int end = 0;
    };
    [[nodiscard]] static Span span_of(const Copy& copy);
    std::vector<Span> spans_;  // by axis, line and start; `end` is the farthest of a line's spans so far
};

}  // namespace lode
