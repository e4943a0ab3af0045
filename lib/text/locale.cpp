#include "text/locale.hpp"

#include <algorithm>
#include <new>
#include <string>

namespace lode {
namespace {

constexpr std::size_t longest_tag = 100;

bool language_is_known(const icu::Locale& locale) {
    // ICU gives an ISO 639-2 code for every language of its tables, and none for an invented one.
    return *locale.getISO3Language() != '\0';
}

}  // namespace

std::optional<icu::Locale> locale_of(std::string_view tag) {
    if (tag == "root" || tag == "und") return icu::Locale("");
    if (tag.empty() || tag.size() > longest_tag) return std::nullopt;
    // People write en_GB as often as en-GB.
    std::string hyphened(tag);
    std::replace(hyphened.begin(), hyphened.end(), '_', '-');
    UErrorCode status = U_ZERO_ERROR;
    icu::Locale locale = icu::Locale::forLanguageTag(hyphened, status);
    if (status == U_MEMORY_ALLOCATION_ERROR) throw std::bad_alloc();
    if (U_FAILURE(status)) return std::nullopt;
    // A tag that is well-formed gives a locale, unless there is no memory for it.
    if (locale.isBogus()) throw std::bad_alloc();
    if (!language_is_known(locale)) return std::nullopt;
    return locale;
}

}  // namespace lode
