#pragma once
// Where heading, grid, words and foot stand on the blank.

#include <optional>
#include <vector>

#include <letterlode/art.hpp>

#include "art/text_block.hpp"

namespace lode {

// The rows and columns that hold open cells: a mask may leave whole rows empty, and they need no room.
struct Extent {
    Cell first;
    Size size;
};

// What stands above each other. An empty block takes no room.
struct Stack {
    Extent extent;
    std::vector<Box> cells;  // boxes that together hold the open cells, in cells from row 1, column 1
    double letter_cap = 0;   // cells
    const TextBlock& heading;
    const TextBlock& words;
    const TextBlock& foot;
    std::optional<double> heading_area;  // mm high
    Box divider{};                       // mm, of an ornament between heading and grid; empty: none
    double least_text_cap = 0;           // mm, of words and foot
};

// A block of text: how high its capitals are, and the middle of its upper edge.
struct BlockPlace {
    double cap = 0;  // mm
    Point top;
};

struct Layout {
    double cell = 0;  // mm
    Point corner;     // of row 1, column 1, whether it is open or not
    BlockPlace heading;
    BlockPlace words;
    BlockPlace foot;
    Point divider;  // its middle
};

// Cap heights of the words in cells.
inline constexpr double text_share = 0.36;

// How much higher a heading's capitals are than those of the letters, at the least, by eye: where one as wide
// as the letters' rows would be smaller, it may stick out.
inline constexpr double least_over_letters = 1.3;

// Where nothing but the edge is in the way: the largest cells that fit, or nothing where they are under
// least_cell_mm.
[[nodiscard]] std::optional<Layout> fit(const Box& room, const Stack& stack);
// In a region of any outline, holes and all.
[[nodiscard]] std::optional<Layout> fit(const Path& region, const Stack& stack);

// What takes room above and below a grid that is not made yet.
struct Beside {
    std::size_t heading_lines = 0;
    std::optional<double> heading_area;  // mm
    std::size_t words = 0;
    std::size_t foot_lines = 0;
    double least_text_cap = 0;  // mm, of words and foot
};
// Columns over rows of a grid that would fill a box together with it.
[[nodiscard]] double aspect_in(const Box& room, const Beside& beside);

}  // namespace lode
