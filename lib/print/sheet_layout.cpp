#include "print/sheet_layout.hpp"

#include <algorithm>

namespace lode {

namespace {

constexpr double list_step_pt = 0.25;

class PageShare {
  public:
    PageShare(const SheetNeeds& needs, const ListFlow& list, const Box& room)
        : needs_(needs), list_(list), room_(room) {}

    [[nodiscard]] SheetLayout best_on_one_page() const {
        SheetLayout best;
        const auto steps =
            static_cast<int>((needs_.most_list_pt - needs_.least_list_pt) / list_step_pt + 0.5);
        for (int step = 0; step <= steps; ++step) {
            const double size = needs_.least_list_pt + step * list_step_pt;
            for (const SheetLayout& layout : {below(size), beside(size)})
                if (is_better(layout, best)) best = layout;
        }
        return best;
    }

    [[nodiscard]] SheetLayout apart() const {
        SheetLayout layout = with_cell(cell_in(room_.width(), room_.height()));
        layout.grid = placed({room_.left + (room_.width() - width_of(layout)) / 2, room_.top}, layout);
        layout.is_list_apart = true;
        layout.list_pt = needs_.usual_list_pt;
        // As large as one page takes, or else as usual on several.
        for (double size = needs_.most_list_pt; size > needs_.usual_list_pt; size -= list_step_pt)
            if (list_.lowest(0, room_.width(), size).height_mm <= room_.height()) {
                layout.list_pt = size;
                break;
            }
        return layout;
    }

  private:
    static double least(const SheetLayout& layout) { return std::min(layout.letter_pt, layout.list_pt); }

    // The smaller of the two sizes counts, then the letters; a list larger than the letters is no gain.
    static bool is_better(const SheetLayout& one, const SheetLayout& other) {
        constexpr double hair = 1e-9;
        if (one.letter_pt <= 0) return false;
        if (least(one) > least(other) + hair) return true;
        if (least(one) < least(other) - hair) return false;
        return one.letter_pt > other.letter_pt + hair;
    }

    [[nodiscard]] double cell_in(double width, double height) const {
        return std::min({width / needs_.grid.columns, height / needs_.grid.rows, needs_.most_cell_mm});
    }
    [[nodiscard]] SheetLayout with_cell(double cell) const {
        SheetLayout layout;
        layout.cell_mm = std::max(cell, 0.0);
        layout.letter_pt = needs_.letter_pt(layout.cell_mm);
        return layout;
    }
    [[nodiscard]] double width_of(const SheetLayout& layout) const {
        return layout.cell_mm * needs_.grid.columns;
    }
    [[nodiscard]] double height_of(const SheetLayout& layout) const {
        return layout.cell_mm * needs_.grid.rows;
    }
    [[nodiscard]] Box placed(Point corner, const SheetLayout& layout) const {
        return {corner.x, corner.y, corner.x + width_of(layout), corner.y + height_of(layout)};
    }

    [[nodiscard]] SheetLayout below(double size) const {
        const ListColumns list = list_.lowest(0, room_.width(), size);
        SheetLayout layout =
            with_cell(cell_in(room_.width(), room_.height() - list.height_mm - needs_.gap_mm));
        layout.grid = placed({room_.left + (room_.width() - width_of(layout)) / 2, room_.top}, layout);
        layout.list = list;
        layout.list_pt = size;
        // Twice the gap where there is room for it, so that a small grid does not drag the list up.
        const double spare = room_.bottom - layout.grid.bottom - list.height_mm;
        layout.list_corner = {room_.left, layout.grid.bottom + std::min(spare, 1.5 * needs_.gap_mm)};
        return layout;
    }

    [[nodiscard]] SheetLayout beside(double size) const {
        const ListColumns list = list_.narrowest(room_.height(), size);
        if (list.height_mm > room_.height()) return {};
        SheetLayout layout =
            with_cell(cell_in(room_.width() - list.width_mm() - 1.5 * needs_.gap_mm, room_.height()));
        const double spare = room_.width() - width_of(layout) - list.width_mm();
        const double gap = std::min(spare, 3 * needs_.gap_mm);
        const double used = width_of(layout) + gap + list.width_mm();
        const double left = room_.left + (room_.width() - used) / 2;
        const double grid_left = needs_.right_to_left ? left + list.width_mm() + gap : left;
        layout.grid = placed({grid_left, room_.top}, layout);
        layout.list = list;
        layout.list_pt = size;
        layout.list_corner = {needs_.right_to_left ? left : layout.grid.right + gap, room_.top};
        return layout;
    }

    const SheetNeeds& needs_;
    const ListFlow& list_;
    const Box& room_;
};

}  // namespace

SheetLayout share_page(const SheetNeeds& needs, const ListFlow& list, const Box& room, double wanted_pt) {
    const PageShare share(needs, list, room);
    const SheetLayout together = share.best_on_one_page();
    const bool fits = together.letter_pt >= needs.least_letter_pt && together.list_pt >= needs.least_list_pt;
    const double reached = fits ? std::min(together.letter_pt, together.list_pt) : 0;
    if (reached >= std::max(wanted_pt, needs.least_list_pt)) return together;
    const SheetLayout apart = share.apart();
    if (!fits || std::min(apart.letter_pt, apart.list_pt) > reached) return apart;
    // A list alone can be as large as is wanted even where the grid cannot.
    return apart.list_pt >= wanted_pt && wanted_pt > 0 ? apart : together;
}

}  // namespace lode
