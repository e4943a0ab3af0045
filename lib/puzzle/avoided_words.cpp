#include "puzzle/avoided_words.hpp"

#include <map>

#include "text/quoted.hpp"

namespace lode {
namespace {

// All readings of all words may come to so many bytes, and a word that is read in many ways has so many; else
// the fewest are taken.
constexpr std::size_t most_bytes_read = 16'000'000;
constexpr std::size_t longest_word_read = 1'000;

// Calls take(reading, word, whether it is the word as it is written).
template <class Take>
void each_reading(const std::vector<std::string>& words, const Segmenter& segmenter, Take take) {
    std::size_t bytes = 0;
    for (const auto& word : words) {
        const bool has_room = bytes < most_bytes_read && word.size() <= longest_word_read;
        auto readings = has_room ? segmenter.readings(word) : segmenter.readings(word, 0);
        if (readings.size() > 1)
            for (const auto& reading : readings) bytes += reading.size();
        for (auto& reading : readings) take(std::move(reading), word, &reading == &readings.front());
    }
}

}  // namespace

std::optional<Refusal> bad_avoided_word(const std::string& word, const char* kind,
                                        const Segmenter::Spelling& spelling) {
    if (spelling.bad.empty() && spelling.letters.size() >= 2) return std::nullopt;
    const std::string fault = !spelling.bad.empty()
                                  ? " holds " + quoted(spelling.bad) + ", which can stand in no cell."
                              : spelling.letters.empty() ? " holds no letter."
                                                         : " has only one letter.";
    return Refusal{Refusal::Reason::unusable,
                   std::string("The ") + kind + " word " + quoted(word) + fault,
                   {word},
                   {"Write it with letters alone, two or more, or leave it out."},
                   {},
                   0,
                   spelling.bad_position};
}

std::vector<std::string> avoided_words(const Recipe& recipe) {
    std::vector<std::string> words;
    if (recipe.default_avoid_list) words = avoid_list(recipe.text.locale);
    words.insert(words.end(), recipe.avoid.begin(), recipe.avoid.end());
    return words;
}

std::vector<AvoidedReading> avoided_readings(const Recipe& recipe, const Segmenter& segmenter) {
    std::vector<AvoidedReading> all;
    each_reading(avoided_words(recipe), segmenter,
                 [&](std::string reading, const std::string& word, bool is_as_written) {
                     all.push_back({std::move(reading), without_bars(word), is_as_written});
                 });
    return all;
}

std::vector<std::string> allowed_readings(const Recipe& recipe, const Segmenter& segmenter) {
    std::vector<std::string> all;
    each_reading(recipe.allow, segmenter,
                 [&](std::string reading, const std::string&, bool) { all.push_back(std::move(reading)); });
    return all;
}

Audit named_as_listed(Audit audit, const std::vector<AvoidedReading>& readings) {
    if (audit.avoided.empty() && audit.allowed.empty()) return audit;
    std::map<std::string_view, std::string_view> words;
    for (const auto& [text, word, is_as_written] : readings)
        if (text != word) words.emplace(text, word);
    for (auto* findings : {&audit.avoided, &audit.allowed})
        for (auto& finding : *findings)
            if (const auto known = words.find(finding.word); known != words.end())
                finding.word = known->second;
    return audit;
}

std::optional<Refusal> bad_avoided_word(const Recipe& recipe, const Segmenter& segmenter) {
    for (const auto& [words, kind] : {std::pair(&recipe.avoid, "avoided"), {&recipe.allow, "allowed"}})
        for (const auto& word : *words)
            if (auto refusal = bad_avoided_word(word, kind, segmenter.spell(word))) return refusal;
    return std::nullopt;
}

}  // namespace lode
