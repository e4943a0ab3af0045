#pragma once
// Texts in the order of a dictionary.

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/export.hpp>

namespace lode {

// The places of the texts in the order of their language's alphabet (CLDR's rules: in Welsh LLAIS comes after
// LUDW); what sorts alike keeps its order. A locale that ICU does not know sorts by the root's rules.
[[nodiscard]] LODE_API std::vector<std::size_t> alphabetical_order(std::span<const std::string> texts,
                                                                   std::string_view locale);

}  // namespace lode
