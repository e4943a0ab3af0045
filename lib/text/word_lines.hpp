#pragma once
// Word lists as they are printed under a grid.

#include <string_view>
#include <vector>

#include <letterlode/text.hpp>

namespace lode {

// Rows without line ends, the first of them on `first_line` of the source: a word a row, or several with a
// tab, a comma, a semicolon or two blanks between. Otherwise as read_word_lines.
[[nodiscard]] Outcome<WordLines> words_in_columns(const std::vector<std::string_view>& rows,
                                                  std::string_view source, int first_line);

}  // namespace lode
