#pragma once
// One piece of an outline as a curve that can be asked for its nearest point: what is found on a flattened
// copy is put right on the curve itself.

#include <cstddef>
#include <vector>

#include <letterlode/path.hpp>

#include "art/cubic.hpp"

namespace lode {

// A line or a cubic Bezier curve over t from 0 to 1.
struct EdgeCurve {
    Point start;
    Segment segment;

    [[nodiscard]] Point at(double t) const;
    [[nodiscard]] Point speed(double t) const;  // the first derivative by t
    [[nodiscard]] Point bend(double t) const;   // the second
    [[nodiscard]] EdgeCurve between(double from, double to) const;
    // The t nearest to a point among those near the guess: four steps of Newton's method on the squared
    // distance, kept within 0 to 1. Steps of steepest descent where the curve bends away from the point.
    [[nodiscard]] double nearest(Point to, double guess) const;
    // Into how many parts of equal t to cut it so that chords stray no further than the tolerance: at most
    // h^2/8 of the second derivative (C. de Boor, A Practical Guide to Splines, 1978, chapter III), of which,
    // where the curve is nowhere steep to its chord, what runs along the chord counts by the steepness alone.
    [[nodiscard]] int parts(double tolerance) const;
};

// A point on the curve with this index of an outline's curves.
struct OnCurve {
    std::size_t curve = 0;
    double t = 0;
};

}  // namespace lode
