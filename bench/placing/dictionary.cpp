#include "dictionary.hpp"

#include <algorithm>
#include <fstream>
#include <stdexcept>
#include <string>

#include <letterlode/puzzle.hpp>

#include "puzzle/avoided_words.hpp"

namespace lode::bench {
namespace {

constexpr std::size_t shortest = 4, longest = 10;

// The engine refuses a list with an avoided word in it.
bool holds_avoided(const std::string& word) {
    static const auto avoided = avoided_words(Recipe());
    const std::string turned(word.rbegin(), word.rend());
    return std::any_of(avoided.begin(), avoided.end(), [&](const std::string& other) {
        return word.find(other) != std::string::npos || turned.find(other) != std::string::npos;
    });
}

std::vector<std::vector<Letters>> read_words() {
    std::vector<std::vector<Letters>> words(longest + 1);
    std::ifstream file(LODE_ENGLISH_WORDS);
    for (std::string word; std::getline(file, word);) {
        if (word.size() < shortest || word.size() > longest ||
            word.find_first_not_of("abcdefghijklmnopqrstuvwxyz") != std::string::npos || holds_avoided(word))
            continue;
        Letters letters;
        for (const char letter : word) letters.push_back(static_cast<Letter>(letter - 'a'));
        words[word.size()].push_back(letters);
    }
    if (words[shortest].empty())
        throw std::runtime_error(LODE_ENGLISH_WORDS " is missing: install the package wamerican");
    return words;
}

// Pieces of four letters and more, which a word of the list may be.
std::set<Letters> pieces_of(const Letters& word) {
    std::set<Letters> pieces;
    for (const Letters& read : {word, Letters(word.rbegin(), word.rend())})
        for (std::size_t first = 0; first < read.size(); ++first)
            for (std::size_t end = first + shortest; end <= read.size(); ++end)
                pieces.emplace(read.begin() + static_cast<std::ptrdiff_t>(first),
                               read.begin() + static_cast<std::ptrdiff_t>(end));
    return pieces;
}

}  // namespace

const std::vector<std::vector<Letters>>& words_by_length() {
    static const auto words = read_words();
    return words;
}

const Letters& drawn_word(std::size_t least, std::size_t most, Random& random) {
    const auto& words = words_by_length();
    std::size_t count = 0;
    for (std::size_t length = least; length <= most; ++length) count += words[length].size();
    std::size_t chosen = random.below(static_cast<std::uint32_t>(count));
    for (std::size_t length = least;; ++length) {
        if (chosen < words[length].size()) return words[length][chosen];
        chosen -= words[length].size();
    }
}

bool WordsApart::take(const Letters& word) {
    if (pieces_.count(word) > 0) return false;
    const auto pieces = pieces_of(word);
    if (std::any_of(pieces.begin(), pieces.end(),
                    [&](const Letters& piece) { return known_.count(piece) > 0; }))
        return false;
    known_.insert(word);
    pieces_.insert(pieces.begin(), pieces.end());
    words_.push_back(word);
    letters_ += word.size();
    return true;
}

}  // namespace lode::bench
