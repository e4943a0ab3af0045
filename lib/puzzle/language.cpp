#include "puzzle/language.hpp"

namespace lode {
namespace {

Language::InOneCase in_one_case(const TextRules& rules, std::vector<std::string> letters) {
    if (!letters.empty()) return {std::move(letters), {}};
    TextRules english = rules;
    english.locale = "en";
    return {{}, main_letters(english)};
}

}  // namespace

Outcome<std::shared_ptr<const Language>> Language::open(const TextRules& rules) {
    auto segmenter = Segmenter::open(rules);
    if (!segmenter) return segmenter.refusal();
    return std::shared_ptr<const Language>(new Language(std::move(*segmenter)));
}

Language::Language(Segmenter segmenter) : segmenter_(std::move(segmenter)) {
    TextRules rules = segmenter_.rules();
    if (rules.letters != LetterCase::keep)
        cases_.push_back(in_one_case(rules, segmenter_.main_letters()));
    else
        for (const LetterCase letter_case : {LetterCase::upper, LetterCase::lower}) {
            rules.letters = letter_case;
            cases_.push_back(in_one_case(rules, main_letters(rules)));
        }
    for (const auto& [letters, latin] : cases_)
        for (const auto& letter : letters) plain_.emplace(letter, folded(letter));
}

std::string Language::plain(const std::string& letter) const {
    const auto known = plain_.find(letter);
    return known != plain_.end() ? known->second : folded(letter);
}

}  // namespace lode
