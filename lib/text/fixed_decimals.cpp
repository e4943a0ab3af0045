#include "text/fixed_decimals.hpp"

#include <array>
#include <charconv>

namespace lode {

std::string fixed_decimals(double value, int decimals) {
    // The largest double has 309 digits.
    std::array<char, 400> text{};
    const auto written =
        std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals);
    return {text.data(), written.ptr};
}

}  // namespace lode
