#pragma once
// A puzzle as artwork at true size: letters, heading and bands as closed outlines that a blade can follow, in
// layers, one colour of film each. Geometry is in millimetres, x to the right, y down from the blank's upper
// left corner, as the viewer sees the finished piece; what is written for the second surface is mirrored on
// its way out.
//
// In order: read_blank, draw, then layer_drawing and artwork_drawing with the formats of drawing.hpp, and
// preview_png, or cut_files (cut.hpp) for all at once. The same puzzle, options and font file give the same
// bytes.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/colour.hpp>
#include <letterlode/drawing.hpp>
#include <letterlode/export.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/path.hpp>
#include <letterlode/puzzle.hpp>
#include <letterlode/score.hpp>

namespace lode {

// The object to be decorated.
struct BlankSize {
    double width_mm = 0;
    double height_mm = 0;
    friend bool operator==(const BlankSize&, const BlankSize&) = default;
};
inline constexpr double least_blank_mm = 10;
inline constexpr double most_blank_mm = 5'000;
// Reads "8x10in", "203x254mm", "20.3x25.4cm" or "576x720pt" (72 points an inch), width by height. Refused as
// unusable: another form, and a side under least_blank_mm or over most_blank_mm.
[[nodiscard]] LODE_API Outcome<BlankSize> read_blank(std::string_view text);

// first: on the front of the blank. second: on the back of a clear blank, seen through it.
enum class Surface : std::uint8_t { first, second };
[[nodiscard]] LODE_API std::string_view name(Surface surface);
[[nodiscard]] LODE_API std::optional<Surface> surface_named(std::string_view name);

struct ArtworkOptions {
    BlankSize blank;                 // must be given
    std::optional<Surface> surface;  // must be given: the wrong one ruins film, so there is no default

    // A family or a fontconfig pattern ("DejaVu Sans:bold"); a file where it holds a '/' or ends in .ttf,
    // .otf or .ttc.
    std::string font = "DejaVu Sans:bold";
    // Set above the grid, a line for each line of the text; none where it is empty.
    std::string heading;

    bool draw_bands = true;  // without them the piece is still to be solved

    Colour letters{0x24, 0x3f, 0x3a};
    Colour bands{0xf0, 0xbf, 0x72};
    Colour heading_colour{0xa3, 0x4a, 0x2c};
};

// What one colour of film carries.
struct Layer {
    std::string name;  // "letters", "heading" or "bands"
    Colour colour;
    std::vector<Piece> pieces;
};

struct Artwork {
    BlankSize blank;
    Surface surface = Surface::first;
    std::vector<Layer> layers;  // in order of application; none without pieces

    std::string heading;             // its lines, tidied
    std::string font;                // the family and style that were used
    double cell_mm = 0;              // side of a cell
    Point grid_corner;               // upper left corner of row 1, column 1
    double cap_height_mm = 0;        // of the letters
    double heading_cap_mm = 0;       // of the heading; 0 where there is none
    double band_radius_mm = 0;       // 0 where there is no band
    std::vector<std::string> notes;  // what the maker should know before cutting, a sentence each

    [[nodiscard]] Point centre(Cell cell) const {
        return {grid_corner.x + (cell.column + 0.5) * cell_mm, grid_corner.y + (cell.row + 0.5) * cell_mm};
    }
};

// Bounds on what is drawn, so that no puzzle asks for more memory than a panel of this kind ever needs.
inline constexpr std::size_t max_drawn_letters = 40'000;
inline constexpr std::size_t max_drawn_words = 10'000;
inline constexpr std::size_t max_heading_lines = 8;
inline constexpr std::size_t max_heading_bytes = 1'000;
inline constexpr double least_cell_mm = 2;

// Columns over rows of a grid that would fill such a blank, below a heading of so many lines: for puzzles
// that are made for their panel. Right for grids of some fifteen letters along the shorter side, and near
// enough for others.
[[nodiscard]] LODE_API double grid_aspect(const BlankSize& blank, std::string_view heading);

// Fits the grid to the largest cells that the blank allows, every letter at the same cap height.
// Refused as unusable, naming the option, the letter or the font: options that were not given, a font that is
// not installed, broken or without outlines, a letter that the font lacks, a blank on which cells come out
// under least_cell_mm, an open cell without a letter, more than the bounds above.
[[nodiscard]] LODE_API Outcome<Artwork> draw(const Puzzle& puzzle, const ArtworkOptions& options);

// How a font draws the letters of an alphabet, for rate_readability: their ink, and how alike they look, by
// the areas of their outlines. Letters that the font lacks are not known. Of more than max_letters_compared
// letters none are compared. Quadratic in the letters: some 20 ms for the English alphabet, so keep it for
// many grids. Refused as unusable: a font that is not installed, broken or without outlines.
[[nodiscard]] LODE_API Outcome<LetterLooks> letter_looks(const Alphabet& alphabet, const std::string& font);

// The letters of a puzzle as they hang on a wall: measured on the outlines of the artwork's font, with the
// artwork's colours. The blank itself is taken to be white. Lengths in mm. Refused as draw is.
[[nodiscard]] LODE_API Outcome<LettersSeen> letters_seen(const Puzzle& puzzle, const Artwork& artwork,
                                                         const ArtworkOptions& options, double viewing_mm);
inline constexpr double least_viewing_mm = 100;
inline constexpr double most_viewing_mm = 100'000;
// Reads a distance: "1.5m", "60cm", "400mm", "5ft" or "24in". Refused as unusable: another form, and what
// lies outside the bounds.
[[nodiscard]] LODE_API Outcome<double> read_distance(std::string_view text);

// What is cut, as wide and as high as the blank, a group a layer; mirrored for the second surface. A layer is
// given by its place in artwork.layers; throws std::out_of_range.
[[nodiscard]] LODE_API Drawing layer_drawing(const Artwork& artwork, std::size_t layer);
// All layers, in the order in which they are painted: from the viewer's back to the front, whatever the order
// of application, so that no layer hides another.
[[nodiscard]] LODE_API Drawing artwork_drawing(const Artwork& artwork);

// A PNG picture of the finished piece on a wall, as its viewer sees it (never mirrored), its longer side so
// many pixels. Throws std::invalid_argument outside least_preview_px..most_preview_px.
inline constexpr int least_preview_px = 64;
inline constexpr int most_preview_px = 8'000;
[[nodiscard]] LODE_API std::string preview_png(const Artwork& artwork, int long_side_px);

}  // namespace lode
