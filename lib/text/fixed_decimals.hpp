#pragma once
// Numbers in sentences.

#include <string>

namespace lode {

// Rounded to so many decimals, all of them written; the same in every locale.
[[nodiscard]] std::string fixed_decimals(double value, int decimals);

}  // namespace lode
