// The page itself stands in lib/cut/proof as HTML, CSS and JavaScript; what is written here are its drawing,
// its lists and its texts. Scripts and styles run by a nonce, so that nothing else that a word could smuggle
// in would run even if it came through unescaped.

#include "cut/proof_page.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "art/number.hpp"
#include "cut/proof_parts.hpp"
#include "print/html_text.hpp"

namespace lode {

namespace {

constexpr double print_rim_mm = 10;
constexpr int decimals = 4;

std::string mm(double value) {
    return decimal(value, decimals);
}

std::string title_of(const Artwork& artwork) {
    return artwork.heading.empty() ? "Word grid" : artwork.heading;
}

std::string summary(const Artwork& artwork) {
    const auto sides = [&](double unit, int places) {
        return decimal(artwork.blank.width_mm / unit, places) + " x " +
               decimal(artwork.blank.height_mm / unit, places);
    };
    return "Blank " + sides(1, 2) + " mm (" + sides(25.4, 3) + " in). " +
           (artwork.surface == Surface::second
                ? "For the second surface: applied to the back of a clear blank, and seen through it."
                : "For the first surface: applied to the front of the blank.") +
           " Lettering in " + artwork.font + ", capitals " + decimal(artwork.cap_height_mm, 1) + " mm high.";
}

// Layers are numbered in order of application.
std::string film_id(std::size_t layer) {
    return "film-" + std::to_string(layer + 1);
}

// All layers as the viewer sees them, from the back to the front.
Drawing seen_drawing(const Artwork& artwork) {
    Drawing drawing{artwork.blank.width_mm, artwork.blank.height_mm, title_of(artwork), summary(artwork), {}};
    drawing.groups.push_back({"blank", {255, 255, 255}, {{"blank", artwork.blank.outline}}, {}});
    for (std::size_t i = 0; i < artwork.layers.size(); ++i)
        drawing.groups.push_back({film_id(i), artwork.layers[i].colour, artwork.layers[i].pieces, {}});
    if (artwork.surface == Surface::second) std::reverse(drawing.groups.begin() + 1, drawing.groups.end());
    return drawing;
}

// A ring about the letters of each word, so that none is covered, with a light rim, so that it is seen on
// every colour; a dot where the word begins.
std::string key_markup(const Artwork& artwork, const Puzzle& puzzle) {
    const double cell = artwork.cell_mm;
    const double radius = 0.43 * cell;
    const auto ring = [&](const char* look, double length, double width) {
        return std::string("<rect class=\"") + look + "\" x=\"" + mm(-radius) + "\" y=\"" + mm(-radius) +
               "\" width=\"" + mm(length + 2 * radius) + "\" height=\"" + mm(2 * radius) + "\" rx=\"" +
               mm(radius) + "\" stroke-width=\"" + mm(width) + "\"/>";
    };
    std::string key = "<g id=\"key\">\n";
    for (std::size_t i = 0; i < puzzle.words.size(); ++i) {
        const PlacedWord& word = puzzle.words[i];
        const auto letters = static_cast<double>(std::max<std::size_t>(word.letters.size(), 1));
        const Point from = artwork.centre(word.placed.first);
        const Cell by = step(word.placed.direction);
        const bool diagonal = by.row != 0 && by.column != 0;
        const double length = (letters - 1) * cell * (diagonal ? std::sqrt(2.0) : 1);
        // Clockwise from the right.
        const int eighths = by.column > 0 ? by.row : by.column < 0 ? 4 - by.row : 2 * by.row;
        key += "<g data-word=\"" + std::to_string(i) + "\" transform=\"translate(" + mm(from.x) + ' ' +
               mm(from.y) + ") rotate(" + std::to_string(45 * eighths) + ")\">" +
               ring("under", length, 0.13 * cell) + ring("over", length, 0.07 * cell) +
               "<circle class=\"over\" cx=\"" + mm(-radius) + "\" cy=\"0\" r=\"" + mm(0.09 * cell) +
               "\"/></g>\n";
    }
    return key + "</g>\n";
}

std::string drawing_markup(const Artwork& artwork, const Puzzle& puzzle) {
    std::string svg = to_svg(seen_drawing(artwork));
    svg.erase(0, svg.find("<svg"));
    return svg.insert(svg.rfind("</svg>"), key_markup(artwork, puzzle));
}

std::string layer_list(const Artwork& artwork) {
    std::string list;
    for (std::size_t i = 0; i < artwork.layers.size(); ++i) {
        const Layer& layer = artwork.layers[i];
        const std::string colour = to_text(layer.colour);
        // As the job sheet counts them: the dot of an i is one of its own.
        std::size_t shapes = 0;
        for (const Piece& piece : layer.pieces)
            shapes +=
                static_cast<std::size_t>(std::count_if(piece.path.contours.begin(), piece.path.contours.end(),
                                                       [](const Contour& c) { return signed_area(c) > 0; }));
        list += "<li><label><input type=\"checkbox\" name=\"film\" value=\"" + std::to_string(i + 1) +
                "\" checked> <svg class=\"swatch\" viewBox=\"0 0 16 16\" aria-hidden=\"true\"><rect "
                "x=\"0.5\" y=\"0.5\" "
                "width=\"15\" height=\"15\" rx=\"3\" fill=\"" +
                colour + "\"/></svg> <span>" + std::to_string(i + 1) + ". " + html_text(layer.name) +
                " <span class=\"detail\">" + colour + ", " + std::to_string(shapes) +
                (shapes == 1 ? " piece" : " pieces") + "</span></span></label></li>\n";
    }
    return list;
}

std::string word_list(const Puzzle& puzzle) {
    std::string list;
    for (const PlacedWord& word : puzzle.words)
        list += "<li><button type=\"button\" aria-pressed=\"false\"><bdi>" + html_text(word.shown) +
                "</bdi></button></li>\n";
    return list;
}

}  // namespace

std::string proof_html(const Artwork& artwork, const Puzzle& puzzle) {
    const ProofParts& parts = proof_parts();
    const bool second = artwork.surface == Surface::second;
    const std::string page_size = "@page { size: " + mm(artwork.blank.width_mm + 2 * print_rim_mm) + "mm " +
                                  mm(artwork.blank.height_mm + 2 * print_rim_mm) +
                                  "mm; margin: " + mm(print_rim_mm) + "mm; }";
    return filled_in(parts.page,
                     {{"title", html_text(title_of(artwork))},
                      {"page-size", page_size},
                      {"style", std::string(parts.style)},
                      {"summary", html_text(summary(artwork))},
                      {"width", mm(artwork.blank.width_mm)},
                      {"height", mm(artwork.blank.height_mm)},
                      {"drawing", drawing_markup(artwork, puzzle)},
                      {"layers", layer_list(artwork)},
                      {"front", second ? "Front, as the viewer sees it"
                                       : "Front, as the viewer sees it: the side that you work on"},
                      {"back", second ? "Back, mirrored: the side that you work on" : "Back, mirrored"},
                      {"words", word_list(puzzle)},
                      {"script", std::string(parts.script)}});
}

}  // namespace lode
