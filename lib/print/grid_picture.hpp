#pragma once
// A puzzle's grid on a page: a table to those who hear it, letters in their cells to those who see it.

#include <letterlode/print.hpp>

#include "print/pdf_document.hpp"

namespace lode {

struct GridPicture {
    const Puzzle& puzzle;
    Point corner;  // of the first cell
    double cell_mm = 0;
    double letter_pt = 0;
    GridLines lines = GridLines::none;
    bool numbered = false;  // rows and columns, at the left and above, in cells of their own
    std::optional<KeyMarks> key = {};
    std::vector<Colour> colours = {};  // of the key's marks, in turn
};
void draw(PdfDocument& document, const GridPicture& picture);

// A letter's size in shares of its cell: the widest of the grid fits.
[[nodiscard]] double letter_share(const PdfDocument& document, const LetteredGrid& grid);

}  // namespace lode
