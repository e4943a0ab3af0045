#include "art/waists.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "art/band_outline.hpp"
#include "art/cubic.hpp"

namespace lode {

namespace {

using Place = std::pair<int, int>;

Cell next_on(Cell at, Cell by) {
    return {at.row + by.row, at.column + by.column};
}

// Which bands lie on each cell.
class Cover {
  public:
    explicit Cover(std::span<const Band> bands) : bands_(bands) {
        for (std::size_t i = 0; i < bands.size(); ++i) {
            const Cell by = step_of(bands[i]);
            for (Cell at = bands[i].first;; at = next_on(at, by)) {
                on_[{at.row, at.column}].push_back(i);
                if (at == bands[i].last) break;
            }
        }
    }
    // Whether a band lies on the cell and on one of the others, or on the cell and on none of them.
    [[nodiscard]] bool joins(Cell cell, std::span<const Cell> others) const {
        return any(cell, others, true);
    }
    [[nodiscard]] bool passes(Cell cell, std::span<const Cell> others) const {
        return any(cell, others, false);
    }

  private:
    [[nodiscard]] bool any(Cell cell, std::span<const Cell> others, bool on_others) const {
        const auto found = on_.find({cell.row, cell.column});
        if (found == on_.end()) return false;
        return std::any_of(found->second.begin(), found->second.end(), [&](std::size_t i) {
            return on_others == std::any_of(others.begin(), others.end(),
                                            [&](Cell other) { return is_on(other, bands_[i]); });
        });
    }
    std::span<const Band> bands_;
    std::map<Place, std::vector<std::size_t>> on_;
};

}  // namespace

bool is_on(Cell cell, const Band& band) {
    const Cell by = step_of(band);
    const auto between = [](int a, int x, int b) { return std::min(a, b) <= x && x <= std::max(a, b); };
    const int down = cell.row - band.first.row, right = cell.column - band.first.column;
    return between(band.first.row, cell.row, band.last.row) &&
           between(band.first.column, cell.column, band.last.column) && down * by.column == right * by.row;
}

std::vector<Waist> waists_of(std::span<const Band> own, std::span<const Band> all,
                             const std::function<bool(Cell)>& holds_letter, double radius, double gap) {
    const Cover own_cover(own), cover(all);
    std::vector<Waist> waists;
    for (const Band& band : own) {
        const Cell by = step_of(band);
        if (by.row == 0 || by.column == 0) continue;
        for (Cell at = band.first; at != band.last; at = next_on(at, by)) {
            const Cell next = next_on(at, by);
            const std::array<Cell, 2> sides{Cell{at.row, next.column}, Cell{next.row, at.column}};
            for (const std::size_t side : {0u, 1u}) {
                const Cell beside = sides[side];
                const std::array<Cell, 3> met{at, next, sides[1 - side]};
                if (!holds_letter(beside) || own_cover.joins(beside, met)) continue;
                waists.push_back({at, next, beside, cover.passes(beside, met) ? radius + gap : radius});
            }
        }
    }
    return waists;
}

WaistSide waist_side(double radius, double beside) {
    const double half_step = std::sqrt(0.5);
    const double sum = radius + beside;
    if (sum <= half_step)
        return {{Point{0, radius}, {half_step, radius}, {half_step, radius}, {2 * half_step, radius}}};
    // The line that touches both circles from between them stands across a direction that lies off the one
    // from centre to centre, at 45 degrees, by an angle with this cosine, on the near side.
    const double cosine = sum;
    const double sine = std::sqrt(1 - sum * sum);
    const Point across{half_step * (cosine - sine), half_step * (cosine + sine)};
    const Point mirrored{-across.x, across.y};
    const Point other{half_step, half_step};
    const Point next{2 * half_step, 0};
    return {{radius * across, other - beside * across, other - beside * mirrored, next + radius * mirrored}};
}

Path taken_by(const Waist& waist, double radius, double out) {
    const Point from{waist.from.column + 0.5, waist.from.row + 0.5};
    const Point to{waist.to.column + 0.5, waist.to.row + 0.5};
    const Point centre{waist.beside.column + 0.5, waist.beside.row + 0.5};
    const Point along = (1 / length(to - from)) * (to - from);
    const Point middle = 0.5 * (from + to);
    const Point aside = (1 / length(centre - middle)) * (centre - middle);
    const auto set = [&](Point p) { return from + p.x * along + p.y * aside; };
    const auto& corners = waist_side(radius, waist.radius).corners;
    // Back along the straight parts until they are far enough out.
    const auto farther = [&](Point at, Point before) {
        const double rise = before.y - at.y;
        return rise > 0 ? before + ((out - before.y) / rise) * (before - at) : Point{before.x, out};
    };
    const Point first = farther(corners[1], corners[0]);
    const Point last = farther(corners[2], corners[3]);
    Contour contour{set(first), {}};
    contour.segments.push_back(Segment::line(set(corners[1])));
    // An arc turns clockwise to the eye about a centre that lies to its right; drawn backward, it turns the
    // other way.
    Contour arc{set(corners[2]), {}};
    const bool clockwise = cross(along, aside) < 0;
    if (clockwise) {
        append_arc(arc, centre, set(corners[1]));
        arc = reversed(arc);
    } else {
        arc.start = set(corners[1]);
        append_arc(arc, centre, set(corners[2]));
    }
    contour.segments.insert(contour.segments.end(), arc.segments.begin(), arc.segments.end());
    contour.segments.push_back(Segment::line(set(last)));
    contour.segments.push_back(Segment::line(set(first)));
    return {{signed_area(contour) > 0 ? contour : reversed(contour)}};
}

}  // namespace lode
