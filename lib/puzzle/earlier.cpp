#include <letterlode/puzzle.hpp>

namespace lode {

Earlier earlier_of(const Puzzle& puzzle, bool keep_filler) {
    Earlier earlier;
    // As listed, not as shown: a bar says which letters stand where.
    const auto& listed = puzzle.recipe.words.words;
    for (std::size_t at = 0; at < puzzle.words.size(); ++at) {
        const PlacedWord& word = puzzle.words[at];
        const bool is_listed = at < listed.size() && without_bars(listed[at].shown) == word.shown;
        earlier.words.push_back({is_listed ? listed[at].shown : word.shown, word.placed});
    }
    if (!keep_filler) return earlier;
    const Grid& grid = puzzle.grid.grid;
    for (const Letter letter : grid.letters())
        earlier.filler.push_back(letter == closed_cell ? std::string() : puzzle.grid.alphabet.text(letter));
    for (const PlacedWord& word : puzzle.words)
        for (int at = 0; at < static_cast<int>(word.letters.size()); ++at)
            earlier.filler[grid.index(moved(word.placed.first, word.placed.direction, at))].clear();
    return earlier;
}

}  // namespace lode
