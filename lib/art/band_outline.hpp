#pragma once
// Capsules on a lattice of whole numbers, a cell being 2^20 units wide, and the way back from their united
// polygons to curves.
//
// On the lattice capsules round the same cell share their corners to the last bit, words along one line share
// their sides, and a union leaves no slivers. Afterwards each edge of a united polygon is traced back to the
// line or the circle that it was cut from, and neighbouring edges of one line or circle become one again.

#include <letterlode/grid.hpp>
#include <letterlode/path.hpp>
#include <optional>
#include <polyclipping/clipper.hpp>
#include <set>
#include <span>
#include <utility>
#include <vector>

#include "art/bands.hpp"

namespace lode {

inline constexpr ClipperLib::cInt lattice_unit = ClipperLib::cInt{1} << 20;
// The centre of a cell.
[[nodiscard]] ClipperLib::IntPoint lattice(Cell cell);

// From the first cell to the next of the band; nothing where both ends are one cell. Throws
// std::invalid_argument for a band along none of the eight directions.
[[nodiscard]] Cell step_of(const Band& band);

class BandOutline {
  public:
    // The radius is in cells.
    BandOutline(std::span<const Band> bands, double radius);
    [[nodiscard]] const ClipperLib::Paths& capsules() const { return capsules_; }
    // The curves, in lattice units, of a contour of the capsules' union.
    [[nodiscard]] Contour curved(const ClipperLib::Path& polygon) const;

    // A straight side, along the direction of so many eighths of a turn (0 to 3), by its place across it.
    struct Side {
        int along;
        ClipperLib::cInt across;
        friend auto operator<=>(const Side&, const Side&) = default;
    };
    // What an edge of the union was cut from.
    struct Source {
        std::optional<Side> side;
        std::optional<Cell> circle;
        friend bool operator==(const Source&, const Source&) = default;
    };

  private:
    // Rounding moves a corner by a unit or two.
    static constexpr double slack = 3;
    // How far a true crossing may lie from the polygon's corner, which stands on chords.
    static constexpr double most_shift = 2'000;

    void add(const Band& band);
    [[nodiscard]] Source source_of(ClipperLib::IntPoint from, ClipperLib::IntPoint to) const;
    [[nodiscard]] std::optional<Side> side_of(ClipperLib::IntPoint from, ClipperLib::IntPoint to) const;
    [[nodiscard]] std::optional<Cell> circle_of(ClipperLib::IntPoint from, ClipperLib::IntPoint to) const;
    [[nodiscard]] Point junction(const Source& a, const Source& b, ClipperLib::IntPoint near) const;
    [[nodiscard]] std::vector<Point> crossings(const Source& a, const Source& b) const;

    double radius_;
    std::vector<ClipperLib::IntPoint> circle_;
    ClipperLib::Paths capsules_;
    std::set<Side> sides_;
    std::set<std::pair<int, int>> centres_;
};

}  // namespace lode
