#pragma once
// From a BCP 47 tag to ICU's locale.

#include <optional>
#include <string_view>

#include <unicode/locid.h>

namespace lode {

// Nothing where the tag is not well-formed or its language is unknown. "root" is the root locale.
[[nodiscard]] std::optional<icu::Locale> locale_of(std::string_view tag);

}  // namespace lode
