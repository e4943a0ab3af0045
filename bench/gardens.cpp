#include "gardens.hpp"

#include <algorithm>
#include <random>
#include <stdexcept>
#include <string_view>

namespace lode::bench {

std::vector<std::string> invented_words(int count, int least, int most, std::uint64_t seed) {
    constexpr std::string_view consonants = "BCDFGHJKLMNPRSTVWZ";
    constexpr std::string_view vowels = "AEIOU";
    std::mt19937_64 chance(seed);
    std::vector<std::string> words;
    while (static_cast<int>(words.size()) < count) {
        const auto length =
            static_cast<std::uint64_t>(least) + chance() % static_cast<std::uint64_t>(most - least + 1);
        std::string word;
        for (std::uint64_t at = 0; at < length; ++at) {
            const std::string_view letters = at % 2 == 0 ? consonants : vowels;
            word += letters[chance() % letters.size()];
        }
        const std::string turned(word.rbegin(), word.rend());
        const bool nested = std::any_of(words.begin(), words.end(), [&](const std::string& other) {
            const std::string other_turned(other.rbegin(), other.rend());
            return other.find(word) != std::string::npos || other.find(turned) != std::string::npos ||
                   word.find(other) != std::string::npos || word.find(other_turned) != std::string::npos;
        });
        if (!nested) words.push_back(word);
    }
    return words;
}

Recipe recipe_of(const std::vector<std::string>& words, Size size) {
    Recipe recipe;
    for (const auto& word : words) recipe.words.words.push_back({word, 0});
    recipe.size = size;
    recipe.directions = Directions::all();
    recipe.default_avoid_list = false;
    return recipe;
}

const Puzzle& large_puzzle() {
    static const Puzzle puzzle = [] {
        auto made = make(recipe_of(invented_words(300, 5, 12, 1), {300, 300}));
        if (!made) throw std::runtime_error("the large puzzle was refused: " + made.refusal().message);
        return std::move(made).value();
    }();
    return puzzle;
}

}  // namespace lode::bench
