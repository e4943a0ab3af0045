#pragma once
// Artwork as a maker works from it: what the film holds, what is cut in which load, and the files of all
// that.
//
// In order: draw_to_hold (or draw, from art.hpp), measure, plan_loads, then cut_files for all files at once.
// The same puzzle and options give the same bytes.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/art.hpp>
#include <letterlode/export.hpp>
#include <letterlode/files.hpp>
#include <letterlode/paper.hpp>
#include <letterlode/plan.hpp>

namespace lode {

/// Something too thin for its film, or too narrow to be weeded.
struct ThinFinding {
    /// What is too narrow: a stroke of film, a gap within a piece, or the gap between two.
    enum class Kind : std::uint8_t { stroke, gap, between_pieces };
    Kind kind = Kind::stroke;          ///< what is too narrow
    std::string layer;                 ///< as it is named
    std::string piece;                 ///< as its Piece is named: "A at row 3, column 4"
    std::string other;                 ///< the other piece, where it is between two
    double width_mm = 0;               ///< at the narrowest place
    Point at;                          ///< on the blank, as the viewer sees it
    std::size_t alike = 1;             ///< pieces of the same shape, this one among them
    std::optional<Cell> cell{};        ///< of the piece, where it is a letter of the grid
    std::optional<Cell> other_cell{};  ///< likewise
};

/// What one layer asks of film, hand and machine.
struct LayerMeasures {
    std::string layer;         ///< as it is named
    Colour colour;             ///< of its film
    std::size_t pieces = 0;    ///< closed shapes to be applied: the dot of an i is one of its own
    std::size_t counters = 0;  ///< to be weeded one by one
    double cut_mm = 0;         ///< length of the outlines
    double area_mm2 = 0;       ///< of film that stays
    Box box;                   ///< of all its pieces, on the blank
    std::optional<double> narrowest_stroke_mm;  ///< none: no piece has one
    std::string narrowest_stroke_at;            ///< the piece
    std::optional<double> narrowest_gap_mm;     ///< likewise
    std::string narrowest_gap_at;               ///< the piece
};

/// What was measured of an artwork, and what of it does not hold.
struct Measures {
    std::vector<LayerMeasures> layers;  ///< as the artwork's
    std::vector<ThinFinding> thin;      ///< narrowest first of each layer; of equal shapes one
    double least_stroke_mm = 0;         ///< that were asked for
    double least_gap_mm = 0;            ///< likewise
    /// Whether there is no finding.
    [[nodiscard]] bool holds() const { return thin.empty(); }
};

/// Judges every piece against the least stroke and gap, and pieces of one layer against each other. By the
/// medial axis of each outline (lib/cut/thin_features.hpp), each shape once however often it stands in the
/// artwork.
[[nodiscard]] LODE_API Measures measure(const Artwork& artwork, double least_stroke_mm, double least_gap_mm);

/// "the stroke of B at row 3, column 4 (letters) is 0.81 mm (0.032 in) wide; 7 are alike"
[[nodiscard]] LODE_API std::string finding_text(const ThinFinding& finding);
/// "stroke", "gap", "between-pieces"
[[nodiscard]] LODE_API std::string_view name(ThinFinding::Kind kind);

/// Artwork with its measures, and what was changed so that the film holds.
struct HeldArtwork {
    Artwork artwork;         ///< as it was drawn last
    Measures measures;       ///< of this artwork
    ArtworkOptions options;  ///< as they were changed
    std::vector<std::string>
        changed;                 ///< a sentence for each change; none where none was needed or none helped
    bool tried_to_hold = false;  ///< by draw_to_hold
};
/// What to do about the findings, a sentence each: sizes that are large enough, how much bolder, which
/// alphabet.
[[nodiscard]] LODE_API std::vector<std::string> ways_out(const HeldArtwork& held);
/// Draws, and measures by the options' least stroke and gap. Refused as draw is, and as unfinished where it
/// is cancelled, which it is between two pieces. Progress counts thousandths.
[[nodiscard]] LODE_API Outcome<HeldArtwork> draw_and_measure(const Puzzle& puzzle,
                                                             const ArtworkOptions& options,
                                                             const CutControl& control = {});
inline constexpr std::uint64_t most_drawings_to_hold = 15;  ///< of draw_to_hold

/// Draws, and where the film would not hold, draws again with the least change after which it does: strokes
/// made wider by just what is missing, and where that closes gaps, the constructed alphabet. Where nothing
/// helps the artwork is as it was, with its findings. Refused as draw_and_measure is. Progress counts
/// thousandths of each drawing, of most_drawings_to_hold.
[[nodiscard]] LODE_API Outcome<HeldArtwork> draw_to_hold(const Puzzle& puzzle, const ArtworkOptions& options,
                                                         const CutControl& control = {});

/// The loads of an artwork.
struct CutPlan {
    std::vector<ToCut> pieces;     ///< as they are cut, mirrored where the surface asks for it
    Plan plan;                     ///< of these pieces
    bool bands_are_loose = false;  ///< bands were taken apart to save loads
    bool left_out_marks = false;   ///< registration marks, which made the artwork larger than the bed
    /// A letter R in the waste, which reads right from the side that is seen.
    struct Witness {
        Path path;      ///< in its load, as it is cut
        Colour colour;  ///< of the film that it is cut from
    };
    std::vector<std::optional<Witness>> witnesses;  ///< one a load; none where there was no room
};
/// Layers as they lie, each carried over at once; where that takes more loads, bands one by one. Each load
/// has a witness in its waste. Refused as plan is.
[[nodiscard]] LODE_API Outcome<CutPlan> plan_loads(const Artwork& artwork, const PlanOptions& options,
                                                   const CutControl& control = {});

/// A load as it is cut, on a page of the size of the bed: a group for each layer and colour, "witness" among
/// them. Throws std::out_of_range.
[[nodiscard]] LODE_API Drawing load_drawing(const Artwork& artwork, const CutPlan& plan,
                                            const PlanOptions& options, std::size_t load, bool weeding_lines);

/// Which files are written.
struct CutOptions {
    int preview_px = 1'600;  ///< the longer side of preview.png
    bool weeding_lines =
        false;         ///< a frame about each layer and cuts between rows, which part waste from waste
    bool dxf = false;  ///< every layer and load as DXF too
    std::optional<PlanOptions> plan;  ///< none: no loads, and a job sheet without them
    /// What plan_loads gave for this artwork and these options of a plan, to live as long as the call; none:
    /// it is planned by the call.
    const CutPlan* planned = nullptr;
    std::optional<double> speed_mm_s;  ///< of the cutter, for an estimate of its time
    bool guide = false;                ///< a true-size page to lay under or behind the blank
    Paper paper = Paper::a4;           ///< of job sheet and guide
    std::string order;  ///< what the piece is called in a shop, for the job sheet; empty: nothing
};

/// "layers/1-letters.svg" and so on, numbered in order of application, each as .pdf (and .dxf) too;
/// "artwork.svg" and "artwork.pdf" with all layers; "loads/load-1.svg" and so on; "job-sheet.pdf",
/// "guide.pdf", "proof.html" and "preview.png". Refused as plan_loads is; progress counts as plan's does.
/// Throws std::invalid_argument for loads that are planned without options of a plan.
[[nodiscard]] LODE_API Outcome<std::vector<NamedFile>> cut_files(const Puzzle& puzzle,
                                                                 const HeldArtwork& held,
                                                                 const CutOptions& options = {},
                                                                 const CutControl& control = {});

/// What is cut from what, what the film does not hold, and the loads where options.planned has them, for
/// another program: data/schema/cut.schema.json tells what stands where. Throws as cut_files does.
[[nodiscard]] LODE_API std::string to_json(const HeldArtwork& held, const CutOptions& options = {});

}  // namespace lode
