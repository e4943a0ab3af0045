#pragma once
// From a skeleton to an outline: what a broad pen leaves behind that is held square to its way along a chain
// of lines and circular arcs.

#include <limits>
#include <vector>

#include "art/arc_outline.hpp"

namespace lode {

// How the pen's mark ends: square to the skeleton, or cut along a level or a plumb line through its last
// point. Only a straight edge can be cut so.
enum class StrokeEnd { square, level, plumb };

// Edges that follow each other. Where they turn sharply, the outer side runs to a point, which is cut off
// where it would leave the frame.
struct Chain {
    std::vector<ArcEdge> edges;
    bool closed = false;
    StrokeEnd start = StrokeEnd::square;
    StrokeEnd end = StrokeEnd::square;
    Box frame{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(),
              std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
};

// The contours wind about all that the pen covers, once or more: they may cross themselves at sharp turns,
// and outline_of_union() makes plain outlines of them. Arcs must have a radius over half the width.
[[nodiscard]] std::vector<ArcContour> stroked(const Chain& chain, double width);

}  // namespace lode
