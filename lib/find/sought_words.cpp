#include "find/sought_words.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>

namespace lode {

SoughtWords::SoughtWords(std::span<const Letters> words) {
    std::size_t letters = 0;
    if (!words.empty()) shortest_ = words.front().size();
    for (const Letters& word : words) {
        if (word.empty()) throw std::invalid_argument("a Matcher was given an empty word");
        letters += word.size();
        shortest_ = std::min(shortest_, word.size());
        longest_ = std::max(longest_, word.size());
    }
    letters_.resize(letters);
    codes_.resize(letters);
    words_.resize(words.size() + 1);
    auto next = letters_.begin();
    for (std::size_t at = 0; at < words.size(); ++at) {
        const Letters& word = words[at];
        words_[at].first = static_cast<std::size_t>(next - letters_.begin());
        next = std::copy(word.begin(), word.end(), next);
        words_[at].is_palindrome =
            word.front() == word.back() && std::equal(word.begin(), word.end(), word.rbegin());
    }
    words_.back().first = letters;
    if (letters == 0) return;

    // All letters in one go, whatever the words' lengths, and by way of local variables: a code is a byte,
    // and a byte that is written might be any member.
    code_of_.assign(std::size_t{*std::max_element(letters_.begin(), letters_.end())} + 1, 0);
    LetterCode* const code_of = code_of_.data();
    for (const Letter letter : letters_) code_of[letter] = 1;
    std::size_t letter_count = 0;
    for (LetterCode& code : code_of_) {
        const LetterCode is_used = code;
        code = static_cast<LetterCode>(is_used * (1 + letter_count % (code_count - 1)));
        letter_count += is_used;
    }
    std::array<std::uint64_t, code_count> tally{};
    LetterCode* code = codes_.data();
    for (const Letter letter : letters_) {
        *code = code_of[letter];
        ++tally[*code++];
    }
    tally_ = tally;
    letter_count_ = letter_count;
}

}  // namespace lode
