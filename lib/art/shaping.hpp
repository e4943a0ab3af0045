#pragma once
// Shaping, for outlines (font.hpp) and pages (print/print_fonts.hpp) alike: a font file opened for HarfBuzz,
// a line cut into runs of one direction, one script and one font, and the glyphs of a run.

#include <hb.h>
#include <unicode/unistr.h>

#include <functional>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include <letterlode/outcome.hpp>

#include "art/font.hpp"

namespace lode {

struct DestroyShaping {
    void operator()(hb_blob_t* blob) const { hb_blob_destroy(blob); }
    void operator()(hb_face_t* face) const { hb_face_destroy(face); }
    void operator()(hb_font_t* font) const { hb_font_destroy(font); }
    void operator()(hb_buffer_t* buffer) const { hb_buffer_destroy(buffer); }
};
template <class T>
using HeldShaping = std::unique_ptr<T, DestroyShaping>;

// A font is refused as unusable, as the maker named it, with this fault and a way out.
[[nodiscard]] Refusal font_refusal(const FontFile& file, const std::string& fault);

// One face of a font file. Lengths are in its own units, y up; it never moves, so that runs can point to it.
class ShapingFont {
  public:
    // Refused as unusable: a file that cannot be read, or is larger than any font. One that is no font is
    // opened, and is empty.
    static Outcome<std::unique_ptr<ShapingFont>> open(const FontFile& file);

    [[nodiscard]] bool empty() const;  // of glyphs

    [[nodiscard]] const std::string& bytes() const { return bytes_; }
    [[nodiscard]] hb_font_t* font() const { return font_.get(); }
    [[nodiscard]] int units_an_em() const;
    [[nodiscard]] bool has(UChar32 character) const;

  private:
    ShapingFont() = default;
    std::string bytes_;  // HarfBuzz looks into them
    HeldShaping<hb_font_t> font_;
};

// A stretch of text, in UTF-16, in one direction, one script and one font.
struct TextRun {
    int start = 0;
    int length = 0;
    bool right_to_left = false;
    hb_script_t script = HB_SCRIPT_COMMON;
    const ShapingFont* font = nullptr;
};

// The font for a character that does not stay in the font of what it follows.
using FontChoice = std::function<const ShapingFont&(UChar32)>;

// The runs of a line from left to right, by the Unicode bidirectional algorithm. Marks and punctuation belong
// to the script and the font that they follow, as far as that font has them, and at the start to the script
// that they precede.
[[nodiscard]] std::vector<TextRun> runs_of(const icu::UnicodeString& text, const FontChoice& choose);

// The glyphs of a run from left to right. Clusters are places in the whole text.
struct RunGlyphs {
    HeldShaping<hb_buffer_t> buffer;  // holds the two lists; null where the font cannot shape the run
    std::span<const hb_glyph_info_t> glyphs;
    std::span<const hb_glyph_position_t> positions;
};

[[nodiscard]] RunGlyphs shaped(const icu::UnicodeString& text, const TextRun& run);

}  // namespace lode
