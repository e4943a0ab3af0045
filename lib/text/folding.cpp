#include <algorithm>

#include <unicode/normalizer2.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>
#include <letterlode/text.hpp>

#include "text/final_forms.hpp"
#include "text/utf8.hpp"

namespace lode {
namespace {

bool is_mark(UChar32 character) {
    return (U_GET_GC_MASK(character) & U_GC_M_MASK) != 0;
}

bool is_ascii(char character) {
    return static_cast<unsigned char>(character) < 0x80;
}

}  // namespace

// Case folding first: it takes the capital sharp s and the dotted capital I apart; then compatibility
// decomposition, which separates the marks that are dropped. Folding takes the Greek final sigma with it, and
// leaves the Hebrew final letters. Plain ASCII needs none of that.
std::string folded(std::string_view letter) {
    if (std::all_of(letter.begin(), letter.end(), is_ascii)) {
        std::string small(letter);
        for (char& character : small)
            if (character >= 'A' && character <= 'Z') character = static_cast<char>(character + ('a' - 'A'));
        return small;
    }
    UErrorCode status = U_ZERO_ERROR;
    const icu::Normalizer2* form = icu::Normalizer2::getNFKDInstance(status);
    check(status, "ICU has no data for normalisation");
    icu::UnicodeString text = to_icu(letter);
    text.foldCase();
    check(text);
    const icu::UnicodeString apart = form->normalize(text, status);
    check(status, "ICU could not normalise a text");

    icu::UnicodeString bare;
    for (std::int32_t at = 0; at < apart.length();) {
        const UChar32 character = apart.char32At(at);
        if (!is_mark(character)) bare.append(without_final_form(character));
        at += U16_LENGTH(character);
    }
    // A letter that is nothing but marks still is that letter.
    if (bare.isEmpty()) bare = apart;
    bare.foldCase();
    return to_utf8(bare);
}

bool is_right_to_left(std::string_view text) {
    const icu::UnicodeString characters = to_icu(text);
    for (std::int32_t at = 0; at < characters.length();) {
        const UChar32 character = characters.char32At(at);
        const auto direction = u_charDirection(character);
        if (direction == U_RIGHT_TO_LEFT || direction == U_RIGHT_TO_LEFT_ARABIC) return true;
        if (direction == U_LEFT_TO_RIGHT) return false;
        at += U16_LENGTH(character);
    }
    return false;
}

}  // namespace lode
