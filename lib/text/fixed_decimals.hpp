#pragma once
// Numbers in sentences.

#include <string>

#include <letterlode/export.hpp>

namespace lode {

// Rounded to so many decimals, all of them written; the same in every locale.
[[nodiscard]] LODE_API std::string fixed_decimals(double value, int decimals);

}  // namespace lode
