#pragma once
// The algebra of outlines, with their curves kept: what is joined or cut consists of pieces of the curves
// that went in, meeting where those curves meet.
//
// Outlines are filled by the nonzero rule and may be of any kind: contours that cross themselves or each
// other, run along each other, lie one upon another, turn either way, enclose nothing or stand open (a line
// closes them). A shape counts as filled wherever its contours go round in sum, clockwise or not: so a path
// whose outlines all run the wrong way is taken as it is meant, and one whose contours disagree should have
// been put in order before (path.hpp).
//
// Results obey path.hpp: outer contours of positive area, holes of negative; no contour crosses itself or
// another, and any two have single points in common at most. Contours come in the order in which the input
// names their first curve. What nothing crosses, touches or hides comes back bit for bit, turned round where
// path.hpp asks for it.
//
// Corners are found on the curves themselves. Topology is decided on a lattice of 2^-29 of the whole
// drawing's larger side (0.5 nm on a panel of 250 mm): what is nearer than that touches, and what is thinner
// than three units is left out. Time: n log n in the segments for outlines drawn by hand, more where many lie
// across each other.
//
// Coordinates that are no numbers, or beyond 1e9, throw std::invalid_argument; curves that lie across each
// other millions of times throw std::length_error.

#include <span>
#include <vector>

#include <letterlode/path.hpp>

namespace lode {

// What the path fills.
[[nodiscard]] Path united(const Path& path);
// What any of the paths fills, whichever way each runs.
[[nodiscard]] Path united(std::span<const Path> paths);
// What `from` fills and `taken` does not.
[[nodiscard]] Path cut_out(const Path& from, const Path& taken);
// What both fill. shared and cut_out of the same two paths in the same order part `from` along the very same
// curves: their areas add up to that of `from` to rounding.
[[nodiscard]] Path shared(const Path& one, const Path& other);

// Each outer contour of a result of the above followed by its own holes, in the order of the outer contours.
[[nodiscard]] std::vector<Path> parts_of(const Path& united);

// All points no further than `by` from what the path fills; where `by` is negative, all points of it that are
// at least -by inside. Corners are rounded by arcs (path.hpp's append_arc); offset curves are followed to
// within 1e-4 of |by|.
[[nodiscard]] Path grown(const Path& path, double by);

}  // namespace lode
