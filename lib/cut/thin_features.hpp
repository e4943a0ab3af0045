#pragma once
// Where a shape is too thin for its material to hold, or the space in it or beside it too narrow to be
// weeded.
//
// Method: the medial axis of the outline (medial_axis.hpp), that is, the discs that fit and touch two edges.
// Eroding the shape and counting its pieces misses a limb that vanishes as a whole, and what an opening
// leaves behind counts every acute corner as thin; the axis does neither.
//
// A disc measures a place by its diameter where all of this holds:
// 1. Opposite edges: seen from its centre, its two contacts lie at least so many degrees apart (a stroke 150,
// a gap
//    170). A gap's edges may diverge less, since waste that widens outward comes away with the hook: the
//    notch of a V is nothing to be lost, the aperture of a C, the space between the arms of an E and a slit
//    are. At a waist the contacts lie 180 degrees apart, so it is found in either.
// 2. No mere corner: from a corner sharper than a right angle the width grows as in a wedge for some way. The
// place is
//    measured where the edges no longer aim at the corner: where, prolonged, they would meet twice as far
//    away as the corner is or farther (or where the width ceases to grow). A straight wedge and a crescent's
//    horn have no such place.
// 3. A piece or a counter without any such place (a triangle, a round dot) is as narrow as the largest disc
// in it. Lengths enter as ratios only, so scaling the path scales every answer.
//
// Accuracy: what is found on chords is put right on the curves, contacts by Newton's method and waists and
// limits of rules 1 and 2 by iteration. Shapes of known width come out within 1e-4 of it, letters within 0.01
// mm of an independent method at capitals of 8 mm (tests/support/shrinking_ball.hpp). Edges nearer than 1e-5
// of the path's size count as touching; a fold of an outline that is wider than this counts as a stroke or a
// gap. Paths are filled by the nonzero rule; contours that touch, overlap or run the wrong way are joined
// first. Cost: O(n log n) for n chords: 1 ms for a letter, some 3 ms where a font's curves are many and
// slight.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include <letterlode/path.hpp>

namespace lode {

// A place where a shape, or the space between shapes, is narrow. Lengths are the path's.
struct NarrowPlace {
    double width = 0;
    Point middle;
    Point from;  // the nearest points of the two edges; in a largest disc (rule 3), the two contacts most
                 // opposed
    Point to;
};

struct Narrowest {
    std::optional<NarrowPlace> stroke;  // none where nothing is filled
    std::optional<NarrowPlace>
        gap;  // in counters, apertures and between contours; many letters have none (L, V)
};

[[nodiscard]] Narrowest narrowest(const Path& path);

// Every separate place narrower than the bound, narrowest first, at most so many. Along the axis, one stretch
// narrower than the bound is one place, measured where it is narrowest; a limb that leaves another starts
// anew.
[[nodiscard]] std::vector<NarrowPlace> narrow_strokes(const Path& path, double under, std::size_t most);
[[nodiscard]] std::vector<NarrowPlace> narrow_gaps(const Path& path, double under, std::size_t most);

struct NearPieces {
    std::size_t one = 0;  // the lower index
    std::size_t other = 0;
    NarrowPlace place;
};

// All pairs of pieces (neighbouring letters, a letter and the border) less than `under` apart, narrowest
// first, and where they come nearest. Pieces that touch or cover one another are 0 apart; a piece inside
// another's counter is as far from it as their edges are. Exact to about 1e-6 of a piece's size. O(n log n)
// for n pieces spread over a plane, and for each near pair the parts of their outlines within the bound.
[[nodiscard]] std::vector<NearPieces> near_pieces(std::span<const Path> pieces, double under);

}  // namespace lode
