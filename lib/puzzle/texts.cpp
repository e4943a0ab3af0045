#include <algorithm>

#include <letterlode/puzzle.hpp>

#include "puzzle/place_text.hpp"
#include "text/direction.hpp"
#include "text/display_width.hpp"

namespace lode {
namespace {

template <class Words>
std::size_t widest(const Words& words) {
    std::size_t most = 0;
    for (const auto& word : words) most = std::max(most, display_width(word.shown));
    return most;
}

// A word that can be read inside another may have a place of its own besides.
bool stands_inside(const Puzzle& puzzle, const PlacedWord& word) {
    const auto outer = std::find_if(puzzle.words.begin(), puzzle.words.end(),
                                    [&](const PlacedWord& other) { return other.shown == word.inside; });
    if (word.inside.empty() || outer == puzzle.words.end()) return false;
    const auto end_of = [](const PlacedWord& of) {
        return moved(of.placed.first, of.placed.direction, static_cast<int>(of.letters.size()) - 1);
    };
    const auto is_on_outer = [&](Cell cell) {
        for (int at = 0; at < static_cast<int>(outer->letters.size()); ++at)
            if (moved(outer->placed.first, outer->placed.direction, at) == cell) return true;
        return false;
    };
    return is_on_outer(word.placed.first) && is_on_outer(end_of(word));
}

}  // namespace

std::string puzzle_text(const Puzzle& puzzle) {
    std::string text = grid_text(puzzle.grid.grid, puzzle.grid.alphabet) + "\n";
    for (const auto& word : puzzle.words) text += isolated(word.shown) + "\n";
    return text;
}

std::string key_text(const Puzzle& puzzle) {
    const std::size_t across = widest(puzzle.words);
    std::string text;
    for (const auto& word : puzzle.words)
        text += from_the_left(padded(isolated(word.shown), across + 2) + place_text(word.placed.first) +
                              ", " + std::string(name(word.placed.direction)) +
                              (stands_inside(puzzle, word) ? ", inside " + isolated(word.inside) : "")) +
                "\n";
    if (!puzzle.recipe.message.empty())
        text += "\n" +
                from_the_left("The other cells spell, row by row: " + isolated(puzzle.recipe.message)) +
                (puzzle.recipe.filler_after_message ? "\nFiller follows it.\n" : "\n");
    return text;
}

}  // namespace lode
