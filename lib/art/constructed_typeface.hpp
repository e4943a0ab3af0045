#pragma once
// This project's own letters: a monoline grotesque drawn by construction, from straight lines and circular
// arcs, so that it keeps what a material asks for. However it is styled, every stroke is exactly as wide as
// the style says, and counters, apertures and gaps are no narrower than it says: letters grow where they have
// to. Sharp corners are rounded, so that nothing tears while it is weeded.

#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "art/typeface.hpp"

namespace lode {

// In cap heights.
struct ConstructedStyle {
    double stroke = 0.13;     // the width of every stroke
    double least_gap = 0.13;  // the narrowest counter, aperture, and gap between contours
    friend bool operator==(const ConstructedStyle&, const ConstructedStyle&) = default;
};

inline constexpr double least_stroke = 0.06;
inline constexpr double most_stroke = 0.22;
inline constexpr double most_least_gap = 0.22;

// The largest least gap that the alphabet keeps with strokes of this width: three strokes and two counters
// stand above each other in a capital. Throws std::invalid_argument for a stroke that is out of bounds.
[[nodiscard]] double largest_gap(double stroke);

class ConstructedTypeface final : public Typeface {
  public:
    // Throws std::invalid_argument for a stroke out of bounds, and for a gap that is not positive or larger
    // than largest_gap() allows.
    explicit ConstructedTypeface(ConstructedStyle style);

    [[nodiscard]] const std::string& name() const override { return name_; }
    [[nodiscard]] double cap_height() const override { return 1; }

    // Every letter once as it is first needed; the distance of each pair by the room between both, so that
    // words are evenly spaced. Never refused.
    Outcome<SetLine> set_line(std::string_view text) override;

    // Whether there is a shape for this user-perceived letter, and what of a text there is none for: the same
    // in every style, and told without drawing.
    [[nodiscard]] static bool has(std::string_view letter);
    [[nodiscard]] static std::vector<std::string> lacking(std::string_view text);

  private:
    // A letter, its left side at 0, and how far its sides stand back at each height.
    struct Glyph {
        Path path;
        double width = 0;
        std::vector<double> left;   // from the box's left side, at each height of the profile
        std::vector<double> right;  // from the box's right side
    };

    ConstructedStyle style_;
    std::string name_ = "constructed alphabet";
    std::map<std::string, std::optional<Glyph>, std::less<>> glyphs_;

    const std::optional<Glyph>& glyph(const std::string& letter);
    [[nodiscard]] double distance(const Glyph& before, const Glyph& after) const;
};

}  // namespace lode
