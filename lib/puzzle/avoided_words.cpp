#include "puzzle/avoided_words.hpp"

#include "text/quoted.hpp"

namespace lode {
namespace {

std::optional<Refusal> bad_word(const std::vector<std::string>& words, const char* kind,
                                const Segmenter& segmenter) {
    for (const auto& word : words) {
        const auto spelling = segmenter.spell(word);
        if (spelling.bad.empty() && spelling.letters.size() >= 2) continue;
        const std::string fault = !spelling.bad.empty()
                                      ? " holds " + quoted(spelling.bad) + ", which can stand in no cell."
                                  : spelling.letters.empty() ? " holds no letter."
                                                             : " has only one letter.";
        return Refusal{Refusal::Reason::unusable,
                       std::string("The ") + kind + " word " + quoted(word) + fault,
                       {word},
                       {"Write it with letters alone, two or more, or leave it out."},
                       {},
                       0};
    }
    return std::nullopt;
}

}  // namespace

std::vector<std::string> avoided_words(const Recipe& recipe) {
    std::vector<std::string> words;
    if (recipe.default_avoid_list) words = avoid_list(recipe.text.locale);
    words.insert(words.end(), recipe.avoid.begin(), recipe.avoid.end());
    return words;
}

std::optional<Refusal> bad_avoided_word(const Recipe& recipe, const Segmenter& segmenter) {
    if (auto refusal = bad_word(recipe.avoid, "avoided", segmenter)) return refusal;
    return bad_word(recipe.allow, "allowed", segmenter);
}

}  // namespace lode
