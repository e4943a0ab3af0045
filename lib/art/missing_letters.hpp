#pragma once
// What a typeface lacks, told with a way out.

#include <string>
#include <vector>

#include <letterlode/outcome.hpp>

#include "art/typeface.hpp"

namespace lode {

struct MissingLetter {
    std::string text;
    std::string place;  // "row 3, column 4"
};

// Names letters and typeface, and installed fonts that have them all.
[[nodiscard]] Refusal lacks(const Typeface& typeface, const std::vector<MissingLetter>& missing);

}  // namespace lode
