#include "place/message.hpp"

namespace lode {

Grid with_message(Grid grid, const Demands& demands) {
    std::size_t next = 0;
    for (int row = 0; row < grid.size().rows; ++row)
        for (int step = 0; step < grid.size().columns; ++step) {
            const int column = demands.message_from_right ? grid.size().columns - 1 - step : step;
            Letter& letter = grid[{row, column}];
            if (letter == empty_cell && next < demands.message.size()) letter = demands.message[next++];
        }
    return grid;
}

}  // namespace lode
