#pragma once
// Copies on their way to the caller, in the order in which they are given: by first cell in reading order,
// then by direction, length and word.

#include <cstddef>
#include <cstdint>
#include <vector>

#include <letterlode/find.hpp>

namespace lode {

struct Finding {
    std::uint64_t
        place;  // the index of the first cell, the direction and the length, packed as they are ordered
    std::uint32_t word;
};

inline constexpr int length_bits = 28;
inline constexpr int place_bits_below_cell = length_bits + 3;

[[nodiscard]] constexpr std::uint64_t packed_place(std::size_t cell, Direction direction,
                                                   std::size_t length) {
    return std::uint64_t{cell} << place_bits_below_cell |
           std::uint64_t{static_cast<unsigned>(direction)} << length_bits | length;
}
[[nodiscard]] Copy unpacked_place(std::uint64_t place, Size size);

// Puts findings into order. Linear in them and in log(cells that they span) / 11, but for copies with the
// same first cell. `room` is for its use.
void sort_findings(std::vector<Finding>& findings, std::vector<Finding>& room);

}  // namespace lode
