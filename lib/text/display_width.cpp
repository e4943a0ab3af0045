#include "text/display_width.hpp"

#include <unicode/uchar.h>

#include "text/utf8.hpp"

namespace lode {
namespace {

std::size_t width_of(UChar32 character) {
    if ((U_GET_GC_MASK(character) & (U_GC_MN_MASK | U_GC_ME_MASK | U_GC_CF_MASK)) != 0) return 0;
    const auto width = u_getIntPropertyValue(character, UCHAR_EAST_ASIAN_WIDTH);
    return width == U_EA_WIDE || width == U_EA_FULLWIDTH ? 2 : 1;
}

std::string blanks(std::string_view text, std::size_t to) {
    const std::size_t have = display_width(text);
    return std::string(have < to ? to - have : 0, ' ');
}

}  // namespace

std::size_t display_width(std::string_view text) {
    const icu::UnicodeString characters = to_icu(text);
    std::size_t width = 0;
    for (std::int32_t at = 0; at < characters.length();) {
        const UChar32 character = characters.char32At(at);
        width += width_of(character);
        at += U16_LENGTH(character);
    }
    return width;
}

std::string padded(std::string_view text, std::size_t to) {
    return std::string(text) + blanks(text, to);
}

std::string padded_before(std::string_view text, std::size_t to) {
    return blanks(text, to) + std::string(text);
}

}  // namespace lode
