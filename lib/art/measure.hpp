#pragma once
// Numbers with units, as people write them.

#include <array>
#include <optional>
#include <string_view>
#include <utility>

namespace lode {

using UnitName = std::pair<std::string_view, double>;  // and how many mm it has
inline constexpr std::array<UnitName, 4> length_units{
    {{"in", 25.4}, {"mm", 1.0}, {"cm", 10.0}, {"pt", 25.4 / 72}}};

[[nodiscard]] std::string_view without_blanks(std::string_view text);

// Each takes what it names from the front of the text, where that is what stands there.

// Digits with at most one point among them: no sign, no exponent, none of the names of no number.
std::optional<double> take_number(std::string_view& text);
// In mm. A unit ends where letters do, but for an x: "8inx10in".
std::optional<double> take_unit(std::string_view& text);
// "x", "X" or "×".
bool take_by(std::string_view& text);

}  // namespace lode
