#pragma once
// The rows of a grid or a mask that is drawn as text.

#include <string_view>
#include <vector>

#include <unicode/umachine.h>
#include <letterlode/outcome.hpp>

namespace lode {

// '.', '#' and '·' draw a closed cell.
[[nodiscard]] constexpr bool is_closed_mark(UChar32 character) {
    return character == '.' || character == '#' || character == 0xB7;
}

struct RowsOfText {
    std::vector<std::string_view> rows;  // of the text, without line ends and blank lines before and after
    int first_line = 1;                  // the line of the file on which rows[0] stands
};

// Takes a byte order mark and CRLF. Refused as unusable: no row, or text that is no UTF-8.
[[nodiscard]] Outcome<RowsOfText> rows_of_text(std::string_view text, std::string_view source);

}  // namespace lode
