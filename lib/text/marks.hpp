#pragma once
// Letters without their marks.

#include <unicode/locid.h>
#include <unicode/unistr.h>

namespace lode {

// A grapheme cluster in normalisation form C without the marks that `Marks::strip` takes off; in the same
// form.
[[nodiscard]] icu::UnicodeString without_marks(const icu::UnicodeString& cluster, const icu::Locale& locale);

}  // namespace lode
