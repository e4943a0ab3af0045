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

// Half as wide as a band is, in cells; 0 without words.
[[nodiscard]] double radius_of(const std::vector<MarkedWord>& words, BandKind kind);

// Layers in the order in which their colours are met first, from the viewer's back to the front. The
// artwork's cells, corner and radius must be known. `letters` is what is cut out of them where the options
// ask for it.
[[nodiscard]] std::vector<Layer> band_layers(const Puzzle& puzzle, const std::vector<MarkedWord>& words,
                                             const Artwork& artwork, const ArtworkOptions& options,
                                             const Layer& letters);

}  // namespace lode
