#pragma once
// The letters of languages, as CLDR has them.

#include <unicode/locid.h>
#include <unicode/uniset.h>

namespace lode {

// CLDR's main exemplars: in lower case, marks among them, and strings for letters of several characters.
// Empty for a language that ICU has no data of, and for the root locale.
[[nodiscard]] icu::UnicodeSet main_exemplars(const icu::Locale& locale);

}  // namespace lode
