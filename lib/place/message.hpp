#pragma once
// The leftover message: the letters that it puts into the cells outside all words.

#include "place/place.hpp"

namespace lode {

// The grid with the message's letters in its empty cells, in reading order, as far as they go.
[[nodiscard]] Grid with_message(Grid grid, const Demands& demands);

}  // namespace lode
