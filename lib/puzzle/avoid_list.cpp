#include <letterlode/puzzle.hpp>

#include "puzzle/avoid_lists.hpp"
#include "text/locale.hpp"

namespace lode {
namespace {

// en-GB takes en's list. The root locale is no language, but a maker
// who names none most often writes in English.
const AvoidListText* list_of(std::string_view tag) {
    const auto locale = locale_of(tag);
    if (!locale) return nullptr;
    const std::string_view language = *locale->getLanguage() == '\0' ? "en" : locale->getLanguage();
    for (const auto& list : avoid_list_texts())
        if (list.language == language) return &list;
    return nullptr;
}

}  // namespace

std::vector<std::string> avoid_list(std::string_view tag) {
    const AvoidListText* const list = list_of(tag);
    if (!list) return {};
    const auto lines = read_word_lines(list->text, "data/avoid/" + std::string(list->language) + ".txt");
    std::vector<std::string> words;
    for (const auto& word : lines.value().words) words.push_back(word.shown);
    return words;
}

bool has_avoid_list(std::string_view tag) {
    return list_of(tag) != nullptr;
}

}  // namespace lode
