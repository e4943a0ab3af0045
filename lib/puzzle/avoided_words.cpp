#include "puzzle/avoided_words.hpp"

#include "text/quoted.hpp"

namespace lode {
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
                   0};
}

std::vector<std::string> avoided_words(const Recipe& recipe) {
    std::vector<std::string> words;
    if (recipe.default_avoid_list) words = avoid_list(recipe.text.locale);
    words.insert(words.end(), recipe.avoid.begin(), recipe.avoid.end());
    return words;
}

std::optional<Refusal> bad_avoided_word(const Recipe& recipe, const Segmenter& segmenter) {
    for (const auto& [words, kind] : {std::pair(&recipe.avoid, "avoided"), {&recipe.allow, "allowed"}})
        for (const auto& word : *words)
            if (auto refusal = bad_avoided_word(word, kind, segmenter.spell(word))) return refusal;
    return std::nullopt;
}

}  // namespace lode
