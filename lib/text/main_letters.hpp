#pragma once
// The letters of a language, from CLDR's sets.

#include <string>
#include <vector>

#include <unicode/uniset.h>
#include <letterlode/text.hpp>

namespace lode {

// Those of CLDR's main exemplars that the segmenter makes one letter of: see main_letters.
[[nodiscard]] std::vector<std::string> letters_of(const icu::UnicodeSet& exemplars,
                                                  const Segmenter& segmenter);

}  // namespace lode
