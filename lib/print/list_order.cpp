// The words in the order in which a worksheet lists them.

#include <algorithm>

#include <letterlode/print.hpp>

#include "text/alphabetical.hpp"

namespace lode {

namespace {

std::vector<PlacedWord> alphabetical(const std::vector<PlacedWord>& words, const std::string& locale) {
    std::vector<std::string> shown;
    for (const PlacedWord& word : words) shown.push_back(word.shown);
    std::vector<PlacedWord> sorted;
    for (const std::size_t word : alphabetical_order(shown, locale)) sorted.push_back(words[word]);
    return sorted;
}

}  // namespace

std::vector<PlacedWord> listed(const Puzzle& puzzle, ListOrder order) {
    if (order == ListOrder::alphabetical) return alphabetical(puzzle.words, puzzle.recipe.text.locale);
    std::vector<PlacedWord> words = puzzle.words;
    if (order == ListOrder::length)
        std::stable_sort(words.begin(), words.end(), [](const PlacedWord& a, const PlacedWord& b) {
            return a.letters.size() < b.letters.size();
        });
    return words;
}

}  // namespace lode
