#pragma once
// Fonts: finding one by name, and setting text in it as outlines. Outlines are in font units with y down and
// the baseline at 0, never hinted and never scaled, so that the curves are the font's own.
//
// A font file is untrusted: every return code is looked at, and points, glyphs and bytes are bounded.

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/outcome.hpp>
#include <letterlode/path.hpp>

#include "art/typeface.hpp"

namespace lode {

struct FontFile {
    std::string path;
    int index = 0;                   // the face in a collection, and above bit 16 a variable font's instance
    std::string asked;               // as the maker wrote it
    std::vector<std::string> notes;  // where the face is not quite what was asked for
};

// Asks fontconfig, or takes the file that is named. Refused as unusable where another family would be put in
// place of the one that was asked for; installed families of a like name are proposed.
Outcome<FontFile> find_font(const std::string& asked);

// Up to three installed families, sorted, that have every character of the text.
std::vector<std::string> families_with(const std::string& text);

class Font final : public Typeface {
  public:
    // Refused as unusable: a file that cannot be read, that is no OpenType or TrueType font, or that has no
    // outlines.
    static Outcome<Font> open(FontFile file);
    Font(Font&&) noexcept;
    Font& operator=(Font&&) noexcept;
    ~Font() override;

    // Family and style, as the font calls itself.
    [[nodiscard]] const std::string& name() const override;
    // Of the letter H, or as the font states it; 0 where neither is known.
    [[nodiscard]] double cap_height() const override;

    // Sets one line of text: each run in its own direction and script, shaped as a whole.
    // Refused as unusable where the font turns out to be broken.
    Outcome<SetLine> set_line(std::string_view text) override;

  private:
    struct State;
    explicit Font(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

}  // namespace lode
