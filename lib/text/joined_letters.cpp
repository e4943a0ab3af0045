#include "text/joined_letters.hpp"

#include <algorithm>

#include <unicode/usetiter.h>

namespace lode {

std::vector<icu::UnicodeString> strings_of(const icu::UnicodeSet& set) {
    std::vector<icu::UnicodeString> strings;
    icu::UnicodeSetIterator each(set);
    while (each.next()) {
        if (!each.isString()) continue;
        strings.push_back(each.getString());
        check(strings.back());
    }
    return strings;
}

bool is_long_form(const icu::UnicodeString& letter, const icu::UnicodeSet& exemplars) {
    const std::int32_t first = U16_LENGTH(letter.char32At(0));
    if (letter.length() <= 2 * first || letter.char32At(0) != letter.char32At(first)) return false;
    const icu::UnicodeString rest = letter.tempSubString(first);
    return exemplars.contains(rest);
}

void JoinedLetters::add(JoinedLetter letter) {
    if (letter.parts.size() < 2 || has(letter.keys)) return;
    begins_.set(static_cast<unsigned char>(letter.keys.front().front()));
    letters_.push_back(std::move(letter));
}

bool JoinedLetters::has(const std::vector<std::string>& keys) const {
    return std::any_of(letters_.begin(), letters_.end(),
                       [&](const JoinedLetter& letter) { return letter.keys == keys; });
}

void JoinedLetters::sort() {
    std::stable_sort(letters_.begin(), letters_.end(), [](const JoinedLetter& a, const JoinedLetter& b) {
        return a.keys.size() > b.keys.size();
    });
}

}  // namespace lode
