#pragma once
// Text shaped for a page: glyphs of one or more fonts, with the characters that they stand for, so that what
// is printed can also be searched and copied.
//
// Two faces of one family, regular and bold. A character that they lack is taken from the first installed
// family, by name, that has it; where none does, the face's own sign for a missing character is shown.

#include <cairo.h>

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/outcome.hpp>

namespace lode {

// A stretch of text in one font and one direction. Positions are in em from the line's start, y down.
struct ShapedRun {
    cairo_font_face_t* face = nullptr;  // lives as long as the fonts that shaped it
    std::string utf8;
    std::vector<cairo_glyph_t> glyphs;  // from left to right
    std::vector<cairo_text_cluster_t> clusters;
    bool right_to_left = false;
};

struct ShapedLine {
    std::vector<ShapedRun> runs;  // from left to right
    double width = 0;             // em
};

class PrintFonts {
  public:
    // Refused as unusable where the family is not installed or broken.
    static Outcome<PrintFonts> open(const std::string& family = "DejaVu Sans");
    PrintFonts(PrintFonts&&) noexcept;
    PrintFonts& operator=(PrintFonts&&) noexcept;
    ~PrintFonts();

    // One line; control characters become blanks, and what is no UTF-8 a replacement character. At most
    // most_line_bytes are looked at, far more than a page is wide.
    [[nodiscard]] ShapedLine shape(std::string_view text, bool bold) const;
    static constexpr std::size_t most_line_bytes = 4'000;

  private:
    struct State;
    explicit PrintFonts(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

}  // namespace lode
