#pragma once
// The medial axis of an outline, inside and outside of what is filled: the centres of all empty discs that
// touch the outline in two places or more (H. Blum, A Transformation for Extracting New Descriptors of Shape,
// 1967). It is the Voronoi diagram of the outline's sides, without the edges that end at a side's own ends;
// Boost.Polygon computes it (A. Sydorchuk) by S. Fortune's sweep (A Sweepline Algorithm for Voronoi Diagrams,
// 1987) with exact predicates.

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "cut/edge_sides.hpp"

namespace lode {

// What a disc touches: a side, or one of its ends.
struct Site {
    enum class Kind : std::uint8_t { body, from, to };
    std::uint32_t side = 0;
    Kind kind = Kind::body;
};

// An edge of the axis, between two of its nodes, or to infinity (then between two ends of sides). Seen from
// the first node to the second, the first site is where cross(second - first, site - first) is positive.
struct AxisEdge {
    static constexpr std::uint32_t infinite = 0xFFFFFFFF;
    std::array<std::uint32_t, 2> nodes{infinite, infinite};
    std::array<Site, 2> sites{};  // the two that the discs along it touch
    bool straight = true;         // or the piece of a parabola
};

struct AxisNode {
    Point centre;
    double radius = 0;
    std::uint32_t region = 0;  // of no meaning at a corner
};

// A connected part of the filled, or of what is not: a piece without its counters, a counter, or all around.
struct AxisRegion {
    bool filled = false;
    bool bounded = true;
};

struct MedialAxis {
    std::vector<AxisNode> nodes;
    std::vector<AxisEdge> edges;
    std::vector<AxisRegion> regions;
    // By node: edges[adjacent[k]] for k from first_adjacent[node] to first_adjacent[node + 1].
    std::vector<std::uint32_t> first_adjacent;
    std::vector<std::uint32_t> adjacent;

    // A node this near to the outline, in lattice units, is one of its corners.
    static constexpr double corner_radius = 2;
    [[nodiscard]] bool at_corner(std::uint32_t node) const { return nodes[node].radius < corner_radius; }
};

// The point of a site, on the side's chord, that is nearest to a point in its cell.
[[nodiscard]] Point nearest_on(const EdgeSides& edges, const Site& site, Point to);

// O(n log n) for n sides.
[[nodiscard]] MedialAxis medial_axis(const EdgeSides& edges);

}  // namespace lode
