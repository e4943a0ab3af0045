#include "puzzle/letter_shapes.hpp"

#include <algorithm>
#include <array>

#include <unicode/uchar.h>
#include <letterlode/text.hpp>

#include "text/utf8.hpp"

namespace lode {
namespace {

// Common practice, and what DejaVu Sans Bold, the font where none is named, has: tests/letter_shapes_test.cpp
// counts them there.
constexpr std::u32string_view one_counter =
    U"ADOPQRÆŒÞÐĐabdegopqþđð"
    U"ΑΔΘΟΡαβδορσ"
    U"АБДОРЪЫЬЮЯЉЊӘабдеоръыьюяљњә"
    U"0469";
constexpr std::u32string_view two_counters =
    U"BØæœø"
    U"ΒΦθφ"
    U"ВФӨвфө"
    U"8";

// The first two: capitals often confused in reading tests (secondary sources). The others are this project's
// judgement.
constexpr std::array<std::u32string_view, 26> look_alikes{
    U"CDGOQ", U"HKMNW", U"IJLT1", U"EF",  U"PR",   U"UV",    U"O0",  U"S5",  U"Z2",
    U"B8",    U"bdpq",  U"ceo",   U"hnu", U"mnr",  U"ijlt1", U"uv",  U"gq9", U"Il1",
    U"ΟΘΦ",   U"ΑΔΛ",   U"ΗΜΝΠ",  U"ΕΞΣ", U"ИНПЦ", U"ШЩ",    U"ЪЫЬ", U"СОЭЗ"};
static_assert(look_alikes.size() <= 32);

// Without marks, in the letter's own case.
std::u32string without_marks(std::string_view letter) {
    const bool capital = u_isUUppercase(to_icu(letter).char32At(0)) != 0;
    const icu::UnicodeString text = to_icu(folded(letter));
    std::u32string bare;
    for (std::int32_t at = 0; at < text.length(); at += U16_LENGTH(text.char32At(at))) {
        const UChar32 character = text.char32At(at);
        bare += static_cast<char32_t>(capital ? u_toupper(character) : character);
    }
    return bare;
}

bool holds(std::u32string_view letters, char32_t letter) {
    return letters.find(letter) != std::u32string_view::npos;
}

}  // namespace

int counters_of(std::string_view letter) {
    int counters = 0;
    for (const char32_t part : without_marks(letter))
        counters += holds(one_counter, part) ? 1 : holds(two_counters, part) ? 2 : 0;
    return counters;
}

LetterLook look_of(std::string_view letter) {
    const std::u32string shape = without_marks(letter);
    LetterLook look;
    if (shape.size() != 1) return look;
    look.shape = static_cast<std::uint32_t>(shape.front());
    for (std::size_t group = 0; group < look_alikes.size(); ++group)
        if (holds(look_alikes[group], shape.front())) look.groups |= std::uint32_t{1} << group;
    return look;
}

}  // namespace lode
