#pragma once
// A region as straight edges, and what is inside it.

#include <cstddef>
#include <vector>

#include <letterlode/path.hpp>

namespace lode {

class Room {
  public:
    struct Edge {
        Point from;
        Point to;
        Box box;
    };

    explicit Room(const Path& region);

    [[nodiscard]] const std::vector<Edge>& edges() const { return edges_; }
    [[nodiscard]] const Box& box() const { return box_; }
    [[nodiscard]] bool empty() const { return edges_.empty(); }
    // By the nonzero rule; either where the point is on an edge. Looks at the edges of one strip.
    [[nodiscard]] bool inside(Point p) const;

  private:
    [[nodiscard]] std::size_t strip(double y) const;
    std::vector<Edge> edges_;
    std::vector<std::vector<std::size_t>> strips_;
    Box box_;
};

}  // namespace lode
