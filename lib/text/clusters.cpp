#include "text/clusters.hpp"

#include <new>

#include <unicode/uchar.h>

namespace lode {
namespace {

constexpr UChar32 kashida = 0x640;  // a letter to Unicode; it stretches a line

// Also what is typed as an accent, and U+02BC and its like, which are letters to Unicode; between letters a
// maker means an apostrophe.
bool is_apostrophe(UChar32 character) {
    switch (character) {
        case 0x27:
        case 0x60:
        case 0xB4:
        case 0x2B9:
        case 0x2BB:
        case 0x2BC:
        case 0x2018:
        case 0x2019:
            return true;
        default:
            return false;
    }
}

}  // namespace

Role role_of(const icu::UnicodeString& cluster) {
    const UChar32 first = cluster.char32At(0);
    if (is_apostrophe(first)) return Role::apostrophe;
    const auto category = U_GET_GC_MASK(first);
    if (first == kashida || first == '\t' || (category & (U_GC_Z_MASK | U_GC_P_MASK))) return Role::left_out;
    return category & (U_GC_L_MASK | U_GC_ND_MASK) ? Role::letter : Role::unusable;
}

icu::UnicodeString without_invisible(const icu::UnicodeString& cluster) {
    icu::UnicodeString seen;
    for (std::int32_t at = 0; at < cluster.length();) {
        const UChar32 character = cluster.char32At(at);
        if (!u_hasBinaryProperty(character, UCHAR_DEFAULT_IGNORABLE_CODE_POINT)) seen.append(character);
        at += U16_LENGTH(character);
    }
    check(seen);
    return seen;
}

std::string join_key(const icu::UnicodeString& cluster) {
    if (is_apostrophe(cluster.char32At(0))) return "'";
    icu::UnicodeString key = cluster;
    check(key);
    key.foldCase();
    return to_utf8(composed(key));
}

ClusterWalk::ClusterWalk(const icu::Locale& locale) {
    UErrorCode status = U_ZERO_ERROR;
    breaks_.reset(icu::BreakIterator::createCharacterInstance(locale, status));
    check(status, "ICU has no data for grapheme clusters");
    if (!breaks_) throw std::bad_alloc();
}

}  // namespace lode
