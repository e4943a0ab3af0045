// Square cells that follow an outline: for a lattice of a given size and place each row is a strip, in which
// every edge blocks the stretch that it passes; the cells between two blocked stretches are open where the
// region is. The size is searched from above in small steps, since fewer cells may fit at a smaller size (the
// lattice moves under the outline), and then between the last two sizes.

#include <algorithm>
#include <cmath>

#include "art/clipping.hpp"
#include "art/fit_inside.hpp"
#include "art/flatten.hpp"
#include "art/room.hpp"

namespace lode {

namespace {

constexpr double slack = 1e-6;      // mm that a cell may reach over an edge
constexpr double least_cell = 0.5;  // mm
constexpr double step_down = 0.997;

struct Stretch {
    double from;
    double to;
};

// A lattice: where its lines stand, in cells from the middle of the region's box.
struct Lattice {
    double cell;
    double x;
    double y;
};

class CellSearch {
  public:
    CellSearch(const Room& room, std::size_t at_least, const std::vector<Box>& kept_clear)
        : room_(room), at_least_(at_least), kept_clear_(kept_clear), middle_(room.box().centre()) {}

    std::optional<CellFit> run(bool mirrors_across, bool mirrors_down) {
        const double most =
            std::sqrt(room_.box().width() * room_.box().height() / static_cast<double>(at_least_));
        for (const double x : places(mirrors_across))
            for (const double y : places(mirrors_down)) try_place(x, y, most);
        if (!best_) return std::nullopt;
        for (double by = 1.0 / 16; by > 1e-4; by /= 2)
            for (const double side : {-by, by}) {
                if (!mirrors_across) improve(best_->x + side, best_->y);
                if (!mirrors_down) improve(best_->x, best_->y + side);
            }
        return fit(*best_);
    }

  private:
    static std::vector<double> places(bool mirrors) {
        if (mirrors) return {0, 0.5};
        std::vector<double> all;
        for (int i = 0; i < 8; ++i) all.push_back(i / 8.0);
        return all;
    }

    void try_place(double x, double y, double most) {
        const double least = best_ ? best_->cell : least_cell;
        double failed = most;
        for (double cell = most; cell > least; failed = cell, cell *= step_down)
            if (enough({cell, x, y})) return settle(x, y, cell, failed);
    }
    void improve(double x, double y) {
        const double cell = best_->cell * (1 + 1e-5);
        if (enough({cell, x, y})) settle(x, y, cell, best_->cell / step_down);
    }
    // Between a size that does and one that does not.
    void settle(double x, double y, double does, double does_not) {
        for (int i = 0; i < 24 && does_not > does; ++i) {
            const double cell = (does + does_not) / 2;
            (enough({cell, x, y}) ? does : does_not) = cell;
        }
        best_ = Lattice{does, x, y};
    }

    // A mask over all cells of the lattice that could lie in the region's box.
    Mask all_open(const Lattice& lattice, Point& corner) const {
        const double cell = lattice.cell;
        const Box& box = room_.box();
        const auto first = [&](double from, double middle, double place) {
            return std::ceil((from - slack - middle) / cell - place);
        };
        const double column = first(box.left, middle_.x, lattice.x),
                     row = first(box.top, middle_.y, lattice.y);
        corner = {middle_.x + (lattice.x + column) * cell, middle_.y + (lattice.y + row) * cell};
        const int rows = static_cast<int>((box.bottom + slack - corner.y) / cell);
        const int columns = static_cast<int>((box.right + slack - corner.x) / cell);
        if (rows < 1 || columns < 1) return {};
        Mask mask({rows, columns}, false);
        std::vector<std::vector<Stretch>> blocked(static_cast<std::size_t>(rows));
        const auto block = [&](double top, double bottom, auto stretch_in) {
            const int from = std::max(0, static_cast<int>(std::floor((top - corner.y) / cell)));
            const int to = std::min(rows - 1, static_cast<int>(std::floor((bottom - corner.y) / cell)));
            for (int r = from; r <= to; ++r) {
                const double y0 = std::max(top, corner.y + r * cell + slack);
                const double y1 = std::min(bottom, corner.y + (r + 1) * cell - slack);
                if (y0 <= y1) blocked[static_cast<std::size_t>(r)].push_back(stretch_in(y0, y1));
            }
        };
        for (const Room::Edge& e : room_.edges())
            block(e.box.top, e.box.bottom, [&](double y0, double y1) {
                if (e.from.y == e.to.y) return Stretch{e.box.left, e.box.right};
                const double slope = (e.to.x - e.from.x) / (e.to.y - e.from.y);
                const double a = e.from.x + slope * (y0 - e.from.y), b = e.from.x + slope * (y1 - e.from.y);
                return Stretch{std::min(a, b), std::max(a, b)};
            });
        for (const Box& box_kept : kept_clear_)
            block(box_kept.top, box_kept.bottom, [&](double, double) {
                return Stretch{box_kept.left, box_kept.right};
            });
        for (int r = 0; r < rows; ++r) open_row(mask, r, corner, cell, blocked[static_cast<std::size_t>(r)]);
        return mask;
    }

    void open_row(Mask& mask, int row, Point corner, double cell, std::vector<Stretch>& blocked) const {
        std::sort(blocked.begin(), blocked.end(), [](const Stretch& a, const Stretch& b) {
            return a.from != b.from ? a.from < b.from : a.to < b.to;
        });
        const int columns = mask.size().columns;
        const double end = corner.x + columns * cell;
        double free_from = corner.x;
        const auto open_up_to = [&](double to) {
            const int first = std::max(0, static_cast<int>(std::ceil((free_from - slack - corner.x) / cell)));
            const int last = std::min(columns, static_cast<int>(std::floor((to + slack - corner.x) / cell)));
            if (first >= last) return;
            const Point inner{(std::max(free_from, corner.x) + std::min(to, end)) / 2,
                              corner.y + (row + 0.5) * cell};
            if (!room_.inside(inner)) return;
            for (int c = first; c < last; ++c) mask.set({row, c}, true);
        };
        for (const Stretch& stretch : blocked) {
            open_up_to(stretch.from);
            free_from = std::max(free_from, stretch.to);
        }
        open_up_to(end);
    }

    // Leaves the largest part that is joined side to side, of equal ones the first, and returns its count.
    static std::size_t keep_largest_part(Mask& mask) {
        const Size size = mask.size();
        std::vector<int> part(size.cells(), -1);
        const auto index = [&](Cell c) {
            return static_cast<std::size_t>(c.row) * static_cast<std::size_t>(size.columns) +
                   static_cast<std::size_t>(c.column);
        };
        int parts = 0, largest = -1;
        std::size_t most = 0;
        std::vector<Cell> waiting;
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column) {
                if (!mask.open({row, column}) || part[index({row, column})] >= 0) continue;
                std::size_t count = 0;
                waiting = {{row, column}};
                part[index({row, column})] = parts;
                while (!waiting.empty()) {
                    const Cell cell = waiting.back();
                    waiting.pop_back();
                    ++count;
                    for (const Direction d :
                         {Direction::right, Direction::down, Direction::left, Direction::up}) {
                        const Cell next = moved(cell, d, 1);
                        if (!mask.open(next) || part[index(next)] >= 0) continue;
                        part[index(next)] = parts;
                        waiting.push_back(next);
                    }
                }
                if (count > most) {
                    most = count;
                    largest = parts;
                }
                ++parts;
            }
        if (parts > 1)
            for (int row = 0; row < size.rows; ++row)
                for (int column = 0; column < size.columns; ++column)
                    if (part[index({row, column})] != largest) mask.set({row, column}, false);
        return most;
    }

    [[nodiscard]] bool enough(const Lattice& lattice) const {
        Point corner;
        Mask mask = all_open(lattice, corner);
        return mask.open_count() >= at_least_ && keep_largest_part(mask) >= at_least_;
    }

    [[nodiscard]] CellFit fit(const Lattice& lattice) const {
        CellFit result{lattice.cell, {}, {}};
        Mask mask = all_open(lattice, result.corner);
        keep_largest_part(mask);
        int top = mask.size().rows, left = mask.size().columns, bottom = -1, right = -1;
        for (int row = 0; row < mask.size().rows; ++row)
            for (int column = 0; column < mask.size().columns; ++column)
                if (mask.open({row, column})) {
                    top = std::min(top, row);
                    bottom = std::max(bottom, row);
                    left = std::min(left, column);
                    right = std::max(right, column);
                }
        result.mask = Mask({bottom - top + 1, right - left + 1}, false);
        for (int row = top; row <= bottom; ++row)
            for (int column = left; column <= right; ++column)
                result.mask.set({row - top, column - left}, mask.open({row, column}));
        result.corner = {result.corner.x + left * lattice.cell, result.corner.y + top * lattice.cell};
        return result;
    }

    const Room& room_;
    std::size_t at_least_;
    const std::vector<Box>& kept_clear_;
    Point middle_;
    std::optional<Lattice> best_;
};

bool about_equal(double a, double b) {
    return std::abs(a - b) < 1e-3;
}

// Whether left and right (or top and bottom) of all can be changed about the middle of the region's box.
bool mirrors(const Path& region, const std::vector<Box>& kept_clear, const Box& about, bool across) {
    const auto turned = [&](Point p) {
        return across ? Point{about.left + about.right - p.x, p.y}
                      : Point{p.x, about.top + about.bottom - p.y};
    };
    for (const Box& box : kept_clear) {
        const Point a = turned({box.left, box.top}), b = turned({box.right, box.bottom});
        const Box other{std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)};
        if (std::none_of(kept_clear.begin(), kept_clear.end(), [&](const Box& one) {
                return about_equal(one.left, other.left) && about_equal(one.right, other.right) &&
                       about_equal(one.top, other.top) && about_equal(one.bottom, other.bottom);
            }))
            return false;
    }
    using namespace ClipperLib;
    const Paths paths = lattice_polygons(region, fit_tolerance_mm);
    Paths image = paths;
    double length = 0;
    for (auto& polygon : image) {
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            const IntPoint a = polygon[i], b = polygon[(i + 1) % polygon.size()];
            const double dx = static_cast<double>(b.X - a.X), dy = static_cast<double>(b.Y - a.Y);
            length += std::sqrt(dx * dx + dy * dy);
        }
        for (IntPoint& p : polygon) {
            const Point q = turned(
                {static_cast<double>(p.X) / lattice_per_mm, static_cast<double>(p.Y) / lattice_per_mm});
            p = {std::llround(q.x * lattice_per_mm), std::llround(q.y * lattice_per_mm)};
        }
        std::reverse(polygon.begin(), polygon.end());
    }
    Clipper clipper;
    clipper.AddPaths(paths, ptSubject, true);
    clipper.AddPaths(image, ptClip, true);
    Paths off;
    need_done(clipper, clipper.Execute(ctXor, off, pftNonZero, pftNonZero));
    double area = 0;
    for (const auto& polygon : off) area += Area(polygon);
    return std::abs(area) <= 2 * fit_tolerance_mm * lattice_per_mm * length;
}

}  // namespace

std::optional<CellFit> cells_inside(const Path& region, std::size_t at_least_cells,
                                    const std::vector<Box>& kept_clear) {
    const Room room(region);
    if (room.empty() || at_least_cells == 0) return std::nullopt;
    CellSearch search(room, at_least_cells, kept_clear);
    return search.run(mirrors(region, kept_clear, room.box(), true),
                      mirrors(region, kept_clear, room.box(), false));
}

}  // namespace lode
