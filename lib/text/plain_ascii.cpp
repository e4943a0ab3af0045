#include "text/plain_ascii.hpp"

#include <algorithm>

namespace lode {

PlainAscii::PlainAscii(const icu::Locale& locale, LetterCase letters) {
    for (char character = ' '; character <= '~'; ++character) {
        const icu::UnicodeString alone(static_cast<UChar32>(character));
        check(alone);
        Entry& entry = entries_[static_cast<unsigned char>(character)];
        entry.role = character == letter_bar ? Role::left_out : role_of(alone);
        icu::UnicodeString cased = alone;
        if (letters == LetterCase::upper) cased.toUpper(locale);
        if (letters == LetterCase::lower) cased.toLower(locale);
        check(cased);
        if (cased.length() != 1 || cased.charAt(0) > '~') entry.role = Role::unusable;
        entry.cased = static_cast<char>(cased.charAt(0));
    }
}

bool PlainAscii::spells(std::string_view text) const {
    return std::all_of(text.begin(), text.end(),
                       [&](char character) { return role(character) != Role::unusable; });
}

}  // namespace lode
