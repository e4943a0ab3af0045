#include "place/symmetry.hpp"

#include <algorithm>

namespace lode {
namespace {

// One of the eight symmetries of a square, as three mirrors one after another.
struct Symmetry {
    bool left_right = false;
    bool up_down = false;
    bool across = false;  // rows become columns; only where there are as many

    [[nodiscard]] Cell image(Cell cell, Size size) const {
        if (left_right) cell.column = size.columns - 1 - cell.column;
        if (up_down) cell.row = size.rows - 1 - cell.row;
        if (across) std::swap(cell.row, cell.column);
        return cell;
    }
    [[nodiscard]] Direction image(Direction direction) const {
        Cell by = step(direction);
        if (left_right) by.column = -by.column;
        if (up_down) by.row = -by.row;
        if (across) std::swap(by.row, by.column);
        return *std::find_if(all_directions.begin(), all_directions.end(),
                             [&](Direction other) { return step(other) == by; });
    }
};

bool keeps(const Symmetry& symmetry, const PlaceTask& task) {
    const Size size = task.mask.size();
    if (symmetry.across && size.rows != size.columns) return false;
    for (const Direction direction : all_directions)
        if (task.directions.contains(direction) != task.directions.contains(symmetry.image(direction)))
            return false;
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column)
            if (task.mask.open({row, column}) != task.mask.open(symmetry.image(Cell{row, column}, size)))
                return false;
    return true;
}

std::vector<Symmetry> symmetries(const PlaceTask& task) {
    std::vector<Symmetry> all;
    for (unsigned bits = 1; bits < 8; ++bits) {
        const Symmetry symmetry{(bits & 1) != 0, (bits & 2) != 0, (bits & 4) != 0};
        if (keeps(symmetry, task)) all.push_back(symmetry);
    }
    return all;
}

}  // namespace

std::vector<Candidate> one_of_each_class(const PlaceTask& task, const Candidates& candidates,
                                         std::uint32_t word) {
    const auto all = symmetries(task);
    std::vector<Candidate> chosen;
    each_bit(candidates.all().data(), candidates.runs()[word], [&](Candidate candidate) {
        const Placement placement = candidates.placement(candidate);
        // The one with the least number stands for its class.
        const bool least = std::all_of(all.begin(), all.end(), [&](const Symmetry& symmetry) {
            const auto image = candidates.that_covers(
                word,
                {symmetry.image(placement.first, task.mask.size()), symmetry.image(placement.direction)});
            return !image || *image >= candidate;
        });
        if (least) chosen.push_back(candidate);
    });
    return chosen;
}

}  // namespace lode
