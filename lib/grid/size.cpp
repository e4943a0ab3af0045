#include <charconv>

#include <letterlode/grid.hpp>

namespace lode {

Outcome<Size> checked_size(long long columns, long long rows) {
    const std::string asked = std::to_string(columns) + "x" + std::to_string(rows);
    if (columns < 1 || rows < 1)
        return Refusal{Refusal::Reason::unusable,
                       "A grid of " + asked + " has no cells.",
                       {},
                       {"Give columns x rows, each 1 or more, such as 15x15."},
                       {},
                       0};
    if (columns > max_side || rows > max_side ||
        static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows) > max_cells)
        return Refusal{Refusal::Reason::unusable,
                       "A grid of " + asked + " is too large.",
                       {},
                       {"At most " + std::to_string(max_side) + " columns or rows and " +
                        std::to_string(max_cells) + " cells in all."},
                       {},
                       0};
    return Size{static_cast<int>(rows), static_cast<int>(columns)};
}

Outcome<Size> read_size(std::string_view text) {
    long long columns = 0;
    long long rows = 0;
    const char* const end = text.data() + text.size();
    const auto first = std::from_chars(text.data(), end, columns);
    if (first.ec == std::errc() && first.ptr != end && (*first.ptr == 'x' || *first.ptr == 'X')) {
        const auto second = std::from_chars(first.ptr + 1, end, rows);
        if (second.ec == std::errc() && second.ptr == end) return checked_size(columns, rows);
    }
    return Refusal{Refusal::Reason::unusable,
                   "'" + std::string(text.substr(0, 40)) + "' is no size of a grid.",
                   {},
                   {"Give columns x rows, such as 15x15."},
                   {},
                   0};
}

}  // namespace lode
