// An artwork's layers as drawings to be cut.

#include <algorithm>

#include <letterlode/art.hpp>

#include "art/number.hpp"

namespace lode {

namespace {

std::string one_line(const std::string& heading) {
    std::string line = heading.empty() ? "Word grid" : heading;
    for (char& c : line)
        if (c == '\n') c = ' ';
    return line;
}

std::string order_of(const Artwork& artwork) {
    std::string order;
    for (const Layer& layer : artwork.layers) order += (order.empty() ? "" : ", ") + layer.name;
    return order;
}

std::string description(const Artwork& artwork) {
    const std::string size = "True size: " + decimal(artwork.blank.width_mm, 2) + " x " +
                             decimal(artwork.blank.height_mm, 2) + " mm (" +
                             decimal(artwork.blank.width_mm / 25.4, 3) + " x " +
                             decimal(artwork.blank.height_mm / 25.4, 3) + " in). ";
    const std::string surface =
        artwork.surface == Surface::second
            ? "For the second surface, the back of a clear blank: already mirrored: do not mirror again. "
            : "For the first surface, the front of the blank: not mirrored. ";
    return size + surface + "Order of application: " + order_of(artwork) + ".";
}

// As it is cut: mirrored where the surface asks for it, and moved on by the overhang.
Path as_cut(const Artwork& artwork, const Path& path) {
    const Path turned = artwork.surface == Surface::second ? mirrored(path, artwork.blank.width_mm) : path;
    const double out = artwork.overhang_mm;
    return out > 0 ? transformed(turned, 1, {out, out}) : turned;
}

DrawnGroup group_of(const Artwork& artwork, const Layer& layer) {
    DrawnGroup group{layer.name, layer.colour, {}, {}};
    for (const std::vector<Piece>* pieces : {&layer.pieces, &artwork.registration})
        for (const Piece& piece : *pieces) group.pieces.push_back({piece.name, as_cut(artwork, piece.path)});
    return group;
}

Drawing page_of(const Artwork& artwork, const std::string& what) {
    return {artwork.blank.width_mm + 2 * artwork.overhang_mm,
            artwork.blank.height_mm + 2 * artwork.overhang_mm,
            one_line(artwork.heading) + ": " + what,
            description(artwork),
            {}};
}

}  // namespace

Drawing layer_drawing(const Artwork& artwork, std::size_t layer) {
    const Layer& one = artwork.layers.at(layer);
    Drawing drawing = page_of(artwork, one.name + ", layer " + std::to_string(layer + 1) + " of " +
                                           std::to_string(artwork.layers.size()));
    drawing.groups.push_back(group_of(artwork, one));
    return drawing;
}

Drawing artwork_drawing(const Artwork& artwork) {
    Drawing drawing = page_of(artwork, "all layers");
    for (const Layer& layer : artwork.layers) drawing.groups.push_back(group_of(artwork, layer));
    if (artwork.surface == Surface::second) std::reverse(drawing.groups.begin(), drawing.groups.end());
    return drawing;
}

}  // namespace lode
