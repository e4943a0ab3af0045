#pragma once
// Text beside the grid as outlines: a heading, the words, a line below.
//
// Measured in cap heights, y down: the top of the ink is at 0, the middle of the block's width at x = 0.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/outcome.hpp>
#include <letterlode/path.hpp>

#include "art/typeface.hpp"

namespace lode {

struct TextBlock {
    std::string text;  // tidied, a line end between lines
    std::vector<SetLetter> letters;
    double width = 0;
    double height = 0;
    [[nodiscard]] bool empty() const { return letters.empty(); }
};

// The lines without blanks at their ends; lines of nothing else are left out.
[[nodiscard]] std::vector<std::string> lines_of(std::string_view text);

// A line of several words as two, broken at the blank after which both have most nearly as many characters; a
// blank that does not break (U+00A0) stays. Nothing where there is none to break at, or where the text has
// more lines than one.
[[nodiscard]] std::optional<std::string> in_two_lines(const std::string& text);

// Each line in the middle. A text of blanks gives an empty block. `what` ("heading") names it in messages.
// Refused as unusable: text that is no UTF-8, control characters, more lines or bytes than max_heading_lines
// and max_heading_bytes, characters that the typeface lacks.
[[nodiscard]] Outcome<TextBlock> set_lines(Typeface& typeface, const std::string& text,
                                           const std::string& what);

// Words in columns, read down and then on to the right: as many columns as stand beside each other in a block
// no wider than it may be, but at least one. Refused as unusable: characters that the typeface lacks.
[[nodiscard]] Outcome<TextBlock> set_columns(Typeface& typeface, const std::vector<std::string>& words,
                                             double most_width);

}  // namespace lode
