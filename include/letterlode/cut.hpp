#pragma once
// Artwork as the files that a maker works from.

#include <string>
#include <vector>

#include <letterlode/art.hpp>
#include <letterlode/export.hpp>
#include <letterlode/files.hpp>

namespace lode {

struct CutOptions {
    int preview_px = 1'600;  // the longer side of preview.png
};

// "layers/1-letters.svg" and so on, numbered in order of application; "artwork.svg" with all layers;
// "preview.png".
[[nodiscard]] LODE_API std::vector<NamedFile> cut_files(const Artwork& artwork,
                                                        const CutOptions& options = {});

}  // namespace lode
