#include "art/band_layers.hpp"

#include <algorithm>
#include <cstdlib>
#include <functional>
#include <utility>

#include "art/band_outline.hpp"
#include "art/brush.hpp"
#include "art/combine.hpp"
#include "art/ring.hpp"
#include "art/waists.hpp"

namespace lode {

namespace {

// Common practice, no source: a hole of less than about 1 mm cannot be weeded.
constexpr double least_hole_mm2 = 1;
// Of a band's radius: how near to the middle the edge of a brushed one comes at the most, and how wide the
// line of a ring is, by eye.
constexpr double brushed_in = 0.86;
constexpr double ring_line = 0.2;
// In cells, by eye. A ring runs between letters, and crosses others where words pass each other.
constexpr double capsule_radius = 0.42;
constexpr double most_capsule_radius = 0.44;
constexpr double brush_radius = 0.45;
constexpr double ring_radius = 0.45;
// Between bands that pass each other diagonally, in cells, at the least; and what both radii of a waist and
// the gap may add up to, where a cell is 1.
constexpr double least_gap_cells = 0.07;
constexpr double most_at_waist = 0.995;

double gap_in_cells(double cell_mm, const ArtworkOptions& options) {
    constexpr double hair = 1.002;
    return std::max(least_gap_cells, hair * options.least_gap_mm / cell_mm);
}

struct Named {
    std::vector<std::size_t> words;
    Path path;
};

std::string name_of(const Named& piece, const Puzzle& puzzle) {
    std::string name = piece.words.size() == 1 ? "band of " : "bands of ";
    for (std::size_t i = 0; i < piece.words.size(); ++i)
        name += (i ? ", " : "") + puzzle.words[piece.words[i]].shown;
    return name;
}

bool meet(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

enum class Meeting { surely, never, unknown };

std::vector<Cell> cells_of(const Band& band) {
    const Cell by = step_of(band);
    std::vector<Cell> cells{band.first};
    while (cells.back() != band.last)
        cells.push_back({cells.back().row + by.row, cells.back().column + by.column});
    return cells;
}

// Two bands on one cell share the circle about its letter, but rings only go round it. Where no two cells lie
// side by side or corner to corner, middle lines are a cell apart across or down, and bands are narrower.
Meeting meeting(BandKind kind, std::span<const Cell> one, std::span<const Cell> other) {
    Meeting result = Meeting::never;
    for (const Cell a : one)
        for (const Cell b : other) {
            if (a == b && kind != BandKind::ring) return Meeting::surely;
            if (std::abs(a.row - b.row) <= 1 && std::abs(a.column - b.column) <= 1) result = Meeting::unknown;
        }
    return result;
}

// Shapes that touch or overlap become one, and it carries the words of all. `meeting` tells of two by
// their cells what it can: to look at their outlines takes far longer.
std::vector<Named> joined(const std::vector<Named>& shapes,
                          const std::function<Meeting(std::size_t, std::size_t)>& meeting) {
    std::vector<std::size_t> group(shapes.size());
    for (std::size_t i = 0; i < group.size(); ++i) group[i] = i;
    const auto root = [&](std::size_t i) {
        while (group[i] != i) i = group[i];
        return i;
    };
    std::vector<Box> boxes;
    for (const Named& shape : shapes) boxes.push_back(bounds(shape.path));
    const auto join = [&](std::size_t i, std::size_t j) {
        group[std::max(root(i), root(j))] = std::min(root(i), root(j));
    };
    std::vector<std::pair<std::size_t, std::size_t>> unknown;
    for (std::size_t i = 0; i < shapes.size(); ++i)
        for (std::size_t j = i + 1; j < shapes.size(); ++j) {
            if (!meet(boxes[i], boxes[j])) continue;
            const Meeting found = meeting(i, j);
            if (found == Meeting::surely) join(i, j);
            if (found == Meeting::unknown) unknown.push_back({i, j});
        }
    for (const auto& [i, j] : unknown)
        if (root(i) != root(j) && !shared(shapes[i].path, shapes[j].path).empty()) join(i, j);
    std::vector<Named> result;
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        if (root(i) != i) continue;
        Named whole;
        std::vector<Path> paths;
        for (std::size_t j = i; j < shapes.size(); ++j)
            if (root(j) == i) {
                whole.words.insert(whole.words.end(), shapes[j].words.begin(), shapes[j].words.end());
                paths.push_back(shapes[j].path);
            }
        whole.path = paths.size() == 1 ? paths.front() : united(paths);
        result.push_back(std::move(whole));
    }
    return result;
}

class BandShapes {
  public:
    BandShapes(const Puzzle& puzzle, const std::vector<MarkedWord>& all, const Artwork& artwork,
               const ArtworkOptions& options)
        : puzzle_(puzzle), artwork_(artwork), options_(options) {
        for (const MarkedWord& word : all) all_.push_back(word.band);
    }

    // Of words of one colour, each piece of film once.
    [[nodiscard]] std::vector<Named> of(const std::vector<MarkedWord>& words) const {
        std::vector<Band> bands;
        for (const MarkedWord& word : words) bands.push_back(word.band);
        const std::vector<Waist> waists = waists_among(bands);
        if (options_.band == BandKind::capsule) return capsules(words, bands, waists);
        std::vector<Named> shapes;
        for (const MarkedWord& word : words) shapes.push_back({{word.word}, shape(word, waists)});
        std::vector<std::vector<Cell>> cells;
        for (const Band& band : bands) cells.push_back(cells_of(band));
        return joined(
            shapes, [&](std::size_t i, std::size_t j) { return meeting(options_.band, cells[i], cells[j]); });
    }

  private:
    [[nodiscard]] double radius() const { return artwork_.band_radius_mm / artwork_.cell_mm; }
    // How far the sides of a band are from its middle line at the least, in cells.
    [[nodiscard]] double covered() const { return covered_by(options_.band, radius()); }

    [[nodiscard]] std::vector<Waist> waists_among(const std::vector<Band>& bands) const {
        if (options_.band == BandKind::ring) return {};
        const Grid& grid = puzzle_.grid.grid;
        const auto holds_letter = [&](Cell cell) { return grid.inside(cell) && grid[cell] != closed_cell; };
        // A letter keeps the circle free that a band covers; one on a band also what that may reach beyond.
        const double beyond = radius() - covered();
        const double gap =
            std::min(gap_in_cells(artwork_.cell_mm, options_), most_at_waist - 2 * covered() - beyond);
        return waists_of(bands, all_, holds_letter, covered(), beyond + gap);
    }

    [[nodiscard]] std::vector<Named> capsules(const std::vector<MarkedWord>& words,
                                              const std::vector<Band>& bands,
                                              const std::vector<Waist>& waists) const {
        std::vector<Named> shapes;
        for (BandPiece& piece :
             unite_bands(bands, radius(), least_hole_mm2 / (artwork_.cell_mm * artwork_.cell_mm), waists)) {
            Named shape{{}, transformed(piece.path, artwork_.cell_mm, artwork_.grid_corner)};
            for (const std::size_t band : piece.bands) shape.words.push_back(words[band].word);
            shapes.push_back(std::move(shape));
        }
        return shapes;
    }
    [[nodiscard]] Path shape(const MarkedWord& word, const std::vector<Waist>& waists) const {
        const Point first = artwork_.centre(word.band.first);
        const Point last = artwork_.centre(word.band.last);
        const double radius_mm = artwork_.band_radius_mm;
        if (options_.band == BandKind::ring)
            return ring(
                first, last, radius_mm,
                std::min(0.5 * radius_mm, std::max(ring_line * radius_mm, 1.002 * options_.least_stroke_mm)));
        Path stroke = brush_stroke(first, last, radius_mm, brushed_in * radius_mm,
                                   seed_of(puzzle_.recipe.seed, word.word), options_.least_stroke_mm);
        std::vector<Path> taken;
        for (const Waist& waist : waists)
            if (is_on(waist.from, word.band) && is_on(waist.to, word.band))
                taken.push_back(transformed(taken_by(waist, covered(), radius() + 0.02), artwork_.cell_mm,
                                            artwork_.grid_corner));
        return taken.empty() ? stroke : cut_out(stroke, united(taken));
    }

    const Puzzle& puzzle_;
    const Artwork& artwork_;
    const ArtworkOptions& options_;
    std::vector<Band> all_;
};

// Narrower than so much at every place.
bool is_sliver(const Path& part, double least_stroke_mm) {
    return grown(part, -least_stroke_mm / 2).empty();
}

// What is left of a piece, each part with a number where there are several. Gives how many were left out,
// which no film would hold.
std::size_t append_rest(Layer& layer, const Named& piece, const std::string& name,
                        std::span<const Path> taken, double least_stroke_mm) {
    const Box box = bounds(piece.path);
    std::vector<Path> near;
    for (const Path& path : taken)
        if (meet(box, bounds(path))) near.push_back(path);
    if (near.empty()) {
        layer.pieces.push_back({name, piece.path});
        return 0;
    }
    std::vector<Path> parts = parts_of(cut_out(piece.path, united(near)));
    const std::size_t slivers =
        std::erase_if(parts, [&](const Path& part) { return is_sliver(part, least_stroke_mm); });
    for (std::size_t i = 0; i < parts.size(); ++i)
        layer.pieces.push_back(
            {parts.size() == 1 ? name : name + ", part " + std::to_string(i + 1), parts[i]});
    return slivers;
}

}  // namespace

std::vector<MarkedWord> marked_words(const Puzzle& puzzle, const ArtworkOptions& options) {
    std::vector<MarkedWord> marked;
    if (options.band == BandKind::none || options.band_colours.empty()) return marked;
    const auto& listed = puzzle.recipe.words.words;
    std::size_t turn = 0;
    for (std::size_t i = 0; i < puzzle.words.size(); ++i) {
        const std::string own = i < listed.size() ? listed[i].band : std::string();
        if (own == "none") continue;
        const PlacedWord& word = puzzle.words[i];
        const Band band{word.placed.first, moved(word.placed.first, word.placed.direction,
                                                 static_cast<int>(word.letters.size()) - 1)};
        const auto read = own.empty()
                              ? Outcome<Colour>(options.band_colours[turn++ % options.band_colours.size()])
                              : read_colour(own);
        marked.push_back({band, read ? *read : options.band_colours.front(), i});
    }
    return marked;
}

RadiusBounds radius_bounds(BandKind kind, double cell_mm, const ArtworkOptions& options) {
    if (kind == BandKind::ring) return {ring_radius, ring_radius};
    if (kind == BandKind::brush) return {brush_radius, brush_radius};
    // Where two bands pass each other, both and the gap share a cell.
    const double room = (most_at_waist - gap_in_cells(cell_mm, options)) / 2;
    return {capsule_radius, std::clamp(room, capsule_radius, most_capsule_radius)};
}

double covered_by(BandKind kind, double radius) {
    return kind == BandKind::brush ? brushed_in * radius : radius;
}

std::vector<Layer> band_layers(const Puzzle& puzzle, const std::vector<MarkedWord>& words,
                               const Artwork& artwork, const ArtworkOptions& options, const Layer& letters,
                               std::vector<std::string>& notes) {
    const BandShapes shapes(puzzle, words, artwork, options);
    std::vector<Colour> colours;
    for (const MarkedWord& word : words)
        if (std::find(colours.begin(), colours.end(), word.colour) == colours.end())
            colours.push_back(word.colour);
    std::vector<std::vector<Named>> pieces;
    for (const Colour colour : colours) {
        std::vector<MarkedWord> own;
        for (const MarkedWord& word : words)
            if (word.colour == colour) own.push_back(word);
        pieces.push_back(shapes.of(own));
    }

    std::vector<Path> taken;
    if (options.inlay == Inlay::all)
        for (const Piece& letter : letters.pieces) taken.push_back(letter.path);
    std::vector<Layer> layers;
    std::size_t slivers = 0;
    // From the front to the back: a band loses what the bands before it cover.
    for (std::size_t i = colours.size(); i-- > 0;) {
        Layer layer{colours.size() == 1 ? "bands" : "bands-" + std::to_string(i + 1), colours[i], {}, false};
        for (const Named& piece : pieces[i])
            slivers += append_rest(layer, piece, name_of(piece, puzzle), taken, options.least_stroke_mm);
        if (options.inlay != Inlay::none)
            for (const Named& piece : pieces[i]) taken.push_back(piece.path);
        layers.push_back(std::move(layer));
    }
    if (slivers > 0)
        notes.push_back("Left out of the bands, between what is cut out of them: " +
                        (slivers == 1 ? "a sliver that is" : std::to_string(slivers) + " slivers that are") +
                        " nowhere " + both_units(options.least_stroke_mm) + " wide.");
    std::reverse(layers.begin(), layers.end());
    return layers;
}

}  // namespace lode
