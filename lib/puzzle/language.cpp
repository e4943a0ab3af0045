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
    if (rules.letters != LetterCase::keep) {
        cases_.push_back(in_one_case(rules, segmenter_.main_letters()));
        return;
    }
    for (const LetterCase letter_case : {LetterCase::upper, LetterCase::lower}) {
        rules.letters = letter_case;
        cases_.push_back(in_one_case(rules, main_letters(rules)));
    }
}

}  // namespace lode
