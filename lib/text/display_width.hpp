#pragma once
// How wide text is where every letter has the same width, as in a terminal.

#include <cstddef>
#include <string>
#include <string_view>

#include <letterlode/export.hpp>

namespace lode {

// In columns: none for a mark and for what cannot be seen, two for a wide or full-width character (UAX #11),
// else one. Linear.
[[nodiscard]] LODE_API std::size_t display_width(std::string_view text);

// With blanks after it, or before it, up to a width; longer texts stay as they are.
[[nodiscard]] LODE_API std::string padded(std::string_view text, std::size_t to);
[[nodiscard]] std::string padded_before(std::string_view text, std::size_t to);

}  // namespace lode
