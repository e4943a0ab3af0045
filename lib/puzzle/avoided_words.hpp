#pragma once
// The words that a recipe avoids and those of them that it allows, as written.

#include <optional>
#include <string>
#include <vector>

#include <letterlode/puzzle.hpp>

namespace lode {

// The default list where the recipe wants it, then the recipe's own.
[[nodiscard]] std::vector<std::string> avoided_words(const Recipe& recipe);

// Refused as unusable: an avoided or allowed word of fewer than two letters, which would stand in no grid or
// in almost every one, or with a character that can stand in no cell.
[[nodiscard]] std::optional<Refusal> bad_avoided_word(const Recipe& recipe, const Segmenter& segmenter);
// The same of one word, "avoided" or "allowed", that is spelled already.
[[nodiscard]] std::optional<Refusal> bad_avoided_word(const std::string& word, const char* kind,
                                                      const Segmenter::Spelling& spelling);

}  // namespace lode
