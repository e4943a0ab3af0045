#pragma once
// The letters of a grid as outlines in their cells, and the heading as outlines on its lines.

#include <string>
#include <string_view>
#include <vector>

#include <letterlode/outcome.hpp>
#include <letterlode/path.hpp>
#include <letterlode/puzzle.hpp>

#include "art/typeface.hpp"

namespace lode {

// A capital's share of its cell, by eye: a little over half leaves room enough that rows, columns and
// diagonals read alike.
inline constexpr double cap_share = 0.52;

// Measured in cells, with 0 at the centre of the cell.
struct Lettering {
    std::vector<Path> letters;  // by letter number; empty where the grid does not use it
    double cap_height = 0;
    std::vector<std::string> shrunk;  // letters that would not fit their cells at the common height
};

// Refused as unusable: letters that the font lacks, named with the place where each first stands.
Outcome<Lettering> set_letters(Typeface& typeface, const LetteredGrid& grid);

// Measured in cap heights. Each line has its baseline at 0 and its middle at 0.
struct HeadingLine {
    std::vector<SetLetter> letters;
    Box box;
};
struct Heading {
    std::string text;  // tidied, a line end between lines
    std::vector<HeadingLine> lines;
};

// The heading's lines without blanks at their ends; lines of nothing else are left out.
[[nodiscard]] std::vector<std::string> heading_lines(std::string_view text);

// A text of blanks gives no lines. Refused as unusable: text that is no UTF-8, control characters, more lines
// or bytes than a heading may have, characters that the font lacks.
Outcome<Heading> set_heading(Typeface& typeface, const std::string& text);

}  // namespace lode
