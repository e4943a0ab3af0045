#pragma once
// A puzzle as artwork at true size: letters, heading and bands as closed outlines that a blade can follow, in
// layers, one colour of film each. Geometry is in millimetres, x to the right, y down from the blank's upper
// left corner, as the viewer sees the finished piece; what is written for the second surface is mirrored on
// its way out.
//
// In order: read_blank, draw, then layer_drawing and artwork_drawing with the formats of drawing.hpp, and
// preview_png, or cut_files (cut.hpp) for all at once. The same puzzle, options and font file give the same
// bytes.

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/blank.hpp>
#include <letterlode/colour.hpp>
#include <letterlode/drawing.hpp>
#include <letterlode/export.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/path.hpp>
#include <letterlode/puzzle.hpp>
#include <letterlode/score.hpp>

namespace lode {

/// first: on the front of the blank. second: on the back of a clear blank, seen through it.
enum class Surface : std::uint8_t { first, second };
[[nodiscard]] LODE_API std::string_view name(Surface surface);
[[nodiscard]] LODE_API std::optional<Surface> surface_named(std::string_view name);

/// What marks a word: a band with straight sides and round ends, one as if drawn with a brush (never the same
/// twice, and the same for the same seed), a ring of film about it, or nothing, for a piece that is still to
/// be solved.
enum class BandKind : std::uint8_t { capsule, brush, ring, none };
/// Every kind of mark, in the order of its number.
inline constexpr std::array all_band_kinds{BandKind::capsule, BandKind::brush, BandKind::ring,
                                           BandKind::none};
[[nodiscard]] LODE_API std::string_view name(BandKind kind);
[[nodiscard]] LODE_API std::optional<BandKind> band_kind_named(std::string_view name);

/// What is cut out so that no film lies on film: nothing; bands out of bands of other colours, where they
/// cross; or letters out of bands as well.
enum class Inlay : std::uint8_t { none, bands, all };
/// Every inlay, in the order of its number.
inline constexpr std::array all_inlays{Inlay::none, Inlay::bands, Inlay::all};
[[nodiscard]] LODE_API std::string_view name(Inlay inlay);
[[nodiscard]] LODE_API std::optional<Inlay> inlay_named(std::string_view name);

/// A border along the blank's outline.
enum class BorderStyle : std::uint8_t {
    line,         ///< one line that follows the outline
    double_line,  ///< a bold line of twice the breadth, and inside it a fine one
    rounded,      ///< one line with its corners rounded off
    notched,      ///< one line with a quarter of a circle taken out of each corner
    dotted,       ///< round dots of twice the breadth, a whole number of them from corner to corner
};
/// Every style, in the order of its number.
inline constexpr std::array all_border_styles{BorderStyle::line, BorderStyle::double_line,
                                              BorderStyle::rounded, BorderStyle::notched,
                                              BorderStyle::dotted};
/// "line", "double", "rounded", "notched", "dotted"
[[nodiscard]] LODE_API std::string_view name(BorderStyle style);
[[nodiscard]] LODE_API std::optional<BorderStyle> border_style_named(std::string_view name);

/// What stands between heading and grid, and in the corners where there is room.
enum class Ornament : std::uint8_t {
    leaf,     ///< sprigs of leaves in pairs
    curl,     ///< one stroke, rolled up at its ends
    diamond,  ///< diamonds and swelled rules
};
/// Every ornament, in the order of its number.
inline constexpr std::array all_ornaments{Ornament::leaf, Ornament::curl, Ornament::diamond};
[[nodiscard]] LODE_API std::string_view name(Ornament ornament);
[[nodiscard]] LODE_API std::optional<Ornament> ornament_named(std::string_view name);

/// A hole to hang the blank by. Nothing is set nearer to it than to the blank's edge.
struct HangingHole {
    Point centre;            ///< from the blank's upper left corner, as the viewer sees it
    double diameter_mm = 0;  ///< above 0
};
inline constexpr std::size_t max_holes = 32;  ///< of one blank

/// Common practice, no source: what survives weeding when it is cut from adhesive vinyl.
inline constexpr double usual_least_stroke_mm = 1;
inline constexpr double usual_least_gap_mm = 1;  ///< likewise, between two shapes or within one

/// The name of the alphabet that is drawn here by construction, and needs no font file.
inline constexpr std::string_view constructed_alphabet = "constructed";

/// What is drawn, on what, and how. Blank and surface must be given; the rest may stay as it is.
struct ArtworkOptions {
    Blank blank;                     ///< must be given
    std::optional<Surface> surface;  ///< must be given: the wrong one ruins film, so there is no default

    std::optional<double> margin_mm;  ///< none: by the blank's size
    double rebate_mm = 0;             ///< of a frame, which hides so much of the edge: nothing is set there
    std::vector<HangingHole> holes;   ///< none unless they are named

    /// "constructed"; a family or a fontconfig pattern ("DejaVu Sans:bold"); a file where it holds a '/' or
    /// ends in .ttf, .otf or .ttc. Empty: constructed where that alphabet has every letter, and else
    /// fallback_font.
    std::string font;
    /// Set above the grid, a line for each line of the text; none where it is empty.
    std::string heading;
    std::string heading_font;               ///< empty: as the letters
    std::optional<double> heading_area_mm;  ///< so high, heading or not; none: as high as the heading needs
    std::string foot;                       ///< a line or more below the grid: a date, a dedication
    bool word_list = false;                 ///< the words, below the grid

    BandKind band = BandKind::capsule;  ///< what marks the words
    /// One for all, or taken in turn by the words that have no colour of their own in the list.
    std::vector<Colour> band_colours{{0xf0, 0xbf, 0x72}};
    Inlay inlay = Inlay::none;  ///< what is cut out of what lies under it

    Colour letters{0x24, 0x3f, 0x3a};         ///< of the grid
    Colour heading_colour{0xa3, 0x4a, 0x2c};  ///< of the heading
    std::optional<Colour> text_colour;        ///< of the words and the foot; none: as the letters
    std::optional<Colour> border_colour;      ///< of border and ornaments; none: as the heading

    std::optional<BorderStyle> border;  ///< none: no border
    double border_line_mm = 1.2;        ///< its breadth
    std::optional<Ornament> ornament;   ///< none: no ornament

    /// What film holds. The constructed alphabet keeps both wherever its letters are large enough for them.
    double least_stroke_mm = usual_least_stroke_mm;
    double least_gap_mm = usual_least_gap_mm;  ///< likewise
    /// By so much every stroke of letters, heading and text is made wider; the least gap between letters of
    /// the grid must be left, so that draw refuses more than fits, and names the most that does.
    double embolden_mm = 0;

    bool registration = false;  ///< marks outside the blank, on every layer in the same places
};
inline constexpr std::string_view fallback_font =
    "DejaVu Sans:bold";                               ///< for letters that the constructed alphabet lacks
inline constexpr double most_embolden_mm = 10;        ///< of embolden_mm
inline constexpr double least_heading_area_mm = 3;    ///< of heading_area_mm
inline constexpr std::size_t max_band_colours = 100;  ///< of band_colours

/// What one colour of film carries.
struct Layer {
    std::string name;           ///< "border", "bands" or "bands-1" and so on, "letters", "text" or "heading"
    Colour colour;              ///< of its film
    std::vector<Piece> pieces;  ///< as the viewer sees them, not mirrored
    bool carried_whole = true;  ///< its pieces lie as they are cut; those of bands can be laid one by one
};

/// A puzzle drawn on its blank, with all that was measured on the way.
struct Artwork {
    Blank blank;                       ///< that it is drawn on
    Surface surface = Surface::first;  ///< that the film lies on
    std::vector<Layer> layers;         ///< in order of application; none without pieces
    std::vector<HangingHole> holes;    ///< of the blank
    double rebate_mm = 0;              ///< that a frame hides

    /// Cut in every layer, outside the blank, to lay one over the other; they are lifted off afterwards.
    std::vector<Piece> registration;
    double overhang_mm =
        0;  ///< how far what is cut reaches beyond the blank's box on each side, for these marks

    std::string heading;             ///< its lines, tidied
    std::string font;                ///< what the letters are set in: family and style
    std::string heading_font;        ///< likewise; empty where there is no heading
    double cell_mm = 0;              ///< side of a cell
    Point grid_corner;               ///< upper left corner of row 1, column 1
    double cap_height_mm = 0;        ///< of the letters
    double heading_cap_mm = 0;       ///< of the heading; 0 where there is none
    double text_cap_mm = 0;          ///< of words and foot; 0 where there are none
    double band_radius_mm = 0;       ///< 0 where there is no band
    std::vector<std::string> notes;  ///< what the maker should know before cutting, a sentence each

    /// The middle of a cell, on the blank.
    [[nodiscard]] Point centre(Cell cell) const {
        return {grid_corner.x + (cell.column + 0.5) * cell_mm, grid_corner.y + (cell.row + 0.5) * cell_mm};
    }
};

// Bounds on what is drawn, so that no puzzle asks for more memory than a panel of this kind ever needs.
inline constexpr std::size_t max_drawn_letters = 40'000;  ///< of a grid
inline constexpr std::size_t max_drawn_words = 10'000;    ///< of a puzzle
inline constexpr std::size_t max_heading_lines = 8;       ///< of a heading
inline constexpr std::size_t max_heading_bytes = 1'000;   ///< of a heading, in UTF-8
inline constexpr double least_cell_mm = 2;                ///< side of a cell

/// The recipe of a puzzle that is made for its panel. Where it names neither size nor mask nor shape: on a
/// rectangle with the proportions of what is left below the heading; on any other outline with a mask of
/// cells that lie wholly inside, as large as hold the words comfortably, for which masks of more and more
/// cells are tried by making the puzzle. A recipe that names one of them comes back as it is. Refused as
/// unusable where no cells of least_cell_mm would hold the words, and as the recipe is.
[[nodiscard]] LODE_API Outcome<Recipe> recipe_on_blank(Recipe recipe, const ArtworkOptions& options,
                                                       const MakeControl& control = {});

/// Fits the grid to the largest cells that the blank allows, every letter at the same cap height.
/// Refused as unusable, naming the option, the letter or the font: options that were not given, a font that
/// is not installed, broken or without outlines, a letter that the font lacks, a blank on which cells come
/// out under least_cell_mm, an open cell without a letter, more than the bounds above.
[[nodiscard]] LODE_API Outcome<Artwork> draw(const Puzzle& puzzle, const ArtworkOptions& options);

/// How a font draws the letters of an alphabet, for rate_readability: their ink, and how alike they look, by
/// the areas of their outlines. Letters that the font lacks are not known. Of more than max_letters_compared
/// letters none are compared. Quadratic in the letters: some 20 ms for the English alphabet, so keep it for
/// many grids. Refused as unusable: a font that is not installed, broken or without outlines.
[[nodiscard]] LODE_API Outcome<LetterLooks> letter_looks(const Alphabet& alphabet, const std::string& font);

/// The letters of a puzzle as they hang on a wall: measured on the outlines of the artwork's font, with the
/// artwork's colours. The blank itself is taken to be white. Lengths in mm. Refused as draw is.
[[nodiscard]] LODE_API Outcome<LettersSeen> letters_seen(const Puzzle& puzzle, const Artwork& artwork,
                                                         const ArtworkOptions& options, double viewing_mm);
inline constexpr double least_viewing_mm = 100;     ///< of read_distance
inline constexpr double most_viewing_mm = 100'000;  ///< of read_distance
/// Reads a distance: "1.5m", "60cm", "400mm", "5ft" or "24in". Refused as unusable: another form, and what
/// lies outside the bounds.
[[nodiscard]] LODE_API Outcome<double> read_distance(std::string_view text);

/// What is cut, as wide and as high as the blank, a group a layer; mirrored for the second surface. A layer
/// is given by its place in artwork.layers; throws std::out_of_range.
[[nodiscard]] LODE_API Drawing layer_drawing(const Artwork& artwork, std::size_t layer);
/// All layers, in the order in which they are painted: from the viewer's back to the front, whatever the
/// order of application, so that no layer hides another.
[[nodiscard]] LODE_API Drawing artwork_drawing(const Artwork& artwork);

inline constexpr int least_preview_px = 64;    ///< of its longer side
inline constexpr int most_preview_px = 8'000;  ///< of its longer side

/// A PNG picture of the finished piece on a wall, as its viewer sees it (never mirrored), its longer side so
/// many pixels. Throws std::invalid_argument outside least_preview_px..most_preview_px.
[[nodiscard]] LODE_API std::string preview_png(const Artwork& artwork, int long_side_px);

}  // namespace lode
