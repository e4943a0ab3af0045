#include "text/direction.hpp"

#include <unicode/uchar.h>

#include "text/utf8.hpp"

namespace lode {
namespace {

constexpr std::string_view left_to_right_mark = "\u200E";
constexpr std::string_view override_to_right = "\u202D";
constexpr std::string_view end_of_override = "\u202C";
constexpr std::string_view isolate = "\u2068";
constexpr std::string_view end_of_isolate = "\u2069";

// Arabic digits too: blanks between them run from right to left (UAX #9, rule N1).
bool holds_right_to_left(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const auto first = static_cast<unsigned char>(text[at]);
        // No character below U+0590 runs from right to left: two bytes that begin with D6 are the first.
        if (first < 0xD6) {
            ++at;
            continue;
        }
        const icu::UnicodeString rest = to_icu(text.substr(at));
        for (std::int32_t place = 0; place < rest.length();) {
            const UChar32 character = rest.char32At(place);
            const auto direction = u_charDirection(character);
            if (direction == U_RIGHT_TO_LEFT || direction == U_RIGHT_TO_LEFT_ARABIC ||
                direction == U_ARABIC_NUMBER)
                return true;
            place += U16_LENGTH(character);
        }
        return false;
    }
    return false;
}

std::string between(std::string_view before, std::string_view text, std::string_view after) {
    std::string all(before);
    (all += text) += after;
    return all;
}

}  // namespace

std::string in_columns(std::string_view line) {
    if (!holds_right_to_left(line)) return std::string(line);
    return std::string(left_to_right_mark) + between(override_to_right, line, end_of_override);
}

std::string isolated(std::string_view word) {
    return holds_right_to_left(word) ? between(isolate, word, end_of_isolate) : std::string(word);
}

std::string from_the_left(std::string_view line) {
    return holds_right_to_left(line) ? between(left_to_right_mark, line, {}) : std::string(line);
}

bool is_direction_mark(std::string_view character) {
    if (character.size() != 3 || character[0] != '\xE2') return false;
    const auto second = static_cast<unsigned char>(character[1]);
    const auto third = static_cast<unsigned char>(character[2]);
    return (second == 0x80 && (third == 0x8E || third == 0x8F || (third >= 0xAA && third <= 0xAE))) ||
           (second == 0x81 && third >= 0xA6 && third <= 0xA9);
}

std::string without_direction_marks(std::string_view text) {
    std::string kept;
    for (std::size_t at = 0; at < text.size();) {
        const bool is_mark = is_direction_mark(text.substr(at, 3));
        if (!is_mark) kept += text[at];
        at += is_mark ? 3 : 1;
    }
    return kept;
}

LineDirections directions_of(std::string_view line) {
    LineDirections found;
    found.in_columns = line.find(override_to_right) != std::string_view::npos;
    const icu::UnicodeString characters = to_icu(line);
    for (std::int32_t at = 0; at < characters.length();) {
        const UChar32 character = characters.char32At(at);
        at += U16_LENGTH(character);
        const auto direction = u_charDirection(character);
        found.left_to_right |= direction == U_LEFT_TO_RIGHT;
        found.right_to_left |= direction == U_RIGHT_TO_LEFT || direction == U_RIGHT_TO_LEFT_ARABIC;
    }
    // Marks are no letters.
    if (line.find(left_to_right_mark) != std::string_view::npos)
        found.left_to_right = directions_of(without_direction_marks(line)).left_to_right;
    return found;
}

}  // namespace lode
