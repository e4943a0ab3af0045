#pragma once
// Numbers as text, the same in every locale and under every compiler.

#include <string>

namespace lode {

// Rounded to so many decimals, without zeros at the end and never "-0".
void append_decimal(std::string& text, double value, int decimals);
[[nodiscard]] std::string decimal(double value, int decimals);

}  // namespace lode
