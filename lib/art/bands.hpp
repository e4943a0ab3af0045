#pragma once
// The bands behind words: a capsule from the first letter's cell to the last one's, all of one radius. Bands
// that cross are one piece of film with one outline; cut one by one, the blade would go through film that
// lies on film.
//
// Measured in cells from the grid's upper left corner; the centre of the cell in row r, column c is (c + 0.5,
// r + 0.5).

#include <cstddef>
#include <span>
#include <vector>

#include <letterlode/grid.hpp>
#include <letterlode/path.hpp>

namespace lode {

// A straight line of cells; both ends may be the same cell.
struct Band {
    Cell first;
    Cell last;
};

struct BandPiece {
    std::vector<std::size_t> bands;  // places in the span, ascending
    Path path;
};

// Where a band that steps diagonally from one cell to the next stays out of a circle about the cell beside
// them.
struct Waist {
    Cell from;
    Cell to;
    Cell beside;
    double radius;
};

// The union of the capsules, each narrowed where it has waists: lines, and arcs of true circles as Bezier
// curves. Pieces are in order of their first band. The radius must be above 0 and below 0.5. Holes of less
// than least_hole (in square cells) are filled. A waist counts for every band that has its step, and all
// waists of a call have at most two radii: the bands' own, and one other. Throws std::invalid_argument for a
// radius out of bounds, also where a waist's and the bands' together reach 1, or a band along none of the
// eight directions.
[[nodiscard]] std::vector<BandPiece> unite_bands(std::span<const Band> bands, double radius,
                                                 double least_hole, std::span<const Waist> waists = {});

}  // namespace lode
