#pragma once
// Colours as they are seen: contrast, difference, and what a colour-blind reader sees.

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include <letterlode/export.hpp>
#include <letterlode/outcome.hpp>

namespace lode {

/// sRGB (IEC 61966-2-1).
struct Colour {
    std::uint8_t red = 0;    ///< 0 to 255
    std::uint8_t green = 0;  ///< 0 to 255
    std::uint8_t blue = 0;   ///< 0 to 255
    friend bool operator==(const Colour&, const Colour&) = default;
};
/// Reads "#rrggbb", or a keyword of CSS Color Module Level 4 ("gold", "SeaGreen"). Refused as unusable:
/// anything else.
[[nodiscard]] LODE_API Outcome<Colour> read_colour(std::string_view text);
/// The colour as "#rrggbb".
[[nodiscard]] LODE_API std::string to_text(Colour colour);

/// 0 for black to 1 for white (WCAG 2.2, relative luminance).
[[nodiscard]] LODE_API double relative_luminance(Colour colour);

/// From 1 to 21, whichever of the two is lighter: (L1 + 0.05) / (L2 + 0.05) (WCAG 2.2, contrast ratio). Not
/// to be rounded before it is held against a threshold.
[[nodiscard]] LODE_API double contrast_ratio(Colour one, Colour other);
/// Success criterion 1.4.3 at level AA: for text of less than 18 point, or 14 point in bold.
inline constexpr double least_contrast = 4.5;
inline constexpr double least_contrast_of_large_text = 3;  ///< the same criterion, for larger text

/// CIE 1976 L*a*b*.
struct Lab {
    double lightness = 0;  ///< 0 to 100
    double a = 0;          ///< from green, below 0, to red
    double b = 0;          ///< from blue, below 0, to yellow
};
/// The colour in L*a*b* with white D65 (CIE 15:2004, 8.2.1).
[[nodiscard]] LODE_API Lab lab_of(Colour colour);

/// CIEDE2000, all weights 1 (Sharma, Wu, Dalal 2005, Color Research and Application 30(1):21-30).
[[nodiscard]] LODE_API double colour_difference(const Lab& one, const Lab& other);

/// Ways to see: with all three kinds of cones, or without those for long, middle or short waves.
enum class Vision : std::uint8_t { usual, protan, deutan, tritan };
/// Every way to see, in the order of its number.
inline constexpr std::array all_visions{Vision::usual, Vision::protan, Vision::deutan, Vision::tritan};
[[nodiscard]] LODE_API std::string_view name(Vision vision);
/// The colour that a reader with usual vision sees as the other sees this one (Machado, Oliveira, Fernandes
/// 2009, IEEE Transactions on Visualization and Computer Graphics 15(6):1291-1298, severity 1).
[[nodiscard]] LODE_API Colour as_seen(Colour colour, Vision vision);

}  // namespace lode
