#pragma once
// Unicode's own data files (package unicode-data), as far as tests read them.

#include <functional>
#include <string>
#include <vector>

namespace lode::test {

std::string utf8_of(char32_t character);
// "0041 030A" as text.
std::string text_of_points(const std::string& hexadecimal);
// "A<U+030A>" is hard to tell from "Å" in a report: "0041 030A" is not.
std::string points_of(const std::string& text);

std::vector<std::string> split(const std::string& text, char at);
std::string trimmed(const std::string& text);

// Calls row(fields) for every line that holds more than a comment; fields are parted by ';', without
// comments. Returns how many there were; throws std::runtime_error, naming the package, where the file is
// missing.
long each_row(const std::string& path, const std::function<void(const std::vector<std::string>&)>& row);

}  // namespace lode::test
