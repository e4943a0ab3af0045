#pragma once
// Between UTF-8 and ICU's strings, and from ICU's ways to fail to ours. ICU throws nothing: it returns a
// status, and makes a string "bogus" that it had no memory for. Unseen, either would let another puzzle come
// out.

#include <string>
#include <string_view>

#include <unicode/unistr.h>
#include <unicode/utypes.h>

namespace lode {

// Throws std::bad_alloc where ICU's memory ran out, std::runtime_error where it failed otherwise.
void check(UErrorCode status, const char* fault);
// Throws std::bad_alloc for a string that ICU had no memory for.
void check(const icu::UnicodeString& text);

// The text after a byte order mark, if it begins with one.
[[nodiscard]] std::string_view without_byte_order_mark(std::string_view text);

// True where the bytes are well-formed UTF-8.
[[nodiscard]] bool is_utf8(std::string_view text);

// Ill-formed bytes become U+FFFD.
[[nodiscard]] icu::UnicodeString to_icu(std::string_view text);
[[nodiscard]] std::string to_utf8(const icu::UnicodeString& text);

// Normalisation form C.
[[nodiscard]] icu::UnicodeString composed(const icu::UnicodeString& text);

}  // namespace lode
