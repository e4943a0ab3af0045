#pragma once
// Between UTF-8 and ICU's strings.

#include <string>
#include <string_view>

#include <unicode/unistr.h>

namespace lode {

// True where the bytes are well-formed UTF-8.
[[nodiscard]] bool is_utf8(std::string_view text);

// Ill-formed bytes become U+FFFD.
[[nodiscard]] icu::UnicodeString to_icu(std::string_view text);
[[nodiscard]] std::string to_utf8(const icu::UnicodeString& text);

// Normalisation form C.
[[nodiscard]] icu::UnicodeString composed(const icu::UnicodeString& text);

}  // namespace lode
