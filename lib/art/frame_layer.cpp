#include "art/frame_layer.hpp"

#include <algorithm>

#include "art/border.hpp"
#include "art/ornament.hpp"
#include "art/text_block.hpp"

namespace lode {

namespace {

// By eye, in shares of the margin: where a border begins, and how far content keeps from it.
constexpr double border_begins = 0.3;
constexpr double least_begin_mm = 2.5;
// Ornaments, in lines, as small as they can be drawn, and of the blank, by eye.
constexpr double least_divider = 75;
constexpr double divider_share = 0.42;
constexpr double least_flourish = 40;
constexpr double flourish_share = 0.16;

double gap_of(const ArtworkOptions& options) {
    return std::min(options.least_gap_mm, options.border_line_mm);
}

Path divider_of(const ArtworkOptions& options) {
    const double width =
        std::max(least_divider * options.border_line_mm, divider_share * options.blank.width_mm);
    return divider(*options.ornament, width, options.border_line_mm, gap_of(options));
}

bool has_divider(const ArtworkOptions& options) {
    if (!options.ornament || lines_of(options.heading).empty()) return false;
    // On a blank that is hardly wider than the smallest there is no room for one.
    constexpr double most_share = 0.8;
    return least_divider * options.border_line_mm <= most_share * options.blank.width_mm;
}

bool meet(const Box& a, const Box& b, double apart) {
    return a.left < b.right + apart && b.left < a.right + apart && a.top < b.bottom + apart &&
           b.top < a.bottom + apart;
}

// By the boxes of contours: a flourish has its middle open.
bool is_clear(const Path& path, const std::vector<Layer>& layers, double apart) {
    for (const Contour& contour : path.contours) {
        const Box own = bounds({{contour}});
        for (const Layer& layer : layers)
            for (const Piece& piece : layer.pieces)
                if (meet(own, bounds(piece.path), apart)) return false;
    }
    return true;
}

}  // namespace

BorderBand border_band(const ArtworkOptions& options, double margin_mm) {
    if (!options.border) return {options.rebate_mm, options.rebate_mm};
    const double from = options.rebate_mm + std::max(least_begin_mm, border_begins * margin_mm);
    return {from, from + border_lines(options.blank.outline, *options.border) * options.border_line_mm};
}

Box divider_box(const ArtworkOptions& options) {
    if (!has_divider(options)) return {};
    const Box box = bounds(divider_of(options));
    return {0, 0, box.width(), box.height() + 2 * options.border_line_mm};
}

Layer frame_layer(const ArtworkOptions& options, const Layout& layout, double margin_mm,
                  const std::vector<Layer>& others, std::vector<std::string>& notes) {
    Layer layer{"border", options.border_colour.value_or(options.heading_colour), {}};
    const BorderBand band = border_band(options, margin_mm);
    if (options.border) {
        Path path = border(options.blank.outline, *options.border, band.from, options.border_line_mm);
        if (path.empty())
            notes.push_back("The blank is too small for a border, which was left out.");
        else
            layer.pieces.push_back({"border", std::move(path)});
    }
    if (!options.ornament) return layer;
    if (!has_divider(options) && !lines_of(options.heading).empty())
        notes.push_back("The blank is too narrow for an ornament below the heading, which was left out.");
    if (has_divider(options)) {
        const Path path = divider_of(options);
        const Box box = bounds(path);
        layer.pieces.push_back(
            {"divider",
             transformed(path, 1, {layout.divider.x - box.centre().x, layout.divider.y - box.centre().y})});
    }
    const double in = band.to + 0.35 * margin_mm;
    const double size = std::max(least_flourish * options.border_line_mm,
                                 flourish_share * std::min(options.blank.width_mm, options.blank.height_mm));
    bool is_left_out = !options.blank.is_rectangle();
    if (options.blank.is_rectangle()) {
        const Box inner{in, in, options.blank.width_mm - in, options.blank.height_mm - in};
        const auto corners = in_corners(
            corner_flourish(*options.ornament, size, options.border_line_mm, gap_of(options)), inner);
        is_left_out = std::any_of(corners.begin(), corners.end(), [&](const Path& path) {
            return !is_clear(path, others, 2 * options.least_gap_mm);
        });
        if (!is_left_out)
            for (const Path& path : corners) layer.pieces.push_back({"flourish", path});
    }
    if (is_left_out)
        notes.push_back(
            "There is no room for flourishes in the corners; a wider --margin or a larger blank makes some.");
    return layer;
}

}  // namespace lode
