#pragma once
// Every place where a word can stand, for peers that choose among them all.

#include <cstdint>
#include <vector>

#include "contest.hpp"

namespace lode::bench {

struct Place {
    Placement placement;
    std::vector<int> cells;  // in row order, by the word's letters
};

// Each set of cells once: a palindrome is not read from both ends.
[[nodiscard]] std::vector<Place> places_of(const Letters& word, Size size);

// By word, all places; of one word only those that differ under the square's eight symmetries. Rules and
// directions are the same for all eight images of a solution, so that one of them is enough. Every peer that
// searches exhaustively is given this.
[[nodiscard]] std::vector<std::vector<Place>> places_without_images(const Instance& instance);

}  // namespace lode::bench
