#pragma once
// Cells and copies as a person finds them with a finger.

#include <string>

#include <letterlode/find.hpp>

namespace lode {

// "row 3, column 7"
[[nodiscard]] inline std::string place_text(Cell cell) {
    return "row " + std::to_string(cell.row + 1) + ", column " + std::to_string(cell.column + 1);
}

// "row 3, column 7, down-right to row 6, column 10"
[[nodiscard]] inline std::string copy_text(const Copy& copy) {
    return place_text(copy.first) + ", " + std::string(name(copy.direction)) + " to " +
           place_text(copy.last());
}

}  // namespace lode
