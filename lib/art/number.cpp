#include "art/number.hpp"

#include <array>
#include <charconv>
#include <string_view>

namespace lode {

void append_decimal(std::string& text, double value, int decimals) {
    std::array<char, 400> room;  // the longest double in fixed notation has 309 digits before its point
    const auto written =
        std::to_chars(room.data(), room.data() + room.size(), value, std::chars_format::fixed, decimals);
    std::string_view digits(room.data(), static_cast<std::size_t>(written.ptr - room.data()));
    if (digits.find('.') != std::string_view::npos) {
        while (digits.ends_with('0')) digits.remove_suffix(1);
        if (digits.ends_with('.')) digits.remove_suffix(1);
    }
    text += digits == "-0" ? std::string_view("0") : digits;
}

std::string decimal(double value, int decimals) {
    std::string text;
    append_decimal(text, value, decimals);
    return text;
}

}  // namespace lode
