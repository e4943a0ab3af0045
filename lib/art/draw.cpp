#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>

#include <letterlode/art.hpp>

#include "art/band_layers.hpp"
#include "art/combine.hpp"
#include "art/draw.hpp"
#include "art/frame_layer.hpp"
#include "art/number.hpp"
#include "art/registration.hpp"
#include "art/setting.hpp"

namespace lode {

namespace {

// Common practice, no source: lower letters lift with the waste when they are weeded.
constexpr double least_letter_mm = 6;

Refusal unusable(std::string message, std::vector<std::string> advice = {}) {
    Refusal refusal;
    refusal.message = std::move(message);
    refusal.advice = std::move(advice);
    return refusal;
}

}  // namespace

std::optional<Refusal> fault_in(const ArtworkOptions& options) {
    if (!options.surface)
        return unusable(
            "--surface has no default: with --blank it must be said, because the wrong one ruins film",
            {"Say first for the front of the blank, second for the back of a clear one."});
    for (const double side : {options.blank.width_mm, options.blank.height_mm})
        if (!(side >= least_blank_mm && side <= most_blank_mm))
            return unusable("the blank's sides must measure from 10 mm to 5000 mm");
    if (options.blank.outline.empty()) return unusable("the blank has no outline");
    struct Length {
        const char* option;
        double value;
        double least;
        double most;
    };
    for (const auto& [option, value, least, most] : std::initializer_list<Length>{
             {"--margin", options.margin_mm.value_or(0), 0, most_blank_mm},
             {"--rebate", options.rebate_mm, 0, most_blank_mm},
             {"--heading-area", options.heading_area_mm.value_or(least_heading_area_mm),
              least_heading_area_mm, most_blank_mm},
             {"--least-stroke", options.least_stroke_mm, 0.01, 100},
             {"--least-gap", options.least_gap_mm, 0.01, 100},
             {"--border-line", options.border_line_mm, 0.1, 20},
             {"--embolden", options.embolden_mm, 0, most_embolden_mm}})
        if (!(value >= least && value <= most))
            return unusable(std::string(option) + " must lie from " + decimal(least, 2) + " mm to " +
                            decimal(most, 2) + " mm");
    if (options.holes.size() > max_holes)
        return unusable("a blank has at most " + std::to_string(max_holes) + " holes");
    const std::vector<std::string> hole_advice{
        "Give its middle from the blank's upper left corner, and its diameter."};
    for (const HangingHole& hole : options.holes)
        if (!(hole.diameter_mm > 0 && hole.diameter_mm <= most_blank_mm) ||
            !(std::abs(hole.centre.x) <= most_blank_mm && std::abs(hole.centre.y) <= most_blank_mm))
            return unusable("--hole: a hole has a middle and a diameter", hole_advice);
    for (const HangingHole& hole : options.holes)
        if (hole.centre.x < 0 || hole.centre.y < 0 || hole.centre.x > options.blank.width_mm ||
            hole.centre.y > options.blank.height_mm)
            return unusable("--hole: the hole at " + decimal(hole.centre.x, 1) + ", " +
                                decimal(hole.centre.y, 1) + " mm lies outside of the blank",
                            hole_advice);
    if (options.band_colours.size() > max_band_colours)
        return unusable("bands have at most " + std::to_string(max_band_colours) + " colours");
    return std::nullopt;
}

namespace {

std::optional<Refusal> fault_in(const Puzzle& puzzle) {
    const Grid& grid = puzzle.grid.grid;
    std::size_t letters = 0;
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            const Letter letter = grid[{row, column}];
            if (letter == closed_cell) continue;
            if (letter >= puzzle.grid.alphabet.size())
                return unusable("row " + std::to_string(row + 1) + ", column " + std::to_string(column + 1) +
                                " holds no letter");
            if (++letters > max_drawn_letters)
                return unusable("the grid has more than " + std::to_string(max_drawn_letters) +
                                " letters, which is more than a panel is drawn with");
        }
    if (letters == 0) return unusable("the grid has no letters to draw");
    if (puzzle.words.size() > max_drawn_words)
        return unusable("the puzzle has more than " + std::to_string(max_drawn_words) + " words");
    for (const PlacedWord& word : puzzle.words) {
        const int length = static_cast<int>(std::min(word.letters.size(), grid.letters().size()));
        if (length == 0 || !grid.inside(word.placed.first) ||
            !grid.inside(moved(word.placed.first, word.placed.direction, length - 1)))
            return unusable("word \"" + word.shown + "\" is placed outside the grid");
    }
    return std::nullopt;
}

std::string place(Cell cell) {
    return "row " + std::to_string(cell.row + 1) + ", column " + std::to_string(cell.column + 1);
}

Path emboldened(Path path, double grow_mm) {
    return grow_mm > 0 ? grown(path, grow_mm) : path;
}

Layer letter_layer(const Puzzle& puzzle, const Lettering& lettering, const Artwork& artwork, Colour colour,
                   double grow_mm) {
    Layer layer{"letters", colour, {}};
    // Each letter is made wider once, however often it stands in the grid.
    std::vector<Path> drawn;
    for (const Path& letter : lettering.letters)
        drawn.push_back(letter.empty() ? letter
                                       : emboldened(transformed(letter, artwork.cell_mm, {}), grow_mm));
    const Grid& grid = puzzle.grid.grid;
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            const Cell cell{row, column};
            if (grid[cell] == closed_cell) continue;
            layer.pieces.push_back({puzzle.grid.alphabet.text(grid[cell]) + " at " + place(cell),
                                    transformed(drawn[grid[cell]], 1, artwork.centre(cell)), cell});
        }
    return layer;
}

bool overlap(const Path& one, const Path& other) {
    const Box a = bounds(one), b = bounds(other);
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom &&
           !shared(one, other).empty();
}

// Letters that run into each other, as those of joined scripts do, are one piece: no blade cuts through their
// joint.
void append_block(Layer& layer, const TextBlock& block, const BlockPlace& place, double grow_mm,
                  const std::string& where) {
    std::vector<Piece> pieces;
    for (const SetLetter& letter : block.letters) {
        Piece piece{letter.text, emboldened(transformed(letter.path, place.cap, place.top), grow_mm)};
        if (!pieces.empty() && overlap(pieces.back().path, piece.path)) {
            const std::array<Path, 2> both{pieces.back().path, piece.path};
            pieces.back() = {pieces.back().name + piece.name, united(both)};
        } else {
            pieces.push_back(std::move(piece));
        }
    }
    for (Piece& piece : pieces)
        layer.pieces.push_back({piece.name + " in the " + where, std::move(piece.path)});
}

void note_small_letters(Artwork& artwork) {
    if (artwork.cap_height_mm >= least_letter_mm) return;
    artwork.notes.push_back(
        "Capitals come out " + decimal(artwork.cap_height_mm, 1) + " mm (" +
        decimal(artwork.cap_height_mm / 25.4, 2) +
        " in) high. Letters under about 6 mm (1/4 in) lift with the waste when they are weeded "
        "(common practice): take a larger blank, or fewer rows and columns.");
}

std::string some_of(const std::vector<std::string>& letters) {
    std::string names;
    constexpr std::size_t most_named = 8;
    for (std::size_t i = 0; i < std::min(letters.size(), most_named); ++i)
        names += (i ? ", " : "") + letters[i];
    if (letters.size() > most_named) names += " and " + std::to_string(letters.size() - most_named) + " more";
    return names;
}

// WCAG 2.2, 1.4.3, asks 3 to 1 of large text.
void note_contrast(const std::vector<MarkedWord>& marked, const ArtworkOptions& options, Artwork& artwork) {
    std::vector<Colour> faint;
    for (const MarkedWord& word : marked)
        if (options.band != BandKind::ring &&
            contrast_ratio(options.letters, word.colour) < least_contrast_of_large_text &&
            std::find(faint.begin(), faint.end(), word.colour) == faint.end())
            faint.push_back(word.colour);
    for (const Colour colour : faint)
        artwork.notes.push_back("Letters of " + to_text(options.letters) + " are hard to read on bands of " +
                                to_text(colour) + ": their contrast is " +
                                decimal(contrast_ratio(options.letters, colour), 1) +
                                " to 1, and 3 is the least.");
}

void append_notes(const Setting& setting, Artwork& artwork) {
    artwork.notes = setting.notes;
    note_small_letters(artwork);
    if (!setting.lettering.shrunk.empty())
        artwork.notes.push_back(
            "Set smaller than the other letters, to fit a cell: " + some_of(setting.lettering.shrunk) + ".");
    if (!setting.sticking_out.empty())
        artwork.notes.push_back("Wider than the band behind them: " + some_of(setting.sticking_out) +
                                ". A narrower font, or words that keep apart (--spacing 1), would mend it.");
}

// As its viewer sees it, from the back to the front.
std::vector<Layer> layers_of(const Puzzle& puzzle, const std::vector<MarkedWord>& marked,
                             const Setting& setting, const Artwork& artwork, const ArtworkOptions& options,
                             std::vector<std::string>& notes) {
    const Layout& layout = setting.layout;
    const double grow = options.embolden_mm / 2;
    Layer letters = letter_layer(puzzle, setting.lettering, artwork, options.letters, grow);
    std::vector<Layer> layers = band_layers(puzzle, marked, artwork, options, letters, notes);
    layers.push_back(std::move(letters));
    Layer text{"text", options.text_colour.value_or(options.letters), {}};
    append_block(text, setting.words, layout.words, grow, "list");
    append_block(text, setting.foot, layout.foot, grow, "foot");
    layers.push_back(std::move(text));
    Layer heading{"heading", options.heading_colour, {}};
    append_block(heading, setting.heading, layout.heading, grow, "heading");
    layers.push_back(std::move(heading));
    layers.insert(layers.begin(), frame_layer(options, layout, margin_of(options), layers, notes));
    std::erase_if(layers, [](const Layer& layer) { return layer.pieces.empty(); });
    return layers;
}

bool keeps_apart(const Setting& setting, const Puzzle& puzzle, const ArtworkOptions& options) {
    return keeps_apart(setting.lettering, puzzle.grid.grid,
                       (options.embolden_mm + options.least_gap_mm) / setting.layout.cell);
}

// Wider strokes need a wider rim, and letters move in their cells: the most that fits is found by setting all
// again, to a hundredth of a millimetre.
Refusal too_bold(const Puzzle& puzzle, const ArtworkOptions& options, const std::vector<MarkedWord>& marked) {
    long fits = 0;
    auto too_much = static_cast<long>(std::ceil(options.embolden_mm * 100));
    while (too_much - fits > 1) {
        const long middle = (fits + too_much) / 2;
        ArtworkOptions less = options;
        less.embolden_mm = static_cast<double>(middle) / 100;
        const auto setting = set(puzzle, less, marked);
        (setting && keeps_apart(*setting, puzzle, less) ? fits : too_much) = middle;
    }
    const std::string rule = "less than the least gap of " + both_units(options.least_gap_mm);
    const std::vector<std::string> advice{
        "Make cells larger, by a larger blank or fewer rows and columns, or take a bolder or narrower font."};
    if (fits == 0)
        return unusable("--embolden cannot be used: there is " + rule +
                            " between letters of the grid as it is, or would be with the least of it",
                        advice);
    return unusable("--embolden " + both_units(options.embolden_mm) + " would leave " + rule +
                        " between letters of the grid: the most that fits is " +
                        decimal(static_cast<double>(fits) / 100, 2) + " mm",
                    advice);
}

}  // namespace

Outcome<Artwork> draw(const Puzzle& puzzle, const ArtworkOptions& options) {
    if (auto fault = fault_in(options)) return *std::move(fault);
    if (auto fault = fault_in(puzzle)) return *std::move(fault);
    const std::vector<MarkedWord> marked = marked_words(puzzle, options);
    const auto setting = set(puzzle, options, marked);
    if (!setting) return setting.refusal();
    if (options.embolden_mm > 0 && !keeps_apart(*setting, puzzle, options))
        return too_bold(puzzle, options, marked);

    const Layout& layout = setting->layout;
    Artwork artwork;
    artwork.blank = options.blank;
    artwork.surface = *options.surface;
    artwork.holes = options.holes;
    for (const HangingHole& hole : options.holes)
        artwork.blank.outline.contours.push_back(
            reversed(capsule(hole.centre, hole.centre, hole.diameter_mm / 2).contours.front()));
    artwork.rebate_mm = options.rebate_mm;
    artwork.heading = setting->heading.text;
    artwork.font = setting->font;
    artwork.heading_font = setting->heading_font;
    artwork.cell_mm = layout.cell;
    artwork.grid_corner = layout.corner;
    artwork.cap_height_mm = setting->lettering.cap_height * layout.cell;
    artwork.heading_cap_mm = layout.heading.cap;
    artwork.text_cap_mm = std::max(layout.words.cap, layout.foot.cap);
    artwork.band_radius_mm = setting->band_radius * layout.cell;
    if (options.registration) {
        artwork.registration = registration_marks(options.blank);
        artwork.overhang_mm = registration_overhang_mm;
    }
    std::vector<std::string> notes;
    artwork.layers = layers_of(puzzle, marked, *setting, artwork, options, notes);
    // What lies in front for the viewer is applied last on the front, and first on the back (common
    // practice).
    if (artwork.surface == Surface::second) std::reverse(artwork.layers.begin(), artwork.layers.end());
    append_notes(*setting, artwork);
    note_contrast(marked, options, artwork);
    artwork.notes.insert(artwork.notes.end(), notes.begin(), notes.end());
    return artwork;
}

}  // namespace lode
