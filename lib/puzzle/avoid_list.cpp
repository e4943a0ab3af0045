#include <letterlode/puzzle.hpp>

#include "puzzle/avoid_lists.hpp"

namespace lode {

// The language is the tag's first part: en-GB takes en's list. The root locale is no language, but a maker
// who names none most often writes in English.
std::vector<std::string> avoid_list(std::string_view locale) {
    std::string_view language = locale.substr(0, locale.find_first_of("-_"));
    if (language == "root" || language == "und") language = "en";
    for (const auto& list : avoid_list_texts()) {
        if (list.language != language) continue;
        const auto lines = read_word_lines(list.text, "data/avoid/" + std::string(language) + ".txt");
        std::vector<std::string> words;
        for (const auto& word : lines.value().words) words.push_back(word.shown);
        return words;
    }
    return {};
}

}  // namespace lode
