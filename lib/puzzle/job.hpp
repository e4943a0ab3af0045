#pragma once
// A recipe checked at the door: everything that place and fill need, in numbers.

#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include <letterlode/puzzle.hpp>

#include "fill/filler_rules.hpp"
#include "grid/copy_guard.hpp"
#include "puzzle/avoidance.hpp"
#include "puzzle/language.hpp"
#include "puzzle/nested_words.hpp"

namespace lode {

struct Job {
    std::shared_ptr<const Language> language;
    std::shared_ptr<const Avoidance> avoidance;
    WordList list;
    Alphabet alphabet;           // the words' letters, then the message's, then the filler's
    std::vector<Letters> words;  // in the list's order
    NestedWords nested;
    Letters message;
    std::vector<std::uint32_t> filler_weights;  // by letter
    FillerRules filler_rules;
    Directions directions;
    bool right_to_left = false;        // the script of the words
    CopyGuard avoided_guard;           // over those of the avoided words that can stand in the grid
    std::vector<std::size_t> guarded;  // and their places among all, where that is not the same

    [[nodiscard]] const Segmenter& segmenter() const { return language->segmenter(); }
    // By its number in the guard.
    [[nodiscard]] const std::string& avoided_word(std::size_t number) const {
        return avoidance->names()[guarded.empty() ? number : guarded[number]];
    }
};

// What may have been worked out before; none: not.
struct KnownOfRecipe {
    std::shared_ptr<const Language> language;
    std::shared_ptr<const Avoidance> avoidance;
};

// Refused as unusable, naming file, line and words: bad words, a word that others hold more than once, a bad
// avoided word, one inside a listed word or the message.
[[nodiscard]] Outcome<Job> check(const Recipe& recipe, KnownOfRecipe known = {});

}  // namespace lode
