#pragma once
// What sets text as outlines: a font file (font.hpp), or the constructed alphabet.
//
// Outlines have y down and the baseline at 0, in units of the typeface's own; cap_height says how large they
// are.

#include <string>
#include <string_view>
#include <vector>

#include <letterlode/outcome.hpp>
#include <letterlode/path.hpp>

namespace lode {

// One letter with its marks, in its place on the line.
struct SetLetter {
    std::string text;
    Path path;
};

struct SetLine {
    std::vector<SetLetter> letters;    // those that leave a mark, from left to right
    std::vector<std::string> missing;  // what the typeface has no shape for
};

class Typeface {
  public:
    Typeface() = default;
    Typeface(const Typeface&) = delete;
    Typeface& operator=(const Typeface&) = delete;
    virtual ~Typeface() = default;

    // As the typeface calls itself.
    [[nodiscard]] virtual const std::string& name() const = 0;
    // Of the letter H, or as the typeface states it; 0 where neither is known.
    [[nodiscard]] virtual double cap_height() const = 0;

    // Sets one line of text. Refused as unusable where the typeface turns out to be broken.
    virtual Outcome<SetLine> set_line(std::string_view text) = 0;

  protected:
    Typeface(Typeface&&) = default;
    Typeface& operator=(Typeface&&) = default;
};

}  // namespace lode
