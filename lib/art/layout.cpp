#include "art/layout.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "art/fit_inside.hpp"
#include "art/lettering.hpp"
#include "art/outline_polygons.hpp"

namespace lode {

namespace {

// By eye. A heading's capitals stand out from the letters below without shouting them down.
constexpr double heading_over_letters = 2.0;
constexpr double heading_pitch = 1.6;  // as text_block.cpp sets lines
// In cells.
constexpr double gap_below_heading = 0.75;
constexpr double gap_above_words = 0.55;
constexpr double gap_above_foot = 0.6;
constexpr double air_in_row = 0.4;  // at both ends of a row of letters together

// The blocks for one size of the cells, in mm from the upper left corner of the grid's extent.
class Placed {
  public:
    Placed(const Stack& stack, double cell, double most_width, double heading_share)
        : stack_(stack), cell_(cell) {
        middle_ = stack.extent.size.columns * cell / 2;
        bottom_ = stack.extent.size.rows * cell;
        place_above(most_width, heading_share);
        place_below(most_width);
    }

    // Of all that is placed, with as much air at either end as a letter has in its cell.
    [[nodiscard]] double top() const { return top_; }
    [[nodiscard]] double bottom() const { return bottom_; }

    [[nodiscard]] std::vector<Box> boxes() const {
        std::vector<Box> all;
        for (const Box& box : stack_.cells) {
            const auto x = [&](double column) { return (column - stack_.extent.first.column) * cell_; };
            const auto y = [&](double row) { return (row - stack_.extent.first.row) * cell_; };
            all.push_back({x(box.left), y(box.top), x(box.right), y(box.bottom)});
        }
        const auto add = [&](const TextBlock& block, const BlockPlace& place) {
            if (block.empty()) return;
            const double half = block.width * place.cap / 2;
            all.push_back({place.top.x - half, place.top.y, place.top.x + half,
                           place.top.y + block.height * place.cap});
        };
        add(stack_.heading, layout_.heading);
        add(stack_.words, layout_.words);
        add(stack_.foot, layout_.foot);
        if (stack_.divider.width() > 0) {
            const double half_width = stack_.divider.width() / 2, half_height = stack_.divider.height() / 2;
            all.push_back({layout_.divider.x - half_width, layout_.divider.y - half_height,
                           layout_.divider.x + half_width, layout_.divider.y + half_height});
        }
        return all;
    }

    [[nodiscard]] Layout at(Point corner) const {
        Layout result = layout_;
        result.cell = cell_;
        result.corner = {corner.x - stack_.extent.first.column * cell_,
                         corner.y - stack_.extent.first.row * cell_};
        for (Point* p : {&result.heading.top, &result.words.top, &result.foot.top, &result.divider})
            *p = {p->x + corner.x, p->y + corner.y};
        return result;
    }

  private:
    [[nodiscard]] double air() const { return (1 - stack_.letter_cap) / 2 * cell_; }

    void place_above(double most_width, double share) {
        const TextBlock& heading = stack_.heading;
        if (heading.empty() && !stack_.heading_area) return;
        const double letters = stack_.letter_cap * cell_;
        const double area = stack_.heading_area.value_or(0);
        double cap = 0;
        if (!heading.empty()) {
            const double as_wide_as_rows = (stack_.extent.size.columns - air_in_row) * cell_ / heading.width;
            cap = share *
                  std::clamp(as_wide_as_rows, least_over_letters * letters, heading_over_letters * letters);
            cap = std::min(cap, most_width / heading.width);
            if (stack_.heading_area) cap = std::min(cap, area / heading.height);
        }
        const double high = stack_.heading_area ? area : heading.height * cap;
        const double below = gap_below_heading * cell_ + stack_.divider.height();
        layout_.heading = {cap, {middle_, -below - (high + heading.height * cap) / 2}};
        // Half way between heading and letters, as the eye has it: a cell has air above its letter.
        layout_.divider = {middle_, (air() - below) / 2};
        top_ = -below - high - air();
    }

    void place_below(double most_width) {
        double y = bottom_;
        const auto add = [&](const TextBlock& block, double gap, BlockPlace& place) {
            if (block.empty()) return;
            const double cap =
                std::min(std::max(text_share * cell_, stack_.least_text_cap), most_width / block.width);
            place = {cap, {middle_, y + gap * cell_}};
            y = place.top.y + block.height * cap;
        };
        add(stack_.words, gap_above_words, layout_.words);
        add(stack_.foot, gap_above_foot, layout_.foot);
        if (y > bottom_) bottom_ = y + air();
    }

    const Stack& stack_;
    double cell_;
    double middle_ = 0;
    double top_ = 0;
    double bottom_ = 0;
    Layout layout_;
};

std::optional<Layout> if_readable(Layout layout) {
    if (!(layout.cell >= least_cell_mm)) return std::nullopt;
    return layout;
}

// The largest cells, whatever fits in height not being told by a formula.
double largest_cell(const Box& room, const Stack& stack) {
    const auto fits = [&](double cell) {
        const Placed placed(stack, cell, room.width(), 1);
        return placed.bottom() - placed.top() <= room.height();
    };
    double low = 0;
    double high = std::min(room.width() / stack.extent.size.columns, room.height() / stack.extent.size.rows);
    if (fits(high)) return high;
    for (int i = 0; i < 60; ++i) {
        const double middle = (low + high) / 2;
        (fits(middle) ? low : high) = middle;
    }
    return low;
}

// Blocks grow with the cells but where a width or an area bounds them: a few rounds settle.
std::optional<Layout> fit_share(const Path& region, const Stack& stack, double heading_share, Across across) {
    const Box box = bounds(region);
    double cell = std::min(box.width() / stack.extent.size.columns, box.height() / stack.extent.size.rows);
    for (int round = 0; round < 12; ++round) {
        const Placed placed(stack, cell, box.width(), heading_share);
        const std::vector<Box> boxes = placed.boxes();
        const auto found = largest_fit(region, boxes, across);
        if (!found) return std::nullopt;
        constexpr double hair = 1e-6;
        if (found->scale >= 1 && found->scale < 1 + 1e-3) return placed.at(found->at);
        cell *= found->scale * (1 - hair);
        if (cell < least_cell_mm / 2) return std::nullopt;
    }
    return std::nullopt;
}

// Left and right alike, as far as areas tell: what is set there stands on the axis, or it looks misplaced.
bool is_symmetric(const Path& region) {
    const Box box = bounds(region);
    const Path other = mirrored(region, box.left + box.right);
    constexpr double alike = 0.998;
    const auto shape = outline_polygons(region, 100), image = outline_polygons(other, 100);
    return shared_area(shape, image) >= alike * covered_area(shape);
}

}  // namespace

std::optional<Layout> fit(const Box& room, const Stack& stack) {
    if (!(room.width() > 0) || !(room.height() > 0)) return std::nullopt;
    const double cell = largest_cell(room, stack);
    const Placed placed(stack, cell, room.width(), 1);
    const double spare_x = room.width() - stack.extent.size.columns * cell;
    const double spare_y = room.height() - (placed.bottom() - placed.top());
    return if_readable(placed.at({room.left + spare_x / 2, room.top + spare_y / 2 - placed.top()}));
}

std::optional<Layout> fit(const Path& region, const Stack& stack) {
    if (region.empty()) return std::nullopt;
    // Where a heading would cost the letters a quarter of their size, it gives way by steps.
    constexpr double least_kept = 0.75;
    constexpr std::array<double, 4> shares{1, 0.8, 0.65, 0.5};
    const TextBlock none;
    Stack alone{stack.extent, stack.cells, stack.letter_cap,    none, stack.words, stack.foot,
                {},           {},          stack.least_text_cap};
    const Across across = is_symmetric(region) ? Across::on_the_middle : Across::anywhere;
    const auto without = stack.heading.empty() ? std::nullopt : fit_share(region, alone, 1, across);
    std::optional<Layout> best;
    for (const double share : shares) {
        auto layout = fit_share(region, stack, share, across);
        if (layout && (!best || layout->cell > best->cell)) best = layout;
        if (best && (!without || best->cell >= least_kept * without->cell)) break;
        if (stack.heading.empty()) break;
    }
    return best ? if_readable(*best) : std::nullopt;
}

double aspect_in(const Box& room, const Beside& beside) {
    const auto lines = static_cast<double>(beside.heading_lines);
    // Words in three columns, lines as text_block.cpp sets them.
    constexpr double text_pitch = 2;
    const double text_lines =
        std::ceil(static_cast<double>(beside.words) / 3) + static_cast<double>(beside.foot_lines);
    double cell = std::min(room.width(), room.height()) / 15;
    double left = room.height();
    for (int round = 0; round < 8; ++round) {
        double taken = beside.heading_area.value_or(0);
        if (lines > 0 && !beside.heading_area)
            taken += heading_over_letters * cap_share * (1 + (lines - 1) * heading_pitch) * cell;
        if (taken > 0) taken += (gap_below_heading + (1 - cap_share) / 2) * cell;
        taken += text_lines * text_pitch * std::max(text_share * cell, beside.least_text_cap);
        if (beside.words > 0) taken += gap_above_words * cell;
        if (beside.foot_lines > 0) taken += gap_above_foot * cell;
        left = std::max(cell, room.height() - taken);
        cell = std::min(room.width(), left) / 15;
    }
    return room.width() / left;
}

}  // namespace lode
