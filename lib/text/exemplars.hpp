#pragma once
// The letters of languages, as CLDR has them.

#include <unicode/locid.h>
#include <unicode/uniset.h>

namespace lode {

// Puts CLDR's main exemplars into an empty set: in lower case, marks among them, and strings for letters of
// several characters. None for a language that ICU has no data of, and for the root locale. No set is copied:
// ICU 72 says nothing where it has no memory for a copy's strings.
void read_main_exemplars(const icu::Locale& locale, icu::UnicodeSet& set);

}  // namespace lode
