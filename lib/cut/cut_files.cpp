#include <letterlode/cut.hpp>

namespace lode {

std::vector<NamedFile> cut_files(const Artwork& artwork, const CutOptions& options) {
    std::vector<NamedFile> files;
    for (std::size_t i = 0; i < artwork.layers.size(); ++i)
        files.push_back({"layers/" + std::to_string(i + 1) + "-" + artwork.layers[i].name + ".svg",
                         to_svg(layer_drawing(artwork, i))});
    files.push_back({"artwork.svg", to_svg(artwork_drawing(artwork))});
    files.push_back({"preview.png", preview_png(artwork, options.preview_px)});
    return files;
}

}  // namespace lode
