#include "text/plain_ascii.hpp"

#include <algorithm>

namespace lode {
namespace {

constexpr std::size_t first_printable = ' ';
constexpr std::size_t printable_count = '~' - ' ' + 1;

// The same in every locale.
std::array<Role, printable_count> read_roles() {
    std::array<Role, printable_count> roles{};
    for (std::size_t at = 0; at < roles.size(); ++at) {
        const icu::UnicodeString alone(static_cast<UChar32>(first_printable + at));
        check(alone);
        roles[at] = first_printable + at == letter_bar ? Role::left_out : role_of(alone);
    }
    return roles;
}

}  // namespace

// All characters are cased in one go, as what one becomes does not depend on those beside it.
PlainAscii::PlainAscii(const icu::Locale& locale, LetterCase letters) {
    static const std::array<Role, printable_count> roles = read_roles();
    icu::UnicodeString all;
    for (std::size_t at = 0; at < printable_count; ++at)
        all.append(static_cast<char16_t>(first_printable + at));
    check(all);
    icu::UnicodeString cased = all;
    if (letters == LetterCase::upper) cased.toUpper(locale);
    if (letters == LetterCase::lower) cased.toLower(locale);
    check(cased);
    if (cased.length() != all.length()) return;  // in no locale that is known: then all go the long way
    for (std::size_t at = 0; at < printable_count; ++at) {
        const char16_t one = cased.charAt(static_cast<std::int32_t>(at));
        if (one > '~') continue;
        entries_[first_printable + at] = {roles[at], static_cast<char>(one)};
    }
}

bool PlainAscii::spells(std::string_view text) const {
    return std::all_of(text.begin(), text.end(),
                       [&](char character) { return role(character) != Role::unusable; });
}

}  // namespace lode
