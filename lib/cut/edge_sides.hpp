#pragma once
// An outline as straight sides on a lattice of whole numbers that nowhere cross or touch but at their ends:
// what a Voronoi diagram of segments wants. Each side knows the stretch of curve that it stands for.

#include <cstdint>
#include <vector>

#include "cut/edge_curve.hpp"

namespace lode {

constexpr double lattice_size = 1048576;  // 2^20: far finer than any blade, and quick to reckon with exactly
// How far a side strays from its curve at most, in lattice units.
constexpr double chord_tolerance = lattice_size / 2048;

struct SidePoint {
    std::int32_t x = 0;
    std::int32_t y = 0;
    friend bool operator==(const SidePoint&, const SidePoint&) = default;
    friend auto operator<=>(const SidePoint&, const SidePoint&) = default;
};

// The filled side of the outline lies where cross(to - from, p - from) is positive.
struct Side {
    SidePoint from;
    SidePoint to;
    OnCurve begin;
    OnCurve end;  // on the same curve as begin
};

struct EdgeSides {
    Point origin;                   // of the lattice, in the path's units
    double scale = 1;               // lattice units in one of the path's
    std::vector<EdgeCurve> curves;  // in lattice units, not rounded
    std::vector<Side> sides;

    [[nodiscard]] Point in_path(Point lattice) const { return origin + (1 / scale) * lattice; }
};

// The path is scaled so that its greater side measures 2^20 units, so the result is the same for a path
// scaled and moved, up to rounding. Chords stray from the curves by at most 2^-11 of that size. Where
// contours touch or cross, or the fill is not what their turning says, they are joined first (nonzero), and
// sides that a crossing cut stand for themselves. Empty where nothing is filled. O(n log n + k) for n sides
// of which k pairs share a stretch of x.
[[nodiscard]] EdgeSides edge_sides(const Path& path);

}  // namespace lode
