#pragma once
// Job sheets of pieces that are made by hand: without fonts, and without the engine that draws panels.

#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include <letterlode/cut.hpp>

#include "art/constructed_typeface.hpp"
#include "art/number.hpp"
#include "cut/job_sheet.hpp"
#include "panels.hpp"
#include "support/made.hpp"
#include "support/recipes.hpp"

namespace job_sheets {

using namespace lode;
using panels::has;

inline constexpr Colour pine{0x24, 0x3f, 0x3a};
inline constexpr Colour straw{0xf0, 0xbf, 0x72};
inline constexpr Colour sky{0x8f, 0xb8, 0xc9};
inline constexpr Colour brick{0xa3, 0x4a, 0x2c};

// All that a sheet refers to, made without fonts and without the engine that draws panels.
struct Job {
    Puzzle puzzle;
    Artwork artwork;
    Measures measures;
    std::optional<CutPlan> cut;
    PlanOptions plan_options;
    Paper paper = Paper::a4;
    std::optional<double> speed;
    std::vector<std::string> changed;
    std::vector<std::string> ways_out;

    [[nodiscard]] JobSheet sheet() const {
        return {puzzle,   artwork, measures, cut ? &*cut : nullptr, cut ? &plan_options : nullptr, changed,
                ways_out, paper,   speed};
    }
    [[nodiscard]] std::string pdf() const { return job_sheet_pdf(sheet()); }
};

// A line in capitals so high that starts, or has its middle, at a point.
inline void append_text(Layer& layer, const std::string& text, Point at, double cap_mm, bool centred) {
    ConstructedTypeface typeface({});
    const SetLine line = typeface.set_line(text).value();
    if (line.letters.empty()) return;
    Path all;
    for (const SetLetter& letter : line.letters)
        all.contours.insert(all.contours.end(), letter.path.contours.begin(), letter.path.contours.end());
    const Box box = bounds(all);
    const double left = centred ? at.x - cap_mm * box.centre().x : at.x;
    for (const SetLetter& letter : line.letters)
        layer.pieces.push_back({letter.text, transformed(letter.path, cap_mm, {left, at.y})});
}

Artwork artwork_of(const Puzzle& puzzle, const Blank& blank, Surface surface, const std::string& heading,
                   double grid_share = 0.9) {
    Artwork artwork;
    artwork.blank = blank;
    artwork.surface = surface;
    artwork.heading = heading;
    artwork.font = "constructed alphabet";
    artwork.heading_font = artwork.font;
    const Size size = puzzle.grid.grid.size();
    artwork.cell_mm =
        std::min(grid_share * blank.width_mm / size.columns, 0.78 * grid_share * blank.height_mm / size.rows);
    artwork.grid_corner = {(blank.width_mm - artwork.cell_mm * size.columns) / 2,
                           0.93 * blank.height_mm - artwork.cell_mm * size.rows};
    artwork.cap_height_mm = 0.62 * artwork.cell_mm;
    artwork.heading_cap_mm =
        std::min(0.06 * blank.height_mm, 1.0 * blank.width_mm / static_cast<double>(heading.size() + 1));

    Layer letters{"letters", pine, {}};
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column) {
            const Letter letter = puzzle.grid.grid[{row, column}];
            if (letter >= puzzle.grid.alphabet.size()) continue;
            const Point at = artwork.centre({row, column});
            append_text(letters, puzzle.grid.alphabet.text(letter), {at.x, at.y + artwork.cap_height_mm / 2},
                        artwork.cap_height_mm, true);
        }
    Layer title{"heading", brick, {}};
    append_text(title, heading, {blank.width_mm / 2, 0.14 * blank.height_mm}, artwork.heading_cap_mm, true);
    std::vector<Layer> bands{{"bands-1", straw, {}, false}, {"bands-2", sky, {}, false}};
    for (std::size_t i = 0; i < puzzle.words.size(); ++i) {
        const PlacedWord& word = puzzle.words[i];
        const Cell end =
            moved(word.placed.first, word.placed.direction, static_cast<int>(word.letters.size()) - 1);
        bands[i % 2].pieces.push_back({word.shown, capsule(artwork.centre(word.placed.first),
                                                           artwork.centre(end), 0.42 * artwork.cell_mm)});
    }
    std::vector<Layer> layers{title, letters, bands[0], bands[1]};
    if (surface == Surface::first) std::reverse(layers.begin(), layers.end());
    for (Layer& layer : layers)
        if (!layer.pieces.empty()) artwork.layers.push_back(std::move(layer));
    return artwork;
}

inline Box box_of(const Layer& layer) {
    Path all;
    for (const Piece& piece : layer.pieces)
        all.contours.insert(all.contours.end(), piece.path.contours.begin(), piece.path.contours.end());
    return bounds(all);
}

inline Measures measures_of(const Artwork& artwork) {
    Measures measures;
    measures.least_stroke_mm = measures.least_gap_mm = 1;
    for (const Layer& layer : artwork.layers) {
        LayerMeasures one;
        one.layer = layer.name;
        one.colour = layer.colour;
        one.box = box_of(layer);
        for (const Piece& piece : layer.pieces)
            for (const Contour& contour : piece.path.contours) {
                const double area = signed_area(contour);
                ++(area > 0 ? one.pieces : one.counters);
                one.area_mm2 += area;
                Point at = contour.start;
                for (const Segment& segment : contour.segments) {
                    one.cut_mm += std::hypot(segment.to.x - at.x, segment.to.y - at.y);
                    at = segment.to;
                }
            }
        one.narrowest_stroke_mm = 1.25;
        one.narrowest_stroke_at = "A at row 1, column 2";
        one.narrowest_gap_mm = 1.5;
        one.narrowest_gap_at = "B at row 3, column 4";
        measures.layers.push_back(one);
    }
    return measures;
}

inline void add_plan(Job& job, const PlanOptions& options, bool loose_bands = false) {
    CutPlan cut;
    cut.bands_are_loose = loose_bands;
    const auto as_cut = [&](const Path& path) {
        return job.artwork.surface == Surface::second ? mirrored(path, job.artwork.blank.width_mm) : path;
    };
    for (const Layer& layer : job.artwork.layers) {
        Path whole;
        for (const Piece& piece : layer.pieces) {
            const Path path = as_cut(piece.path);
            if (loose_bands && !layer.carried_whole)
                cut.pieces.push_back({piece.name, layer.name, layer.colour, path});
            whole.contours.insert(whole.contours.end(), path.contours.begin(), path.contours.end());
        }
        if (!loose_bands || layer.carried_whole)
            cut.pieces.push_back({layer.name, layer.name, layer.colour, whole});
    }
    cut.plan = plan(cut.pieces, options).value();
    // An F in the margin of each load's first film, mirrored as the rest is.
    ConstructedTypeface typeface({});
    const Path upright = typeface.set_line("F").value().letters.front().path;
    const Path letter =
        job.artwork.surface == Surface::second ? mirrored(upright, bounds(upright).right) : upright;
    for (const Load& load : cut.plan.loads) {
        const Box box = load.films.front().box;
        cut.witnesses.push_back(CutPlan::Witness{transformed(letter, 4, {box.right - 4, box.bottom - 0.8}),
                                                 load.films.front().colour});
    }
    job.cut = std::move(cut);
    job.plan_options = options;
}

inline PlanOptions with_bed(double width_mm, double height_mm) {
    PlanOptions options;
    options.bed = {width_mm, height_mm, 6};
    return options;
}

inline const Puzzle& beds() {
    static const Puzzle puzzle = [] {
        Recipe recipe = test::recipe_of(
            {"ASPARAGUS", "BEETROOT", "BROCCOLI", "CABBAGE", "CARROT", "CELERY",  "CHARD",   "CHIVES",
             "COURGETTE", "CUCUMBER", "FENNEL",   "GARLIC",  "KALE",   "LEEK",    "LETTUCE", "MARROW",
             "ONION",     "PARSNIP",  "PEPPER",   "PUMPKIN", "RADISH", "SHALLOT", "SPINACH", "TURNIP"},
            Size{15, 15});
        return test::made(recipe);
    }();
    return puzzle;
}

inline Job panel(Surface surface) {
    Job job;
    job.puzzle = beds();
    job.artwork = artwork_of(job.puzzle, shaped_blank("rectangle", {203.2, 254}), surface, "THE TOOL SHED");
    job.measures = measures_of(job.artwork);
    return job;
}

inline const Job& panel_with_loads(Surface surface) {
    static const auto planned = [](Surface on) {
        Job job = panel(on);
        add_plan(job, with_bed(400, 215));
        return job;
    };
    static const Job first = planned(Surface::first);
    static const Job second = planned(Surface::second);
    return surface == Surface::first ? first : second;
}

// The same on A4.
inline const std::string& panel_pdf(Surface surface) {
    static const std::string first = panel_with_loads(Surface::first).pdf();
    static const std::string second = panel_with_loads(Surface::second).pdf();
    return surface == Surface::first ? first : second;
}

// A smaller one, without loads.
inline Job garden(Surface surface) {
    Job job;
    job.puzzle = panels::garden();
    job.artwork = artwork_of(job.puzzle, shaped_blank("rectangle", {203.2, 254}), surface, "BEDS");
    job.measures = measures_of(job.artwork);
    return job;
}

// What a program prints about the PDF.

}  // namespace job_sheets
