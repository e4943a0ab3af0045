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
                              (word.inside.empty() ? "" : ", inside " + isolated(word.inside))) +
                "\n";
    return text;
}

}  // namespace lode
