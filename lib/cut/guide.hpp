#pragma once
// A drawing at true size to lay under the blank, or behind it, while films are applied.

#include <cstddef>
#include <string>
#include <vector>

#include <letterlode/art.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/paper.hpp>

namespace lode {

// How a guide is spread over pages: rows and columns of tiles, all of one size, that overlap. The blank lies
// in the middle of what they cover. Lengths in mm.
struct GuideTiles {
    PageSize page;  // upright or lying, whichever takes fewer pages
    Box area;       // of a page: where the drawing is
    double overlap = 0;
    int columns = 1;
    int rows = 1;
    // Where the area's upper left corner is on the blank.
    [[nodiscard]] Point corner(int column, int row) const {
        return {first.x + column * (area.width() - overlap), first.y + row * (area.height() - overlap)};
    }
    Point first;
};
GuideTiles guide_tiles(const BlankSize& blank, Paper paper);

// Where neighbouring pages are cut and laid on each other: within their overlap, where the fewest letters are
// cut through, and as near to its middle as that allows. In mm on the blank as it is worked at.
struct GuideJoints {
    int columns = 1;
    std::vector<double> uprights;  // x, row by row: columns - 1 each
    std::vector<double> levels;    // y, row by row, the last row without
    // Between this page and the next to the right, or below.
    [[nodiscard]] double upright(int column, int row) const {
        return uprights[static_cast<std::size_t>(row * (columns - 1) + column)];
    }
    [[nodiscard]] double level(int column, int row) const {
        return levels[static_cast<std::size_t>(row * columns + column)];
    }
};
GuideJoints guide_joints(const Artwork& artwork, const GuideTiles& tiles);

// PDF: the blank's edge, each piece tinted and outlined in the order of application, and centre lines, as the
// maker sees them while working: mirrored for the second surface. On each page a ruler of 100 mm and 4 in to
// hold the print against; where there are several pages, lines to cut and to lay them on, and a small map.
// Refused as unusable where the font of its notes, DejaVu Sans, is not installed.
Outcome<std::string> guide_pdf(const Artwork& artwork, Paper paper);

}  // namespace lode
