#include "text/quoted.hpp"

#include <cstdio>

#include <unicode/uchar.h>

#include "text/utf8.hpp"

namespace lode {
namespace {

constexpr std::size_t shown_at_most = 60;  // bytes

std::string_view cut(std::string_view text) {
    if (text.size() <= shown_at_most) return text;
    std::size_t end = shown_at_most;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
    return text.substr(0, end);
}

bool can_be_seen(UChar32 character) {
    return character == ' ' || (u_isgraph(character) && u_charType(character) != U_FORMAT_CHAR);
}

}  // namespace

std::string quoted(std::string_view text) {
    const std::string_view part = cut(text);
    const icu::UnicodeString characters = to_icu(part);
    std::string shown = "'";
    for (std::int32_t at = 0; at < characters.length();) {
        const UChar32 character = characters.char32At(at);
        at += U16_LENGTH(character);
        if (can_be_seen(character)) {
            shown += to_utf8(icu::UnicodeString(character));
            continue;
        }
        char point[16];
        std::snprintf(point, sizeof point, "<U+%04X>", static_cast<unsigned>(character));
        shown += point;
    }
    return shown + (part.size() < text.size() ? "...'" : "'");
}

}  // namespace lode
