#pragma once
// Curves as chords on a lattice of whole numbers, fine only where curves come near each other.
//
// A chord stands for a piece of a curve that lies within `sag` of it. Far from all others a chord may be as
// coarse as it likes: which side of it a far point lies on is the same for the chord and the curve. Where two
// of these fat chords meet they are halved until they part, or until both are within a quarter of a lattice
// unit of their curves. So a crossing costs a dozen halvings, and a curve that meets nothing costs none.

#include <cstdint>
#include <span>
#include <utility>
#include <vector>

#include "art/cubic.hpp"

namespace lode {

struct LatticePoint {
    std::int64_t x = 0;
    std::int64_t y = 0;
    friend bool operator==(const LatticePoint&, const LatticePoint&) = default;
    friend auto operator<=>(const LatticePoint&, const LatticePoint&) = default;
};

// Coordinates stay within 2^28 of 0, so that the cross product of two differences, even of doubled points,
// fits 64 bits.
struct Lattice {
    Point centre;
    double scale = 1;  // units of the lattice in one of the outline's; a power of two

    // The finest that holds the curves. `coarser`: by so many halvings than the finest.
    static Lattice around(std::span<const Cubic> curves, int coarser);
    [[nodiscard]] Point scaled(Point p) const { return scale * (p - centre); }
    [[nodiscard]] LatticePoint nearest(Point p) const;
};

struct Chord {
    int curve = 0;
    double first = 0;  // the curve's parameters
    double last = 1;
    LatticePoint from, to;
    double sag = 0;   // in lattice units
    Cubic scaled;     // the piece, in lattice units
    int halves = -1;  // the place of the first half, the second follows it; -1 for a leaf
};

struct Chords {
    std::vector<Chord> all;  // leaves are what counts; those of no length too
    // Leaves that come within a few units of each other, other than smooth neighbours at the point that they
    // share.
    std::vector<std::pair<int, int>> near;
};

// Throws std::length_error where millions of chords come near each other: nobody draws that.
[[nodiscard]] Chords chords_of(std::span<const Cubic> curves, const Lattice& lattice);

}  // namespace lode
