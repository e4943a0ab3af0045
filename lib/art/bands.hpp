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

// The largest radius, in cells, that keeps bands apart that share no cell and do not cross: a wide one, or,
// where a band passes or ends next to a diagonal one, 0.71 cells away, a narrow one.
[[nodiscard]] double band_radius(std::span<const Band> bands);

// The union of the capsules: lines, and arcs of true circles as Bezier curves. Pieces are in order of their
// first band. The radius must be above 0 and below 0.5. Holes of less than least_hole (in square cells) are
// filled. Throws std::invalid_argument for a radius out of bounds or a band along none of the eight
// directions.
[[nodiscard]] std::vector<BandPiece> unite_bands(std::span<const Band> bands, double radius,
                                                 double least_hole);

}  // namespace lode
