#include "art/blank_outline.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

#include "art/crossings.hpp"
#include "art/flatten.hpp"

namespace lode {

namespace {

constexpr double tolerance = 0.005;   // mm, for telling what crosses and what lies in what
constexpr double same_place = 0.01;   // mm: an end so near to its start meets it
constexpr double least_area = 0.001;  // mm^2: less is a mark of a program that draws, and nothing to be cut

struct Ring {
    Contour contour;
    double area = 0;  // signed
};

std::optional<Ring> ring_of(const Subpath& subpath, bool filled) {
    Subpath closing = subpath;
    const Point start = closing.contour.start;
    Point& end = closing.contour.segments.back().to;
    const bool meets = std::abs(end.x - start.x) <= same_place && std::abs(end.y - start.y) <= same_place;
    if (meets)
        end = start;
    else if (!filled)
        return std::nullopt;
    close(closing);
    const double area = signed_area(closing.contour);
    if (!(std::abs(area) >= least_area)) return std::nullopt;
    return Ring{std::move(closing.contour), area};
}

// Largest first; of equal ones the first drawn first.
std::vector<Ring> rings_of(const DrawnShape& shape) {
    std::vector<Ring> rings;
    for (const Subpath& subpath : shape.subpaths)
        if (auto ring = ring_of(subpath, shape.filled || subpath.closed)) rings.push_back(std::move(*ring));
    std::stable_sort(rings.begin(), rings.end(),
                     [](const Ring& a, const Ring& b) { return std::abs(a.area) > std::abs(b.area); });
    return rings;
}

// Edges by horizontal strips, for asking which rings enclose a point.
class Strips {
  public:
    explicit Strips(const std::vector<ClipperLib::Path>& polygons) : polygons_(polygons) {
        std::size_t edges = 0;
        ClipperLib::cInt bottom = std::numeric_limits<ClipperLib::cInt>::min();
        for (const auto& polygon : polygons) {
            edges += polygon.size();
            for (const auto& p : polygon) {
                top_ = std::min(top_, p.Y);
                bottom = std::max(bottom, p.Y);
            }
        }
        strips_.resize(static_cast<std::size_t>(std::sqrt(static_cast<double>(edges))) + 1);
        height_ = (bottom - top_) / static_cast<ClipperLib::cInt>(strips_.size()) + 1;
        for (std::uint32_t ring = 0; ring < polygons.size(); ++ring)
            for (std::uint32_t i = 0; i < polygons[ring].size(); ++i) {
                const auto& a = polygons[ring][i];
                const auto& b = next(ring, i);
                for (std::size_t s = strip(std::min(a.Y, b.Y)); s <= strip(std::max(a.Y, b.Y)); ++s)
                    strips_[s].push_back({ring, i});
            }
    }

    // In the order of their numbers. Rings do not cross, but one may touch another in a point: of three
    // places on the ring two speak for it.
    [[nodiscard]] std::vector<std::size_t> enclosing(std::size_t ring) const {
        const std::size_t count = polygons_[ring].size();
        const auto first = around(ring, 0), second = around(ring, count / 3);
        return first == second || first == around(ring, 2 * count / 3) ? first : second;
    }

  private:
    // The rings about the middle of an edge.
    [[nodiscard]] std::vector<std::size_t> around(std::size_t ring, std::size_t edge) const {
        const auto& start = polygons_[ring][edge];
        const auto& end = next(ring, edge);
        const ClipperLib::IntPoint p{(start.X + end.X) / 2, (start.Y + end.Y) / 2};
        std::vector<std::size_t> passed;
        for (const auto& [other, i] : strips_[strip(p.Y)]) {
            if (other == ring) continue;
            const auto& a = polygons_[other][i];
            const auto& b = next(other, i);
            if ((a.Y <= p.Y) == (b.Y <= p.Y)) continue;
            const auto turn = (b.X - a.X) * (p.Y - a.Y) - (b.Y - a.Y) * (p.X - a.X);
            if ((turn > 0) == (a.Y < b.Y)) continue;  // passes to the right of p
            passed.push_back(other);
        }
        std::sort(passed.begin(), passed.end());
        std::vector<std::size_t> odd;
        for (std::size_t i = 0; i < passed.size();) {
            std::size_t j = i;
            while (j < passed.size() && passed[j] == passed[i]) ++j;
            if ((j - i) % 2 == 1) odd.push_back(passed[i]);
            i = j;
        }
        return odd;
    }

    [[nodiscard]] const ClipperLib::IntPoint& next(std::size_t ring, std::size_t i) const {
        return polygons_[ring][i + 1 == polygons_[ring].size() ? 0 : i + 1];
    }
    [[nodiscard]] std::size_t strip(ClipperLib::cInt y) const {
        return static_cast<std::size_t>((y - top_) / height_);
    }
    struct Place {
        std::uint32_t ring;
        std::uint32_t edge;
    };
    const std::vector<ClipperLib::Path>& polygons_;
    ClipperLib::cInt top_ = std::numeric_limits<ClipperLib::cInt>::max();
    ClipperLib::cInt height_ = 1;
    std::vector<std::vector<Place>> strips_;
};

// Of a ring within the largest: whether it is where the material of the blank ends.
bool is_hole(const std::vector<Ring>& rings, const std::vector<std::size_t>& around, std::size_t ring,
             bool by_parity) {
    if (around.empty() || around[0] != 0) return false;
    int winding = 0;
    const auto step_into = [&](std::size_t i) {
        winding = by_parity ? 1 - winding : winding + (rings[i].area > 0 ? 1 : -1);
    };
    for (const std::size_t i : around) {  // the larger, the further out
        step_into(i);
        if (winding == 0) return false;  // in a hole: no part of the blank
    }
    step_into(ring);
    return winding == 0;
}

}  // namespace

double largest_area(const DrawnShape& shape) {
    double largest = 0;
    for (const Subpath& subpath : shape.subpaths)
        if (const auto ring = ring_of(subpath, shape.filled || subpath.closed))
            largest = std::max(largest, std::abs(ring->area));
    return largest;
}

std::variant<Path, std::string> blank_outline(const DrawnShape& shape) {
    const std::vector<Ring> rings = rings_of(shape);
    if (rings.empty()) return "holds no closed outline";
    const Box box = bounds({{rings[0].contour}});
    const BlankSize size{box.width(), box.height()};
    for (const double side : {size.width_mm, size.height_mm})
        if (!(side >= least_blank_mm && side <= most_blank_mm))
            return "has an outline of " + both_units(size) +
                   "; each side must measure from 10 mm to 5000 mm (0.4 in to 196.8 in)";
    Path placed;
    for (const Ring& ring : rings) placed.contours.push_back(ring.contour);
    const Box whole = bounds(placed);
    if (whole.width() > 2 * most_blank_mm || whole.height() > 2 * most_blank_mm)
        return std::string("has contours too far from one another");
    placed = transformed(placed, 1, {-whole.left, -whole.top});
    std::vector<ClipperLib::Path> polygons;
    std::size_t points = 0;
    for (const Contour& contour : placed.contours) {
        polygons.push_back(lattice_polygon(contour, tolerance));
        points += polygons.back().size();
        if (points > 2'000'000) return std::string("has an outline too intricate to be told from its holes");
    }
    switch (crossing_of(polygons)) {
        case Crossing::some:
            return std::string("has an outline that crosses itself or one of its holes");
        case Crossing::too_intricate:
            return std::string("has an outline too intricate to be told from its holes");
        case Crossing::none:
            break;
    }
    Path outline;
    const auto add = [&](const Ring& ring, bool outer) {
        outline.contours.push_back((ring.area > 0) == outer ? ring.contour : reversed(ring.contour));
    };
    add(rings[0], true);
    if (rings.size() > 1) {
        const Strips strips(polygons);
        const bool by_parity = shape.evenodd || !shape.filled;
        for (std::size_t i = 1; i < rings.size(); ++i)
            if (is_hole(rings, strips.enclosing(i), i, by_parity)) add(rings[i], false);
    }
    return transformed(outline, 1, {-box.left, -box.top});
}

}  // namespace lode
