#pragma once
// The way back from a loop of lattice edges to the curves that they stand for.
//
// Edges of one curve in a row become one piece of that curve, cut at the parameters of its ends. Where two
// curves meet, the corner is sought on the curves themselves by Newton's method, since the lattice's crossing
// is that of two chords. Where they only touch there may be no such point: the corner then lies on the first
// of both, and the other is moved to it, by a lattice unit or so. The same two curves give the same corner in
// whatever loop they meet: a cut leaves no gap and no overlap between what it parts.

#include <span>

#include "art/arrangement.hpp"

namespace lode {

class CurveRecovery {
  public:
    // Both must outlive this.
    CurveRecovery(std::span<const Cubic> curves, const Lattice& lattice)
        : curves_(curves), lattice_(lattice) {}
    // Starts where the first of its curves, in the order of the curves, does: so a contour that nothing met
    // comes back as it was. Empty where nothing is left of it.
    [[nodiscard]] Contour curved(const Loop& loop) const;
    // What loops are ordered by: the place of their first curve, and the parameter on it.
    [[nodiscard]] static std::pair<int, double> order(const Loop& loop);

  private:
    struct Corner {
        Point at;
        double before = 0;  // the parameter of the piece that ends here
        double after = 0;   // and of the one that starts
    };
    [[nodiscard]] Corner corner(const Trace& before, const Trace& after) const;
    [[nodiscard]] Corner meeting(int one, double t, int other, double s) const;
    [[nodiscard]] double nearest(const Cubic& curve, double t, Point p) const;
    [[nodiscard]] const Cubic& curve(int i) const { return curves_[static_cast<std::size_t>(i)]; }

    std::span<const Cubic> curves_;
    const Lattice& lattice_;
};

}  // namespace lode
