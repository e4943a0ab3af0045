#pragma once
// A recipe checked at the door: everything that place and fill need, in numbers.

#include <cstdint>
#include <string>
#include <vector>

#include <letterlode/puzzle.hpp>

#include "fill/filler_rules.hpp"
#include "grid/copy_guard.hpp"
#include "puzzle/nested_words.hpp"

namespace lode {

struct Job {
    Segmenter segmenter;
    WordList list;
    Alphabet alphabet;           // the words' letters, then the message's, then the filler's
    std::vector<Letters> words;  // in the list's order
    NestedWords nested;
    Letters message;
    std::vector<std::uint32_t> filler_weights;  // by letter
    FillerRules filler_rules;
    Directions directions;
    bool right_to_left = false;        // the script of the words
    std::vector<std::string> avoided;  // by their numbers in the guard
    CopyGuard avoided_guard;           // over the avoided words without the allowed ones
};

// Refused as unusable, naming file, line and words: bad words, a word that others hold more than once, a bad
// avoided word, one inside a listed word or the message.
[[nodiscard]] Outcome<Job> check(const Recipe& recipe);

}  // namespace lode
