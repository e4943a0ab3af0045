// A drawing as a PDF of one page at true size.

#include <letterlode/drawing.hpp>

#include "print/pdf_document.hpp"

namespace lode {

namespace {

// For the eye only, and as wide as in SVG: a cut has no width.
constexpr double line_width_mm = 0.1;

}  // namespace

std::string to_pdf(const Drawing& drawing) {
    PdfDocument page({drawing.width_mm, drawing.height_mm}, drawing.title);
    for (const DrawnGroup& group : drawing.groups) {
        for (const Piece& piece : group.pieces) page.fill(piece.path, group.colour);
        for (const CutLine& line : group.lines)
            page.line(line.from, line.to, {line_width_mm, group.colour, {}});
    }
    return page.bytes();
}

}  // namespace lode
