#include "text/utf8.hpp"

#include <new>
#include <stdexcept>

#include <unicode/normalizer2.h>
#include <unicode/utf8.h>
#include <letterlode/text.hpp>

namespace lode {

std::string_view without_byte_order_mark(std::string_view text) {
    constexpr std::string_view mark = "\xEF\xBB\xBF";
    return text.starts_with(mark) ? text.substr(mark.size()) : text;
}

bool is_utf8(std::string_view text) {
    const auto length = static_cast<std::int64_t>(text.size());
    const auto* bytes = reinterpret_cast<const std::uint8_t*>(text.data());
    std::int64_t at = 0;
    while (at < length) {
        UChar32 character = 0;
        U8_NEXT(bytes, at, length, character);
        if (character < 0) return false;
    }
    return true;
}

void check(UErrorCode status, const char* fault) {
    if (status == U_MEMORY_ALLOCATION_ERROR) throw std::bad_alloc();
    if (U_FAILURE(status)) throw std::runtime_error(fault);
}

void check(const icu::UnicodeString& text) {
    if (text.isBogus()) throw std::bad_alloc();
}

icu::UnicodeString to_icu(std::string_view text) {
    if (text.size() > static_cast<std::size_t>(INT32_MAX)) throw std::length_error("a text of over 2 GB");
    icu::UnicodeString result =
        icu::UnicodeString::fromUTF8(icu::StringPiece(text.data(), static_cast<std::int32_t>(text.size())));
    check(result);
    return result;
}

std::string to_utf8(const icu::UnicodeString& text) {
    check(text);
    std::string bytes;
    text.toUTF8String(bytes);
    return bytes;
}

icu::UnicodeString composed(const icu::UnicodeString& text) {
    check(text);
    UErrorCode status = U_ZERO_ERROR;
    const icu::Normalizer2* form = icu::Normalizer2::getNFCInstance(status);
    check(status, "ICU has no data for normalisation");
    icu::UnicodeString result = form->normalize(text, status);
    check(status, "ICU could not normalise a text");
    check(result);
    return result;
}

std::optional<std::string> normalised(std::string_view text) {
    if (!is_utf8(text)) return std::nullopt;
    return to_utf8(composed(to_icu(text)));
}

}  // namespace lode
