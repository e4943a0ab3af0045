#include "art/layout.hpp"

#include <algorithm>

namespace lode {

namespace {

// By eye, and common practice for panels of this size: a rim that stays clear of frame, fixings and fingers.
constexpr double margin_share = 0.055;  // of the shorter side
constexpr double least_margin = 2;      // mm
constexpr double most_margin = 25;      // mm

// By eye. A heading's capitals stand out from the letters below without shouting them down; lines are 1.6 cap
// heights apart, within the 135 to 170 percent that the 2010 ADA Standards ask of signs (703.5.9).
constexpr double heading_over_letters = 2.0;
constexpr double line_pitch = 1.6;
constexpr double gap_below_heading = 0.75;  // cells, down to the first row of cells
constexpr double air_in_row = 0.4;          // cells, at both ends of a row of letters together
constexpr double least_over_letters =
    1.3;  // where a heading as wide as the letters' rows would be smaller, it may stick out

double margin_of(const BlankSize& blank) {
    return std::clamp(margin_share * std::min(blank.width_mm, blank.height_mm), least_margin, most_margin);
}

class Fitter {
  public:
    Fitter(const BlankSize& blank, const Extent& extent, double letter_cap, const Heading& heading)
        : extent_(extent), letter_cap_(letter_cap), heading_(heading) {
        margin_ = margin_of(blank);
        width_ = blank.width_mm - 2 * margin_;
        height_ = blank.height_mm - 2 * margin_;
    }

    [[nodiscard]] double heading_cap(double cell) const {
        double widest = 0;
        for (const HeadingLine& line : heading_.lines) widest = std::max(widest, line.box.width());
        if (!(widest > 0)) return 0;
        const double letters = letter_cap_ * cell;
        const double as_wide_as_rows = (extent_.size.columns - air_in_row) * cell / widest;
        return std::min(
            std::clamp(as_wide_as_rows, least_over_letters * letters, heading_over_letters * letters),
            width_ / widest);
    }
    // From the top of the heading's ink to the first row of cells.
    [[nodiscard]] double above_grid(double cell) const {
        if (heading_.lines.empty()) return 0;
        const double lines = static_cast<double>(heading_.lines.size() - 1) * line_pitch;
        const double ink =
            lines - heading_.lines.front().box.top + std::max(0.0, heading_.lines.back().box.bottom);
        return ink * heading_cap(cell) + gap_below_heading * cell;
    }
    // A cell has air about its letter; ink alone would sit too near to the rim.
    [[nodiscard]] double air_above(double cell) const {
        return heading_.lines.empty() ? 0 : (1 - letter_cap_) / 2 * cell;
    }
    [[nodiscard]] double total(double cell) const {
        return air_above(cell) + above_grid(cell) + extent_.size.rows * cell;
    }
    [[nodiscard]] double largest_cell() const {
        double low = 0;
        double high = std::min(width_ / extent_.size.columns, height_ / extent_.size.rows);
        if (total(high) <= height_) return high;
        for (int i = 0; i < 60; ++i) {
            const double middle = (low + high) / 2;
            (total(middle) <= height_ ? low : high) = middle;
        }
        return low;
    }
    [[nodiscard]] Layout layout() const {
        Layout result;
        result.cell = largest_cell();
        const double spare_x = width_ - extent_.size.columns * result.cell;
        const double spare_y = height_ - total(result.cell);
        const double top = margin_ + spare_y / 2 + air_above(result.cell);
        result.corner = {margin_ + spare_x / 2 - extent_.first.column * result.cell,
                         top + above_grid(result.cell) - extent_.first.row * result.cell};
        result.heading_cap = heading_cap(result.cell);
        result.heading_middle = margin_ + width_ / 2;
        for (std::size_t i = 0; i < heading_.lines.size(); ++i)
            result.baselines.push_back(top + result.heading_cap * (static_cast<double>(i) * line_pitch -
                                                                   heading_.lines.front().box.top));
        return result;
    }

  private:
    Extent extent_;
    double letter_cap_;
    const Heading& heading_;
    double margin_ = 0;
    double width_ = 0;
    double height_ = 0;
};

}  // namespace

std::optional<Layout> fit(const BlankSize& blank, const Extent& extent, double letter_cap,
                          const Heading& heading) {
    const Layout layout = Fitter(blank, extent, letter_cap, heading).layout();
    if (!(layout.cell >= least_cell_mm)) return std::nullopt;
    return layout;
}

double grid_aspect(const BlankSize& blank, std::string_view heading) {
    const double width = blank.width_mm - 2 * margin_of(blank);
    const double height = blank.height_mm - 2 * margin_of(blank);
    const auto lines = static_cast<double>(heading_lines(heading).size());
    const double capitals = heading_over_letters * cap_share * (1 + (lines - 1) * line_pitch);
    const double cells_above = lines > 0 ? capitals + gap_below_heading + (1 - cap_share) / 2 : 0;
    const double cell = std::min(width / 15, height / (15 + cells_above));
    return width / (height - cells_above * cell);
}

}  // namespace lode
