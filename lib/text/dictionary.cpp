#include <algorithm>

#include <letterlode/text.hpp>

#include "text/utf8.hpp"

namespace lode {
namespace {

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \r");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \r") - first + 1);
}

}  // namespace

Outcome<std::vector<std::string>> read_dictionary(std::string_view text, std::string_view source) {
    const auto refused = [&](const std::string& fault, const std::string& advice) {
        return Refusal{
            Refusal::Reason::unusable, place_in(source, 0) + fault, {}, {advice}, std::string(source), 0};
    };
    text = without_byte_order_mark(text);
    std::vector<std::string> words;
    while (!text.empty()) {
        const auto end = std::min(text.find('\n'), text.size());
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        const std::string_view word = trimmed(line.substr(0, line.find_first_of("/\t")));
        if (word.empty() || word.size() > max_word_bytes || !is_utf8(word)) continue;
        if (words.size() == max_dictionary_words)
            return refused("a dictionary holds at most " + std::to_string(max_dictionary_words) + " words.",
                           "Leave out the words that are too short to be told or too long for the grid.");
        words.emplace_back(word);
    }
    if (words.empty())
        return refused("there is no word in the dictionary.", "Write a word a line, as UTF-8 text.");
    return words;
}

}  // namespace lode
