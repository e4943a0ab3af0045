#pragma once
// The letters that look otherwise at a word's end.

#include <unicode/umachine.h>

namespace lode {

// What a Hebrew final letter or the Greek final sigma is within a word; every other character is itself. All
// of them lie below U+10000, on both sides.
[[nodiscard]] constexpr UChar32 without_final_form(UChar32 character) {
    switch (character) {
        case U'ך':
            return U'כ';
        case U'ם':
            return U'מ';
        case U'ן':
            return U'נ';
        case U'ף':
            return U'פ';
        case U'ץ':
            return U'צ';
        case U'ς':
            return U'σ';
        default:
            return character;
    }
}

}  // namespace lode
