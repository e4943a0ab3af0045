#pragma once
// Bands on a lattice of whole numbers, a cell being 2^20 units wide, and the way back from their united
// polygons to curves.
//
// On the lattice bands round the same cell share their corners to the last bit, words along one line share
// their sides, and a union leaves no slivers. Afterwards each edge of a united polygon is traced back to the
// line or the circle that it was cut from, and neighbouring edges of one line or circle become one again.

#include <letterlode/grid.hpp>
#include <letterlode/path.hpp>
#include <map>
#include <optional>
#include <polyclipping/clipper.hpp>
#include <set>
#include <span>
#include <tuple>
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
    // The radius is in cells; waists are as unite_bands takes them.
    BandOutline(std::span<const Band> bands, double radius, std::span<const Waist> waists);
    // One polygon a band.
    [[nodiscard]] const ClipperLib::Paths& polygons() const { return polygons_; }
    // The curves, in lattice units, of a contour of the polygons' union.
    [[nodiscard]] Contour curved(const ClipperLib::Path& polygon) const;

    // A straight side, along the direction of so many eighths of a turn (0 to 3), by its place across it.
    struct Side {
        int along;
        ClipperLib::cInt across;
        friend auto operator<=>(const Side&, const Side&) = default;
    };
    // A circle about a cell: as wide as bands are, or of a waist.
    struct Circle {
        Cell cell;
        bool of_waist = false;
        bool clockwise = true;  // to the eye, as the outline goes round: about the band's own cells
        friend bool operator==(const Circle&, const Circle&) = default;
    };
    // A straight part of a waist, between the corners that it was drawn with.
    struct Tangent {
        Point from;
        Point to;
        friend bool operator==(const Tangent&, const Tangent&) = default;
    };
    // What an edge of the union was cut from.
    struct Source {
        std::optional<Side> side;
        std::optional<Circle> circle;
        std::optional<Tangent> tangent;
        friend bool operator==(const Source&, const Source&) = default;
    };

  private:
    // Rounding moves a corner by a unit or two.
    static constexpr double slack = 3;
    // How far a true crossing may lie from the polygon's corner, which stands on chords.
    static constexpr double most_shift = 2'000;

    // A waist by the cells of its step, in order, and the one beside it.
    using Step = std::tuple<int, int, int, int, int, int>;
    [[nodiscard]] static Step step_key(Cell a, Cell b, Cell beside);

    void add(const Band& band);
    // Along one side of the band, from above the cell `from` to above `to`; the normal is a corner of
    // circles.
    void append_side(ClipperLib::Path& polygon, Cell from, Cell to, int normal);
    [[nodiscard]] Source source_of(ClipperLib::IntPoint from, ClipperLib::IntPoint to) const;
    [[nodiscard]] std::optional<Side> side_of(ClipperLib::IntPoint from, ClipperLib::IntPoint to) const;
    [[nodiscard]] std::optional<Circle> circle_of(ClipperLib::IntPoint from, ClipperLib::IntPoint to) const;
    [[nodiscard]] std::optional<Tangent> tangent_of(ClipperLib::IntPoint from, ClipperLib::IntPoint to) const;
    [[nodiscard]] double radius_of(const Circle& circle) const {
        return circle.of_waist ? waist_radius_ : radius_;
    }
    [[nodiscard]] Point junction(const Source& a, const Source& b, ClipperLib::IntPoint near) const;
    [[nodiscard]] std::vector<Point> crossings(const Source& a, const Source& b) const;

    double radius_;
    double waist_radius_ = 0;  // the other one, where there is one
    std::vector<ClipperLib::IntPoint> circle_;
    std::vector<ClipperLib::IntPoint> waist_circle_;
    std::map<Step, bool> waists_;  // whether its circle has the other radius
    ClipperLib::Paths polygons_;
    std::set<Side> sides_;
    std::set<std::pair<int, int>> centres_;
    std::set<std::pair<int, int>> waist_centres_;
    std::map<std::pair<int, int>, std::vector<Tangent>> tangents_;  // by the cell beside the waist
};

}  // namespace lode
