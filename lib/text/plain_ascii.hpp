#pragma once
// The short way for words in plain ASCII, which are most of what is read: for them ICU's long way (normalise,
// case, walk grapheme clusters) comes to a table.
//
// Why the table is enough: an ASCII text is in every normalisation form; each of its characters but CR LF is
// a cluster; and what the casing of one depends on beside it (Unicode's SpecialCasing: a final sigma,
// Lithuanian and Turkish dots, and ICU's Greek rules) is never ASCII. A character whose case leaves ASCII
// (the Turkish i), a control and what can stand in no cell are not in the table: a text that holds one goes
// the long way. The tests of spelling compare both ways in every locale that ICU knows.

#include <array>
#include <optional>
#include <string_view>

#include <unicode/locid.h>
#include <letterlode/text.hpp>

#include "text/clusters.hpp"

namespace lode {

class PlainAscii {
  public:
    PlainAscii(const icu::Locale& locale, LetterCase letters);

    [[nodiscard]] bool spells(std::string_view text) const;

    // For characters of texts that it spells.
    [[nodiscard]] Role role(char character) const { return at(character).role; }
    [[nodiscard]] char cased(char character) const { return at(character).cased; }

  private:
    struct Entry {
        Role role = Role::unusable;
        char cased = 0;
    };
    [[nodiscard]] const Entry& at(char character) const {
        return entries_[static_cast<unsigned char>(character)];
    }
    std::array<Entry, 256> entries_{};
};

}  // namespace lode
