#pragma once
// What the manual takes from the README, so that both say the same.

#include <string>
#include <utility>
#include <vector>

namespace lode::cli {

// The lines below a heading ("## Before you cut"), up to the next one. Throws std::runtime_error where there
// are none.
[[nodiscard]] std::vector<std::string> lines_below(const std::string& readme, const std::string& heading);

// The points of a list, each in one line, and what stands before it as the first.
[[nodiscard]] std::vector<std::string> points_of(const std::vector<std::string>& lines);

// The rows of a table of two columns, without its head.
[[nodiscard]] std::vector<std::pair<std::string, std::string>> rows_of(const std::vector<std::string>& lines);

}  // namespace lode::cli
