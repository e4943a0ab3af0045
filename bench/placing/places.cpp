#include "places.hpp"

#include <algorithm>
#include <utility>

namespace lode::bench {
namespace {

bool is_palindrome(const Letters& word) {
    return std::equal(word.begin(), word.end(), word.rbegin());
}

// Whether its first and last cell come before those of all its images.
bool is_first_of_images(const Place& place, int side) {
    using Ends = std::pair<int, int>;
    const auto image = [&](int cell, int symmetry) {
        int row = cell / side, column = cell % side;
        if (symmetry & 1) row = side - 1 - row;
        if (symmetry & 2) column = side - 1 - column;
        if (symmetry & 4) std::swap(row, column);
        return row * side + column;
    };
    const Ends own{place.cells.front(), place.cells.back()};
    for (int symmetry = 1; symmetry < 8; ++symmetry)
        if (Ends{image(own.first, symmetry), image(own.second, symmetry)} < own) return false;
    return true;
}

}  // namespace

std::vector<Place> places_of(const Letters& word, Size size) {
    std::vector<Place> places;
    const Mask mask(size);
    const int last = static_cast<int>(word.size()) - 1;
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column)
            for (const Direction direction : all_directions) {
                if (is_palindrome(word) && direction >= Direction::left) continue;
                if (!mask.inside(moved({row, column}, direction, last))) continue;
                Place& place = places.emplace_back(Place{{{row, column}, direction}, {}});
                for (int at = 0; at <= last; ++at) {
                    const Cell cell = moved({row, column}, direction, at);
                    place.cells.push_back(cell.row * size.columns + cell.column);
                }
            }
    return places;
}

std::vector<std::vector<Place>> places_without_images(const Instance& instance) {
    std::vector<std::vector<Place>> places;
    for (const Letters& word : instance.words) places.push_back(places_of(word, instance.size));
    // The longest word that is no palindrome.
    std::size_t chosen = instance.words.size();
    for (std::size_t word = 0; word < instance.words.size(); ++word)
        if (!is_palindrome(instance.words[word]) &&
            (chosen == instance.words.size() || instance.words[word].size() > instance.words[chosen].size()))
            chosen = word;
    if (chosen < instance.words.size() && instance.size.rows == instance.size.columns)
        std::erase_if(places[chosen],
                      [&](const Place& place) { return !is_first_of_images(place, instance.size.rows); });
    return places;
}

}  // namespace lode::bench
