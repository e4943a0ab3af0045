#pragma once
// Everything of an artwork that is set in type, and where it stands: chosen together, since how large the
// letters come out decides how strong the constructed alphabet draws them, and that in turn how wide they
// are.

#include <string>
#include <vector>

#include <letterlode/art.hpp>
#include <letterlode/puzzle.hpp>

#include "art/band_layers.hpp"
#include "art/layout.hpp"
#include "art/lettering.hpp"
#include "art/text_block.hpp"

namespace lode {

struct Setting {
    Lettering lettering;
    TextBlock heading;
    TextBlock words;
    TextBlock foot;
    Layout layout;
    double band_radius = 0;  // cells
    std::string font;
    std::string heading_font;
    std::vector<std::string> sticking_out;  // letters that reach beyond their bands
    std::vector<std::string> notes;
};

// The rim that is kept clear: as it was asked for, or by the size of the blank.
[[nodiscard]] double margin_of(const ArtworkOptions& options);

// Small words are as large as the constructed alphabet needs for film: three strokes and two gaps stand above
// each other in a capital. In mm; 0 in other fonts.
[[nodiscard]] double least_text_cap(const ArtworkOptions& options);

// The room that is left on the blank within rebate, border and margin.
struct FreeRoom {
    Path region;
    std::optional<Box> box;  // where the room is this and nothing less
};
[[nodiscard]] FreeRoom room_on(const ArtworkOptions& options);

// Refused as unusable: fonts and texts that cannot be used, letters that a font lacks, a blank that is too
// small.
[[nodiscard]] Outcome<Setting> set(const Puzzle& puzzle, const ArtworkOptions& options,
                                   const std::vector<MarkedWord>& marked);

}  // namespace lode
