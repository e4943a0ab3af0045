#pragma once
// The plane cut up by chords, on whole numbers: which side of each chord lies inside, and the loops round
// what does.
//
// Idea: chords are cut where they cross, touch or run along each other, until any two of the pieces meet in
// their ends at most; equal pieces become one that remembers all its curves. Crossings are rounded to the
// lattice and a corner within one unit of a chord is taken to lie on it, which moves chords a little; so this
// is repeated until nothing is left to cut (iterated snap rounding: Halperin and Packer 2002, from memory).
// From then on all is exact: how often the outlines go round each side of a piece is counted along a ray, and
// loops are closed by the angles round their corners. Where shapes touch in a corner alone, loops are split
// there, so that none passes through a point twice.

#include <optional>
#include <span>
#include <vector>

#include "art/chords.hpp"

namespace lode {

// How often each of two outlines goes round a face, clockwise to the eye.
struct Turns {
    int one = 0;
    int other = 0;
    friend bool operator==(const Turns&, const Turns&) = default;
};

enum class Inside {
    either,    // the first outline goes round it, in whatever sense
    backward,  // the first goes round it against the clock
    one_only,  // the first does, and not the second
    both       // both do
};

// A stretch of a curve; first > last where it is gone along backward.
struct Trace {
    int curve = 0;
    double first = 0;
    double last = 1;
};
// The traces are different curves that run alike here.
struct LoopEdge {
    LatticePoint from;
    std::vector<Trace> traces;
};
// What is inside lies to the right of the way, as the eye sees it: outer loops have a positive area.
using Loop = std::vector<LoopEdge>;

// `turns`: for each curve what crossing it adds. Loops thinner than three units are left out. Nothing where
// the cutting did not come to an end; a coarser lattice then may do.
[[nodiscard]] std::optional<std::vector<Loop>> loops_of(const Chords& chords, std::span<const Turns> turns,
                                                        Inside inside);

}  // namespace lode
