#pragma once
// How a page is shared between a grid and a list: both as large as they can be together.

#include <letterlode/grid.hpp>
#include <letterlode/path.hpp>

#include "print/list_columns.hpp"

namespace lode {

// What a page is to hold. Sizes of type in points, lengths in mm.
struct SheetNeeds {
    Size grid;                  // in cells, numbers at the edges included
    double letter_share = 0.6;  // a letter's size in shares of its cell
    double least_letter_pt = 0;
    double most_cell_mm = 0;
    double least_list_pt = 0;
    double usual_list_pt = 0;  // on a page of its own
    double most_list_pt = 0;
    double gap_mm = 6;  // between grid and list
    bool right_to_left = false;

    [[nodiscard]] double letter_pt(double cell_mm) const { return letter_share * cell_mm * points_a_mm; }
};

struct SheetLayout {
    double cell_mm = 0;
    double letter_pt = 0;
    Box grid;
    ListColumns list;  // what stands on the grid's page; without columns where it has pages of its own
    Point list_corner;
    bool is_list_apart = false;
    double list_pt = 0;
};

// Shares the room of one page; the list below the grid or beside it, in type as large as the grid's letters
// where that can be. Where either would be smaller than its least, or `wanted_pt` is reached only so, the
// list is apart: the grid takes all of the room.
[[nodiscard]] SheetLayout share_page(const SheetNeeds& needs, const ListFlow& list, const Box& room,
                                     double wanted_pt);

}  // namespace lode
