#include "find/findings.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <tuple>

namespace lode {

Copy unpacked_place(std::uint64_t place, Size size) {
    const auto cell = static_cast<std::uint32_t>(place >> place_bits_below_cell);
    const auto columns = static_cast<std::uint32_t>(size.columns);
    return {{static_cast<int>(cell / columns), static_cast<int>(cell % columns)},
            static_cast<Direction>(place >> length_bits & 7),
            static_cast<int>(place & ((1u << length_bits) - 1))};
}

// Few are sorted by comparison, many by the digits of their first cells, the lowest first.
void sort_findings(std::vector<Finding>& findings, std::vector<Finding>& other) {
    const auto in_order = [](const Finding& a, const Finding& b) {
        return std::tie(a.place, a.word) < std::tie(b.place, b.word);
    };
    if (findings.size() < 256) return std::sort(findings.begin(), findings.end(), in_order);

    constexpr unsigned digit_bits = 11;
    const auto cell = [](const Finding& finding) { return finding.place >> place_bits_below_cell; };
    const auto [least, greatest] = std::minmax_element(findings.begin(), findings.end(),
                                                       [](auto& a, auto& b) { return a.place < b.place; });
    const std::uint64_t base = cell(*least);
    const auto bits = static_cast<unsigned>(std::bit_width(cell(*greatest) - base));
    other.resize(findings.size());
    for (unsigned shift = 0; shift < bits; shift += digit_bits) {
        std::array<std::size_t, std::size_t{1} << digit_bits> next{};
        const auto digit = [&](const Finding& finding) {
            return (cell(finding) - base) >> shift & (next.size() - 1);
        };
        for (const Finding& finding : findings) ++next[digit(finding)];
        std::size_t start = 0;
        for (std::size_t& count : next) start += std::exchange(count, start);
        for (const Finding& finding : findings) other[next[digit(finding)]++] = finding;
        findings.swap(other);
    }
    for (auto first = findings.begin(); first != findings.end();) {
        auto last = first + 1;
        while (last != findings.end() && cell(*last) == cell(*first)) ++last;
        if (last - first > 1) std::sort(first, last, in_order);
        first = last;
    }
}

}  // namespace lode
