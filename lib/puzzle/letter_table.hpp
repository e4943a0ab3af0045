#pragma once
// How often the letters of a language come in texts, where there is a table with a source.

#include <cstdint>
#include <string_view>
#include <vector>

namespace lode {

struct TabledLetter {
    char32_t letter;  // a small letter without marks
    std::uint32_t count;
};

// Of the locale's language ("en-GB": English's); empty where there is none.
[[nodiscard]] const std::vector<TabledLetter>& letter_table(std::string_view locale);

}  // namespace lode
