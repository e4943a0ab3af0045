#pragma once
// The cutting plan: which pieces lie where in which load, and on which film.
//
// What is planned is what the blade will follow: mirrored already where the surface asks for it. Lengths are
// in millimetres, y runs down, and a load's origin is the upper left corner of its bed, edge included. The
// same pieces and options give the same plan on every machine.

#include <atomic>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/colour.hpp>
#include <letterlode/export.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/path.hpp>

namespace lode {

/// What the cutter reaches.
struct Bed {
    double width_mm = 0;        ///< must be given
    double height_mm = 0;       ///< 0: a roll, each load as long as it takes
    double edge_mm = 0;         ///< on every side, not reached: neither blade nor film goes there
    double longest_mm = 3'000;  ///< of a load on a roll; of no meaning otherwise
};

/// What the maker has. Of a colour that is named by no stock there is film of any size.
struct FilmStock {
    Colour colour;         ///< as the pieces have it
    double width_mm = 0;   ///< of a sheet
    double height_mm = 0;  ///< 0: a roll of any length
    int count = 1;         ///< sheets or rolls of this size
};

/// What stays together as it lies: a band, or a whole layer that is carried over at once.
struct ToCut {
    std::string name;      ///< for messages and the job sheet
    std::string layer;     ///< that it belongs to
    Colour colour;         ///< of its film
    Path path;             ///< as it is cut
    bool upright = false;  ///< turned by quarters at the most, as rows of letters are weeded and taped along
};

/// The machine, the film, and what is left between pieces.
struct PlanOptions {
    Bed bed;                       ///< must be given
    std::vector<FilmStock> films;  ///< what there is of each colour
    double gap_mm = 3;             ///< between pieces
    double film_margin_mm = 5;     ///< film beyond its pieces, on each side
    bool may_turn = true;          ///< pieces by eighths of a turn; film is turned by quarters in any case
    std::uint64_t effort = 100'000'000;  ///< steps at the most: places looked at
};

/// What a caller may do while artwork is drawn to hold, or loads are planned. Both may be left out.
struct CutControl {
    /// Called now and then, on the calling thread. What it counts is told where it is taken; it may end
    /// before all of it is done, and begins anew where a call has to try another way.
    std::function<void(std::uint64_t done, std::uint64_t all)> progress;
    const std::atomic<bool>* cancel = nullptr;  ///< once true, the call stops soon and refuses as unfinished
    /// Whether somebody asked to stop.
    [[nodiscard]] bool is_cancelled() const { return cancel && cancel->load(std::memory_order_relaxed); }
};

inline constexpr std::size_t max_pieces_planned = 10'000;  ///< of one plan
inline constexpr double least_bed_mm = 10;                 ///< of a side
inline constexpr double most_bed_mm = 10'000;              ///< of a side

/// One of the parts into which a piece was split that no bed holds. A part lies as it does in its piece.
struct SplitPart {
    std::size_t piece = 0;  ///< its place in what was to be cut
    std::string name;       ///< "letters, part 2 of 4"
    Path path;              ///< of this part
    /// Halves of small diamonds, to be cut too. A half meets its other half, in the neighbouring part, at the
    /// split line: where two parts lie right, the diamonds are whole. They are lifted off afterwards.
    Path marks;
};

/// A point p of the piece (or part) comes to lie at p turned clockwise about the origin, then shifted.
struct PlacedPiece {
    std::size_t piece = 0;            ///< its place in what was to be cut
    std::optional<std::size_t> part;  ///< in Plan::parts, where it was split
    int eighths = 0;                  ///< of a turn, clockwise to the eye: 0 to 7
    Point shift;                      ///< after the turn
};

/// Where to lay film on the bed, as small as its pieces allow.
struct FilmRectangle {
    Colour colour;                     ///< of the film
    Box box;                           ///< on the bed
    std::optional<std::size_t> stock;  ///< in PlanOptions::films, where its colour is named there
    int sheet = 0;                     ///< which one of the stock's count, from 0
    Point corner;                      ///< upper left corner of what is taken, on that sheet
    bool turned = false;               ///< taken from the sheet with its sides changed
};

/// What is cut in one go.
struct Load {
    std::vector<FilmRectangle> films;  ///< laid on the bed
    std::vector<PlacedPiece> pieces;   ///< cut from them
    double length_mm = 0;  ///< of the bed that it takes up, with both edges; height_mm where that was given
};

/// All that is to be cut, load by load.
struct Plan {
    std::vector<Load> loads;       ///< in the order in which they may be cut
    std::vector<SplitPart> parts;  ///< of pieces that no bed or sheet holds
    /// No plan has fewer loads whose pieces are kept apart by their boxes, each turned by eighths of a turn.
    std::size_t least_loads = 0;
    bool proved = false;             ///< there are no more loads than that
    std::vector<std::string> notes;  ///< what the maker should know, why nothing is proved; a sentence each
};

/// Turned clockwise about the origin.
[[nodiscard]] LODE_API Path turned(const Path& path, int eighths);
/// The piece, or what was split from it, as it lies in its load: its marks with it.
[[nodiscard]] LODE_API Path placed(std::span<const ToCut> pieces, const Plan& plan, const PlacedPiece& where);

/// Plans as few loads as possible, then as few film rectangles, then as little film. In each load the boxes
/// of pieces lie a gap apart, each within a rectangle of film of its colour that reaches a margin beyond it,
/// no two rectangles overlap, and all lie within what the cutter reaches. Film comes from the maker's stock
/// where its colour is named there, never more than there is. What is larger than the bed, or than each sheet
/// of its colour, is split along straight lines that cross none of its contours' boxes.
///
/// The loads are proved least for up to a dozen pieces, given the effort: by an exact search. Beyond, they
/// are proved where they meet a lower bound. A roll's loads are made short, without proof.
///
/// Refused as unusable: sizes that are no numbers or out of bounds, an edge that leaves nothing, a piece
/// without outline, too many pieces. Refused as impossible: a piece that fits neither bed nor film and cannot
/// be split, and less film than the pieces need. Refused as unfinished: film that might do, but no way was
/// found to take the pieces from it; and a cancelled call. Progress counts steps of the effort.
[[nodiscard]] LODE_API Outcome<Plan> plan(std::span<const ToCut> pieces, const PlanOptions& options,
                                          const CutControl& control = {});

/// The size of a bed or of film.
struct Area {
    double width_mm = 0;   ///< from left to right
    double height_mm = 0;  ///< from top to bottom; 0: a roll
};
/// Reads "12x12in", "305x305mm", or a roll by its width alone: "12in". Refused as unusable: another form, and
/// what is no bed's size.
[[nodiscard]] LODE_API Outcome<Area> read_area(std::string_view text);

}  // namespace lode
