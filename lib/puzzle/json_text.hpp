#pragma once
// JSON composed as text. No document is built: the JSON library's own asks for memory where it is taken down,
// and a program whose memory has run out would end there.

#include <string>
#include <string_view>
#include <vector>

#include <letterlode/export.hpp>

namespace lode {

// A name and a value that is JSON already.
struct JsonMember {
    std::string_view name;
    std::string value;
};
using JsonMembers = std::vector<JsonMember>;

// A string in quotes. Text that came from outside may be no UTF-8 (a file's name, say): what is not becomes
// U+FFFD.
[[nodiscard]] LODE_API std::string json_string(std::string_view text);
// Whether a byte stands in a string as it is, whatever is beside it.
[[nodiscard]] constexpr bool is_plain_in_json(char byte) {
    return byte >= ' ' && byte < 0x7F && byte != '"' && byte != '\\';
}
// The shortest number that reads back as the same.
[[nodiscard]] LODE_API std::string json_number(double number);
[[nodiscard]] LODE_API std::string json_bool(bool value);
[[nodiscard]] LODE_API std::string json_strings(const std::vector<std::string>& texts);
[[nodiscard]] LODE_API std::string json_object(const JsonMembers& members);

// Two ways to write an array: on one line, or one line an element.
using JsonArray = std::string (*)(const std::vector<std::string>& elements);
[[nodiscard]] LODE_API std::string json_array(const std::vector<std::string>& elements);
[[nodiscard]] LODE_API std::string json_array_in_lines(const std::vector<std::string>& elements);

// A whole document, one line a member: people can read it and compare it by lines.
[[nodiscard]] LODE_API std::string json_document(const JsonMembers& members);

}  // namespace lode
