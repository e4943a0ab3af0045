#pragma once
// A recipe checked at the door: everything that place and fill need, in numbers.

#include <cstdint>
#include <string>
#include <vector>

#include <letterlode/puzzle.hpp>

#include "grid/copy_guard.hpp"

namespace lode {

struct Job {
    Segmenter segmenter;
    WordList list;
    Alphabet alphabet;                          // the words' letters, then the filler's
    std::vector<Letters> words;                 // in the list's order
    std::vector<std::uint32_t> filler_weights;  // by letter
    Directions directions;
    CopyGuard words_guard;
    CopyGuard avoided_guard;  // over the avoided words without the allowed ones
};

// Refused as unusable, naming file, line and words: bad words, a word inside another, a bad avoided word, one
// inside a listed word.
[[nodiscard]] Outcome<Job> check(const Recipe& recipe);

// The cells to fill: the recipe's mask, its shape at its size, or at the smallest size of its aspect on which
// the words' letters take up no more than a comfortable part of the open cells. `growth` asks for larger
// ones: that many cells more.
[[nodiscard]] Outcome<Mask> choose_mask(const Recipe& recipe, const Job& job, std::size_t growth = 0);

// Refused as unusable: a word that is longer than the mask allows in the directions.
[[nodiscard]] std::optional<Refusal> too_long_for(const Mask& mask, const Job& job);

}  // namespace lode
