#pragma once
// The object to be decorated: how large it is, and what outline it has. And how lengths are written and read,
// for every option that is one.

#include <string>
#include <string_view>

#include <letterlode/export.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/path.hpp>

namespace lode {

/// The box about a blank.
struct BlankSize {
    double width_mm = 0;   ///< from left to right
    double height_mm = 0;  ///< from top to bottom
    friend bool operator==(const BlankSize&, const BlankSize&) = default;
};
inline constexpr double least_blank_mm = 10;    ///< of a side
inline constexpr double most_blank_mm = 5'000;  ///< of a side

/// A size with the outline that fills it: its box starts at 0,0. One outer contour, then the blank's own
/// holes (to hang it by, or cut through). Drawn shapes are symmetric to the last bit where the shape is: what
/// stands at x on one side stands at width - x on the other.
struct Blank : BlankSize {
    std::string shape;  ///< "rectangle", another of blank_shapes, or the name of the file
    Path outline;       ///< clockwise, its holes the other way
    /// Whether the outline is the box itself.
    [[nodiscard]] bool is_rectangle() const { return shape == "rectangle"; }
};

inline constexpr std::size_t max_outline_bytes = 16'000'000;  ///< of a file whose outline is a blank
inline constexpr std::size_t max_outline_segments = 200'000;  ///< of such an outline

/// Reads what a maker says of the object:
///   - "8x10in", "203x254mm", "20.3x25.4cm", "576x720pt", "8inx200mm": a rectangle, width by height; 72 pt
///   are 1 in
///   - "heart 8x8in", "heart:8x8in": a shape that fills such a box: rectangle, rounded (corners of a tenth of
///   the
///     shorter side), circle, oval, heart, star (five points), hexagon
///   - "circle 200mm", "heart 8in": so wide, in the shape's own proportions: circle, heart, star, hexagon
///   - "sign.svg", "signs/oak.svg": the outline that svg_outline finds in a file, at the file's own size
///   - "sign.svg 200x150mm": the same at another size of the same proportions, to 1 percent
///
/// Refused as unusable: another form, a circle of two different sides, a side under least_blank_mm or over
/// most_blank_mm, a file that cannot be read or holds no usable outline.
[[nodiscard]] LODE_API Outcome<Blank> read_blank(std::string_view text);

/// A blank of a shape that read_blank names. Throws std::invalid_argument: no area, or an unknown name.
[[nodiscard]] LODE_API Blank shaped_blank(std::string_view shape, BlankSize size);

/// The outline of the largest thing that an SVG document draws, at its true size, moved to 0,0: the contour
/// with the largest area, and the contours of the same element within it that are not filled. What else the
/// document holds is passed over. Lengths without a unit, px among them, are 96 to the inch, or what width,
/// height and viewBox make of them. `source` names the document in messages.
/// Refused as unusable, naming line and fault: no SVG; more than max_outline_bytes or max_outline_segments,
/// or nested beyond reason; no closed outline; an outline that crosses itself or its holes; one smaller or
/// larger than a blank may be; what would run (scripts, handlers) or fetch (references to anything but an id
/// of the document, entities); what is not read here and could change the shape (clipping, shapes set by
/// style). Nothing is ever loaded. Some 0.1 s a megabyte.
[[nodiscard]] LODE_API Outcome<Blank> svg_outline(std::string_view svg, const std::string& source);

/// Reads a length: "6mm", "0.25in", "1cm" or "12pt", in mm; digits and at most one point, whatever the
/// locale. Refused as unusable, naming the forms: another one, and what lies outside least..most.
[[nodiscard]] LODE_API Outcome<double> read_length(std::string_view text, double least_mm, double most_mm);

/// "203.2 mm (8 in)", to 0.01 mm and 0.001 in.
[[nodiscard]] LODE_API std::string both_units(double mm);
/// "203.2 x 254 mm (8 x 10 in)", to 0.01 mm and 0.001 in.
[[nodiscard]] LODE_API std::string both_units(BlankSize size);

}  // namespace lode
