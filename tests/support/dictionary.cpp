#include "support/dictionary.hpp"

#include <algorithm>
#include <fstream>
#include <map>
#include <random>
#include <stdexcept>

namespace lode::test {
namespace {

bool holds(const std::string& outer, const std::string& inner) {
    return outer.find(inner) != std::string::npos ||
           outer.find(std::string(inner.rbegin(), inner.rend())) != std::string::npos;
}

}  // namespace

const std::vector<std::string>& english_words(int least, int most) {
    static std::map<std::pair<int, int>, std::vector<std::string>> known;
    auto& words = known[{least, most}];
    if (!words.empty()) return words;
    std::ifstream file(LODE_ENGLISH_WORDS);
    for (std::string word; std::getline(file, word);) {
        const bool plain =
            std::all_of(word.begin(), word.end(), [](char letter) { return letter >= 'a' && letter <= 'z'; });
        if (!plain || static_cast<int>(word.size()) < least || static_cast<int>(word.size()) > most) continue;
        std::transform(word.begin(), word.end(), word.begin(),
                       [](char letter) { return static_cast<char>(letter - 'a' + 'A'); });
        words.push_back(word);
    }
    if (words.empty())
        throw std::runtime_error(LODE_ENGLISH_WORDS " is missing: install the package wamerican");
    return words;
}

std::vector<std::string> drawn_list(const std::vector<std::string>& words, int count,
                                    const std::vector<std::string>& avoided, std::uint64_t seed) {
    std::mt19937_64 chance(seed);
    std::vector<std::string> list;
    while (static_cast<int>(list.size()) < count) {
        const std::string& word = words[chance() % words.size()];
        const bool nested = std::any_of(list.begin(), list.end(), [&](const std::string& other) {
            return holds(other, word) || holds(word, other);
        });
        const bool rude = std::any_of(avoided.begin(), avoided.end(),
                                      [&](const std::string& other) { return holds(word, other); });
        if (!nested && !rude) list.push_back(word);
    }
    return list;
}

}  // namespace lode::test
