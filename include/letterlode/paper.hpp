#pragma once
// Sheets that a printer takes.

#include <cstdint>
#include <optional>
#include <string_view>

#include <letterlode/export.hpp>

namespace lode {

/// Sizes of sheets.
enum class Paper : std::uint8_t { a4, letter };
/// "a4", "letter"
[[nodiscard]] LODE_API std::string_view name(Paper paper);
[[nodiscard]] LODE_API std::optional<Paper> paper_named(std::string_view name);

/// The sides of a sheet.
struct PageSize {
    double width_mm = 0;   ///< from left to right
    double height_mm = 0;  ///< from top to bottom
    friend bool operator==(const PageSize&, const PageSize&) = default;
};
/// Upright. A4 is 210 x 297 mm (ISO 216); letter is 8.5 x 11 in.
[[nodiscard]] LODE_API PageSize size_of(Paper paper);

}  // namespace lode
