#pragma once
// What a file of shapes is made from, whatever its format: groups of closed pieces, and single cuts, on a
// page of a given size. Everything stands as it is cut: already mirrored where the surface asks for it.
// Millimetres, x to the right, y down from the page's upper left corner.

#include <optional>
#include <string>
#include <vector>

#include <letterlode/colour.hpp>
#include <letterlode/export.hpp>
#include <letterlode/grid.hpp>
#include <letterlode/path.hpp>

namespace lode {

/// One thing to be lifted and laid: a letter with its marks, or a band with all the words that it joins.
struct Piece {
    std::string name;            ///< "A at row 3, column 4"
    Path path;                   ///< its outlines
    std::optional<Cell> cell{};  ///< of a letter of the grid
};

/// A cut that parts waste from waste.
struct CutLine {
    Point from;  ///< one end
    Point to;    ///< the other end
    friend bool operator==(const CutLine&, const CutLine&) = default;
};

/// One colour of film.
struct DrawnGroup {
    std::string name;            ///< of letters, digits and hyphens
    Colour colour;               ///< of the film
    std::vector<Piece> pieces;   ///< filled
    std::vector<CutLine> lines;  ///< cut, and not filled
};

/// A page of shapes.
struct Drawing {
    double width_mm = 0;             ///< of the page
    double height_mm = 0;            ///< of the page
    std::string title;               ///< one line
    std::string description;         ///< size, surface, order
    std::vector<DrawnGroup> groups;  ///< in the order in which they are painted
};

/// SVG 1.1 at true size: width, height and viewBox in mm, a named group for each of the drawing's, a path a
/// piece, closed, filled nonzero; single cuts as lines without a filling. Groups are painted in their order.
[[nodiscard]] LODE_API std::string to_svg(const Drawing& drawing);

/// PDF: one page at true size, pieces filled, single cuts as lines. Without a date.
[[nodiscard]] LODE_API std::string to_pdf(const Drawing& drawing);

inline constexpr double dxf_tolerance_mm = 0.01;  ///< between a chord and its curve

/// DXF of release 2000 (AC1015) in millimetres, with y up from the page's lower left corner: a layer for each
/// group, of the nearest of the format's numbered colours, each contour a closed LWPOLYLINE, each single cut
/// a LINE. Chords leave a curve by no more than dxf_tolerance_mm; corners, and where a curve turns back from
/// left, right, top or bottom, are kept. ASCII only: names of layers hold letters, digits, '-' and '_', each
/// once.
[[nodiscard]] LODE_API std::string to_dxf(const Drawing& drawing);

}  // namespace lode
