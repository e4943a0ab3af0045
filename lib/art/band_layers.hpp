#pragma once
// The bands of an artwork's words as layers, one a colour.

#include <vector>

#include <letterlode/art.hpp>
#include <letterlode/puzzle.hpp>

#include "art/bands.hpp"

namespace lode {

struct MarkedWord {
    Band band;
    Colour colour;
    std::size_t word = 0;  // its place among the puzzle's words
};

// The words that get a band, with the colour of each: the list's, or one of the options' in turn.
[[nodiscard]] std::vector<MarkedWord> marked_words(const Puzzle& puzzle, const ArtworkOptions& options);

// Half as wide as a band is, in cells: at the least, and, where letters need it, at the most.
struct RadiusBounds {
    double least;
    double most;
};
[[nodiscard]] RadiusBounds radius_bounds(BandKind kind, double cell_mm, const ArtworkOptions& options);
// How far a band of this radius is sure to reach from its middle line.
[[nodiscard]] double covered_by(BandKind kind, double radius);

// Layers in the order in which their colours are met first, from the viewer's back to the front. The
// artwork's cells, corner and radius must be known. `letters` is what is cut out of them where the options
// ask for it. What is left of a band but narrower than the least stroke at every place is left out, and
// noted.
[[nodiscard]] std::vector<Layer> band_layers(const Puzzle& puzzle, const std::vector<MarkedWord>& words,
                                             const Artwork& artwork, const ArtworkOptions& options,
                                             const Layer& letters, std::vector<std::string>& notes);

}  // namespace lode
