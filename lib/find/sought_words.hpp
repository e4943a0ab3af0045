#pragma once
// The words that a Matcher seeks, in an alphabet of their own: the letters of the list are numbered anew, so
// that whatever the grid's alphabet is, a letter is a code of five bits. Letters that the list does not have
// share code 0 with closed cells: no word covers them. A list of more than 31 letters has several letters a
// code; what is found by codes must then be looked at again (see is_exact).

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include <letterlode/text.hpp>

namespace lode {

using LetterCode = std::uint8_t;
inline constexpr std::size_t code_count = 32;  // 0 and 31 codes of letters

class SoughtWords {
  public:
    // Throws std::invalid_argument for an empty word. Linear in the letters.
    explicit SoughtWords(std::span<const Letters> words);

    [[nodiscard]] std::size_t size() const { return words_.size() - 1; }
    [[nodiscard]] std::size_t length(std::size_t word) const {
        return words_[word + 1].first - words_[word].first;
    }
    [[nodiscard]] std::span<const Letter> letters(std::size_t word) const {
        return {letters_.data() + words_[word].first, length(word)};
    }
    [[nodiscard]] const LetterCode* codes(std::size_t word) const {
        return codes_.data() + words_[word].first;
    }
    [[nodiscard]] bool is_palindrome(std::size_t word) const { return words_[word].is_palindrome; }
    // Of no words both are 0.
    [[nodiscard]] std::size_t shortest() const { return shortest_; }
    [[nodiscard]] std::size_t longest() const { return longest_; }

    // By letter, as far as the list's own letters go.
    [[nodiscard]] std::span<const LetterCode> code_of() const { return code_of_; }
    // Whether a code stands for one letter only.
    [[nodiscard]] bool is_exact() const { return letter_count_ < code_count; }
    // By code, how many of the list's letters have it.
    [[nodiscard]] std::span<const std::uint64_t, code_count> tally() const { return tally_; }

  private:
    struct Word {
        std::size_t first = 0;  // letter
        bool is_palindrome = false;
    };
    std::vector<Letter> letters_;    // of all words, one after another
    std::vector<LetterCode> codes_;  // the same
    std::vector<Word> words_;        // and one that is the end
    std::vector<LetterCode> code_of_;
    std::array<std::uint64_t, code_count> tally_{};
    std::size_t letter_count_ = 0;
    std::size_t shortest_ = 0;
    std::size_t longest_ = 0;
};

}  // namespace lode
