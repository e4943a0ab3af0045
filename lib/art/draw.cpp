#include <algorithm>
#include <charconv>

#include <letterlode/art.hpp>

#include "art/bands.hpp"
#include "art/font.hpp"
#include "art/layout.hpp"
#include "art/lettering.hpp"
#include "art/number.hpp"

namespace lode {

namespace {

// Common practice, no source: lower letters lift with the waste when they are weeded.
constexpr double least_letter_mm = 6;
// Common practice, no source: a hole of less than about 1 mm cannot be weeded.
constexpr double least_hole_mm2 = 1;

Refusal unusable(std::string message, std::vector<std::string> advice = {}) {
    Refusal refusal;
    refusal.message = std::move(message);
    refusal.advice = std::move(advice);
    return refusal;
}

std::optional<Refusal> fault_in(const ArtworkOptions& options) {
    if (!options.surface)
        return unusable(
            "--surface has no default: with --blank it must be said, because the wrong one ruins film",
            {"Say first for the front of the blank, second for the back of a clear one."});
    for (const double side : {options.blank.width_mm, options.blank.height_mm})
        if (!(side >= least_blank_mm && side <= most_blank_mm))
            return unusable("the blank's sides must measure from 10 mm to 5000 mm");
    return std::nullopt;
}

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

Extent extent_of(const Grid& grid) {
    Cell first{grid.size().rows, grid.size().columns};
    Cell last{-1, -1};
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            if (grid[{row, column}] == closed_cell) continue;
            first = {std::min(first.row, row), std::min(first.column, column)};
            last = {std::max(last.row, row), std::max(last.column, column)};
        }
    return {first, {last.row - first.row + 1, last.column - first.column + 1}};
}

std::string place(Cell cell) {
    return "row " + std::to_string(cell.row + 1) + ", column " + std::to_string(cell.column + 1);
}

Layer letter_layer(const Puzzle& puzzle, const Lettering& lettering, const Artwork& artwork, Colour colour) {
    Layer layer{"letters", colour, {}};
    const Grid& grid = puzzle.grid.grid;
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            const Cell cell{row, column};
            if (grid[cell] == closed_cell) continue;
            layer.pieces.push_back(
                {puzzle.grid.alphabet.text(grid[cell]) + " at " + place(cell),
                 transformed(lettering.letters[grid[cell]], artwork.cell_mm, artwork.centre(cell))});
        }
    return layer;
}

Layer heading_layer(const Heading& heading, const Layout& layout, Colour colour) {
    Layer layer{"heading", colour, {}};
    for (std::size_t i = 0; i < heading.lines.size(); ++i)
        for (const SetLetter& letter : heading.lines[i].letters)
            layer.pieces.push_back(
                {letter.text + " in the heading",
                 transformed(letter.path, layout.heading_cap, {layout.heading_middle, layout.baselines[i]})});
    return layer;
}

Layer band_layer(const Puzzle& puzzle, Artwork& artwork, Colour colour) {
    Layer layer{"bands", colour, {}};
    std::vector<Band> bands;
    for (const PlacedWord& word : puzzle.words)
        bands.push_back({word.placed.first, moved(word.placed.first, word.placed.direction,
                                                  static_cast<int>(word.letters.size()) - 1)});
    if (bands.empty()) return layer;
    const double radius = band_radius(bands);
    artwork.band_radius_mm = radius * artwork.cell_mm;
    const double cell_area = artwork.cell_mm * artwork.cell_mm;
    for (BandPiece& piece : unite_bands(bands, radius, least_hole_mm2 / cell_area)) {
        std::string name = piece.bands.size() == 1 ? "band of " : "bands of ";
        for (std::size_t i = 0; i < piece.bands.size(); ++i)
            name += (i ? ", " : "") + puzzle.words[piece.bands[i]].shown;
        layer.pieces.push_back(
            {std::move(name), transformed(piece.path, artwork.cell_mm, artwork.grid_corner)});
    }
    return layer;
}

void note_small_letters(Artwork& artwork) {
    if (artwork.cap_height_mm >= least_letter_mm) return;
    artwork.notes.push_back(
        "Capitals come out " + decimal(artwork.cap_height_mm, 1) + " mm (" +
        decimal(artwork.cap_height_mm / 25.4, 2) +
        " in) high. Letters under about 6 mm (1/4 in) lift with the waste when they are weeded "
        "(common practice): take a larger blank, or fewer rows and columns.");
}

void note_shrunk(Artwork& artwork, const std::vector<std::string>& shrunk) {
    if (shrunk.empty()) return;
    std::string names;
    for (std::size_t i = 0; i < std::min<std::size_t>(shrunk.size(), 8); ++i)
        names += (i ? ", " : "") + shrunk[i];
    if (shrunk.size() > 8) names += " and " + std::to_string(shrunk.size() - 8) + " more";
    artwork.notes.push_back("Set smaller than the other letters, to fit a cell: " + names + ".");
}

}  // namespace

Outcome<Artwork> draw(const Puzzle& puzzle, const ArtworkOptions& options) {
    if (auto fault = fault_in(options)) return *std::move(fault);
    if (auto fault = fault_in(puzzle)) return *std::move(fault);

    auto file = find_font(options.font);
    if (!file) return file.refusal();
    Artwork artwork;
    artwork.notes = file->notes;
    auto font = Font::open(*std::move(file));
    if (!font) return font.refusal();
    const auto lettering = set_letters(*font, puzzle.grid);
    if (!lettering) return lettering.refusal();
    const auto heading = set_heading(*font, options.heading);
    if (!heading) return heading.refusal();

    const Extent extent = extent_of(puzzle.grid.grid);
    const auto layout = fit(options.blank, extent, lettering->cap_height, *heading);
    if (!layout)
        return unusable("a blank of " + decimal(options.blank.width_mm, 1) + " x " +
                            decimal(options.blank.height_mm, 1) + " mm is too small for " +
                            std::to_string(extent.size.columns) + " columns and " +
                            std::to_string(extent.size.rows) + " rows: cells would measure under " +
                            decimal(least_cell_mm, 0) + " mm",
                        {"Take a larger blank, fewer rows and columns, or a shorter heading."});

    artwork.blank = options.blank;
    artwork.surface = *options.surface;
    artwork.heading = heading->text;
    artwork.font = font->name();
    artwork.cell_mm = layout->cell;
    artwork.grid_corner = layout->corner;
    artwork.cap_height_mm = lettering->cap_height * layout->cell;
    artwork.heading_cap_mm = layout->heading_cap;

    if (options.draw_bands) artwork.layers.push_back(band_layer(puzzle, artwork, options.bands));
    artwork.layers.push_back(letter_layer(puzzle, *lettering, artwork, options.letters));
    artwork.layers.push_back(heading_layer(*heading, *layout, options.heading_colour));
    std::erase_if(artwork.layers, [](const Layer& layer) { return layer.pieces.empty(); });
    // What lies in front for the viewer is applied last on the front, and first on the back (common
    // practice).
    if (artwork.surface == Surface::second) std::reverse(artwork.layers.begin(), artwork.layers.end());

    note_small_letters(artwork);
    note_shrunk(artwork, lettering->shrunk);
    return artwork;
}

}  // namespace lode
