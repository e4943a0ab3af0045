// How letters look: their ink and likeness, and their measures as they hang on a wall.

#include <algorithm>
#include <cmath>

#include <letterlode/art.hpp>

#include "art/band_layers.hpp"
#include "art/lettering.hpp"
#include "art/outline_polygons.hpp"
#include "art/typefaces.hpp"

namespace lode {
namespace {

// Lattice units of a cap height.
constexpr double units = 2'000;

// In cap heights, standing on the baseline at 0; empty where the font lacks it.
Outcome<Path> drawn(Typeface& font, const std::string& text) {
    const auto line = font.set_line(text);
    if (!line) return line.refusal();
    Path path;
    if (!line->missing.empty()) return path;
    for (const SetLetter& letter : line->letters)
        path.contours.insert(path.contours.end(), letter.path.contours.begin(), letter.path.contours.end());
    return path.empty() ? path : transformed(path, 1 / font.cap_height(), {0, 0});
}

// With its middle at 0, so that pairs are compared by their middles.
ClipperLib::Paths centred(const Path& path) {
    return outline_polygons(transformed(path, 1, {-bounds(path).centre().x, 0}), units);
}

// How wide the first limb is that a level line meets.
double limb_at(const Path& path, double height) {
    const auto polygons = outline_polygons(path, units, 64);
    const double level = height * units;
    std::vector<double> crossings;
    for (const auto& polygon : polygons)
        for (std::size_t at = 0; at < polygon.size(); ++at) {
            const auto& a = polygon[at];
            const auto& b = polygon[(at + 1) % polygon.size()];
            const auto ay = static_cast<double>(a.Y), by = static_cast<double>(b.Y);
            if ((ay <= level) == (by <= level)) continue;
            crossings.push_back(static_cast<double>(a.X) +
                                static_cast<double>(b.X - a.X) * (level - ay) / (by - ay));
        }
    if (crossings.size() < 2) return 0;
    std::sort(crossings.begin(), crossings.end());
    return (crossings[1] - crossings[0]) / units;
}

// The least gap between letters that are neighbours in a row, in cells; nothing where there are none.
std::optional<double> least_gap(const Grid& grid, const Lettering& lettering) {
    std::optional<double> least;
    std::vector<std::optional<Box>> boxes(lettering.letters.size());
    for (std::size_t letter = 0; letter < boxes.size(); ++letter)
        if (!lettering.letters[letter].empty()) boxes[letter] = bounds(lettering.letters[letter]);
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column + 1 < grid.size().columns; ++column) {
            const Letter left = grid[{row, column}], right = grid[{row, column + 1}];
            if (left >= boxes.size() || right >= boxes.size() || !boxes[left] || !boxes[right]) continue;
            const double gap = 1 + boxes[right]->left - boxes[left]->right;
            if (!least || gap < *least) least = gap;
        }
    return least;
}

}  // namespace

Outcome<LetterLooks> letter_looks(const Alphabet& alphabet, const std::string& asked) {
    const std::size_t count = alphabet.size();
    std::vector<std::string> letters;
    for (std::size_t letter = 0; letter < count; ++letter)
        letters.push_back(alphabet.text(static_cast<Letter>(letter)));
    const auto opened = open_typeface("The letters are", asked, letters, ConstructedStyle{});
    if (!opened) return opened.refusal();
    Typeface* const font = opened->typeface.get();
    LetterLooks looks{font->name(), std::vector<double>(count, -1), {}};
    if (font->cap_height() <= 0) return looks;
    std::vector<ClipperLib::Paths> shapes(count);
    for (std::size_t letter = 0; letter < count; ++letter) {
        const auto path = drawn(*font, alphabet.text(static_cast<Letter>(letter)));
        if (!path) return path.refusal();
        if (path->empty()) continue;
        shapes[letter] = centred(*path);
        looks.ink[letter] = covered_area(shapes[letter]) / (units * units);
    }
    if (count > max_letters_compared) return looks;
    looks.likeness.assign(count * count, 0);
    for (std::size_t one = 0; one < count; ++one)
        for (std::size_t other = one + 1; other < count; ++other) {
            if (looks.ink[one] <= 0 || looks.ink[other] <= 0) continue;
            const double shared = shared_area(shapes[one], shapes[other]) / (units * units);
            const double likeness = shared / (looks.ink[one] + looks.ink[other] - shared);
            looks.likeness[one * count + other] = looks.likeness[other * count + one] = likeness;
        }
    return looks;
}

Outcome<LettersSeen> letters_seen(const Puzzle& puzzle, const Artwork& artwork, const ArtworkOptions& options,
                                  double viewing_mm) {
    const auto opened = open_typeface(
        "The letters are", options.font, letters_of(puzzle.grid),
        constructed_style(artwork.cap_height_mm, options.least_stroke_mm, options.least_gap_mm));
    if (!opened) return opened.refusal();
    Typeface* const font = opened->typeface.get();
    auto lettering = set_letters(*font, puzzle.grid);
    if (!lettering) return lettering.refusal();
    if (lettering->cap_height > 0)
        lettering =
            scaled(*std::move(lettering), artwork.cap_height_mm / artwork.cell_mm / lettering->cap_height);
    LettersSeen seen;
    seen.cap_height = artwork.cap_height_mm;
    seen.viewing = viewing_mm;
    seen.line_pitch = artwork.cell_mm;
    if (const auto gap = least_gap(puzzle.grid.grid, *lettering)) seen.letter_gap = *gap * artwork.cell_mm;
    if (font->cap_height() > 0) {
        const auto limb = drawn(*font, "I");
        if (!limb) return limb.refusal();
        if (!limb->empty()) seen.stroke = limb_at(*limb, -0.5) * artwork.cap_height_mm + options.embolden_mm;
        const auto round = drawn(*font, "O");
        if (!round) return round.refusal();
        if (!round->empty()) seen.o_width = bounds(*round).width() * artwork.cap_height_mm;
    }
    seen.letters = options.letters;
    // The band on which letters are worst to read.
    for (const MarkedWord& word : marked_words(puzzle, options))
        if (!seen.bands ||
            contrast_ratio(options.letters, word.colour) < contrast_ratio(options.letters, *seen.bands))
            seen.bands = word.colour;
    seen.blank = Colour{0xff, 0xff, 0xff};
    return seen;
}

}  // namespace lode
