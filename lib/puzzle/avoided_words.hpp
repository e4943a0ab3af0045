#pragma once
// The words that a recipe avoids and those of them that it allows, as written.

#include <optional>
#include <string>
#include <vector>

#include <letterlode/puzzle.hpp>

namespace lode {

// The default list where the recipe wants it, then the recipe's own.
[[nodiscard]] std::vector<std::string> avoided_words(const Recipe& recipe);

// A way in which an avoided word can stand in cells: "chwd" in Welsh with CH in one cell, or in two.
struct AvoidedReading {
    std::string text;  // that the recipe's segmenter takes apart in this way
    std::string word;  // as listed
};

// Every reading of each avoided word (of very many the word itself and the one that joins no letters).
[[nodiscard]] std::vector<AvoidedReading> avoided_readings(const Recipe& recipe, const Segmenter& segmenter);
// Likewise of the words that are allowed.
[[nodiscard]] std::vector<std::string> allowed_readings(const Recipe& recipe, const Segmenter& segmenter);

// The audit of texts, with the words that they are readings of.
[[nodiscard]] Audit named_as_listed(Audit audit, const std::vector<AvoidedReading>& readings);

// Refused as unusable: an avoided or allowed word of fewer than two letters, which would stand in no grid or
// in almost every one, or with a character that can stand in no cell.
[[nodiscard]] std::optional<Refusal> bad_avoided_word(const Recipe& recipe, const Segmenter& segmenter);

}  // namespace lode
