#include "puzzle/band_words.hpp"

namespace lode {

std::optional<Refusal> fault_in_bands(const WordLines& words) {
    for (const ListedWord& word : words.words) {
        if (word.band.empty() || word.band == "none") continue;
        const auto colour = read_colour(word.band);
        if (colour) continue;
        Refusal refusal = colour.refusal();
        refusal.message = place_in(words.source, word.line) + "the band of \"" + word.shown +
                          "\": " + refusal.message + ".";
        refusal.words = {word.shown};
        refusal.advice.push_back("Write none for a word that is not to be marked.");
        refusal.source = words.source;
        refusal.line = word.line;
        return refusal;
    }
    return std::nullopt;
}

}  // namespace lode
