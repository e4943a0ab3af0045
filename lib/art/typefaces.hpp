#pragma once
// Which typeface sets what: a font that is named, the constructed alphabet, or a font in its place.

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/art.hpp>

#include "art/constructed_typeface.hpp"
#include "art/typeface.hpp"

namespace lode {

// Whether the letters of such a font are the constructed ones wherever those suffice.
[[nodiscard]] bool may_be_constructed(const std::string& font);

// The texts, of letters or of lines, that the constructed alphabet lacks a letter of.
[[nodiscard]] std::vector<std::string> not_constructed(const std::vector<std::string>& texts);

// Stroke and gap, in cap heights, of letters whose capitals are so high: as they look best, and wide enough
// for the film wherever the alphabet's bounds let them be.
[[nodiscard]] ConstructedStyle constructed_style(double cap_mm, double least_stroke_mm, double least_gap_mm);

struct OpenedTypeface {
    std::unique_ptr<Typeface> typeface;
    bool constructed = false;
    std::vector<std::string> notes;
};

// The font that is named; for an empty name, or that of the constructed alphabet, the constructed one in this
// style where it has all texts, and else, for an empty name only, fallback_font with a note that says what is
// set in it: `what` is its beginning, such as "The letters are". Refused as unusable: a font that is not
// installed, broken or without outlines.
[[nodiscard]] Outcome<OpenedTypeface> open_typeface(std::string_view what, const std::string& font,
                                                    const std::vector<std::string>& texts,
                                                    const ConstructedStyle& style);

}  // namespace lode
