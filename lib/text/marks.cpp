#include "text/marks.hpp"

#include <cstring>

#include <unicode/normalizer2.h>
#include <unicode/uchar.h>
#include <unicode/uscript.h>

#include "text/utf8.hpp"

namespace lode {
namespace {

constexpr UChar32 capital_i_with_dot = 0x130;

// How far a script's letters can be taken apart and still be read.
enum class Loose { nothing, what_does_not_compose, everything };

Loose loose_marks(UChar32 letter) {
    UErrorCode status = U_ZERO_ERROR;
    const UScriptCode script = uscript_getScript(letter, &status);
    check(status, "ICU has no data of scripts");
    switch (script) {
        case USCRIPT_LATIN:
        case USCRIPT_GREEK:
            return Loose::everything;
        // Form C joins what makes another letter of one, as in й and أ; stress, points and vowel signs stay
        // apart.
        case USCRIPT_CYRILLIC:
        case USCRIPT_HEBREW:
        case USCRIPT_ARABIC:
        case USCRIPT_SYRIAC:
            return Loose::what_does_not_compose;
        default:
            return Loose::nothing;
    }
}

bool is_hamza_or_madda(UChar32 mark) {
    return mark >= 0x653 && mark <= 0x655;
}

bool has_dotted_capital_i(const icu::Locale& locale) {
    return std::strcmp(locale.getLanguage(), "tr") == 0 || std::strcmp(locale.getLanguage(), "az") == 0;
}

}  // namespace

icu::UnicodeString without_marks(const icu::UnicodeString& cluster, const icu::Locale& locale) {
    const UChar32 letter = cluster.char32At(0);
    const Loose loose = loose_marks(letter);
    if (loose == Loose::nothing) return cluster;
    icu::UnicodeString apart = cluster;
    if (loose == Loose::everything && !(letter == capital_i_with_dot && has_dotted_capital_i(locale))) {
        UErrorCode status = U_ZERO_ERROR;
        const icu::Normalizer2* form = icu::Normalizer2::getNFDInstance(status);
        check(status, "ICU has no data for normalisation");
        apart = form->normalize(cluster, status);
        check(status, "ICU could not normalise a text");
    }
    check(apart);
    icu::UnicodeString bare;
    for (std::int32_t at = 0; at < apart.length();) {
        const UChar32 character = apart.char32At(at);
        if (u_charType(character) != U_NON_SPACING_MARK || is_hamza_or_madda(character))
            bare.append(character);
        at += U16_LENGTH(character);
    }
    return composed(bare);
}

}  // namespace lode
