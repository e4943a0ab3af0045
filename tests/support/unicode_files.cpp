#include "support/unicode_files.hpp"

#include <fstream>
#include <sstream>
#include <stdexcept>

#include <unicode/unistr.h>

namespace lode::test {

std::string utf8_of(char32_t character) {
    std::string text;
    icu::UnicodeString(static_cast<UChar32>(character)).toUTF8String(text);
    return text;
}

std::string text_of_points(const std::string& hexadecimal) {
    std::istringstream points(hexadecimal);
    std::string text;
    for (std::string point; points >> point;)
        text += utf8_of(static_cast<char32_t>(std::stoul(point, nullptr, 16)));
    return text;
}

std::string points_of(const std::string& text) {
    const icu::UnicodeString characters = icu::UnicodeString::fromUTF8(text);
    std::ostringstream points;
    for (std::int32_t at = 0; at < characters.length();) {
        const UChar32 character = characters.char32At(at);
        at += U16_LENGTH(character);
        points << (points.tellp() > 0 ? " " : "") << std::hex << std::uppercase;
        points.width(4);
        points.fill('0');
        points << character;
    }
    return points.str();
}

std::vector<std::string> split(const std::string& text, char at) {
    std::vector<std::string> parts;
    std::istringstream all(text);
    for (std::string part; std::getline(all, part, at);) parts.push_back(part);
    return parts;
}

std::string trimmed(const std::string& text) {
    const auto first = text.find_first_not_of(" \t\r");
    if (first == std::string::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

long each_row(const std::string& path, const std::function<void(const std::vector<std::string>&)>& row) {
    std::ifstream file(path);
    if (!file) throw std::runtime_error(path + " is missing: install the package unicode-data");
    long rows = 0;
    for (std::string line; std::getline(file, line);) {
        line = line.substr(0, line.find('#'));
        if (trimmed(line).empty() || line.front() == '@') continue;
        std::vector<std::string> fields;
        for (const auto& field : split(line, ';')) fields.push_back(trimmed(field));
        row(fields);
        ++rows;
    }
    return rows;
}

}  // namespace lode::test
