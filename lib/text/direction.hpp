#pragma once
// Text in which scripts of both directions stand, as a terminal and an editor shall show it. They order each
// line by Unicode's bidirectional algorithm (UAX #9), which turns a row of Hebrew letters round, blanks and
// all, and puts a Hebrew word's English remarks on the wrong side of it. Invisible characters of the same
// standard say otherwise; a line without a right-to-left character gets none.

#include <string>
#include <string_view>

#include <letterlode/export.hpp>

namespace lode {

// The line so that its characters stand from left to right as they follow each other, at the left margin:
// U+200E, then the line between U+202D and U+202C.
[[nodiscard]] LODE_API std::string in_columns(std::string_view line);

// A word that runs in its own direction and turns nothing around it: between U+2068 and U+2069.
[[nodiscard]] LODE_API std::string isolated(std::string_view word);

// The line so that it begins at the left whatever it holds: after U+200E.
[[nodiscard]] LODE_API std::string from_the_left(std::string_view line);

// Marks that say in which direction a line runs: U+200E, U+200F, U+202A to U+202E, U+2066 to U+2069. In what
// is read they are nothing: programs put them there, this one among them.
[[nodiscard]] bool is_direction_mark(std::string_view character);
[[nodiscard]] std::string without_direction_marks(std::string_view text);

// In which directions a line's letters run, and whether U+202D says that they stand as they follow each
// other.
struct LineDirections {
    bool left_to_right = false;
    bool right_to_left = false;
    bool in_columns = false;
};
[[nodiscard]] LineDirections directions_of(std::string_view line);

}  // namespace lode
