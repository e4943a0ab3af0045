// Two steps. First every pair of edges that share a square of a lattice is held against each other with whole
// numbers: most outlines that cross are found out here, and the squares bound the work, which an outline made
// to keep a sweep busy would not. Then the sweep of the clipping library unites what is left by parity; where
// no two contours cross, each comes back with its area.

#include "art/crossings.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include "art/clipping.hpp"
#include "art/flatten.hpp"

namespace lode {

namespace {

using ClipperLib::IntPoint;
using ClipperLib::Paths;

constexpr std::size_t most_edges = 2'000'000;
constexpr std::size_t most_entries = 20'000'000;
constexpr std::size_t most_pairs = 100'000'000;
constexpr double most_sweep_steps = 2e8;

struct Edge {
    IntPoint a;
    IntPoint b;
};

std::vector<Edge> edges_of(const Paths& polygons) {
    std::vector<Edge> edges;
    for (const auto& polygon : polygons)
        for (std::size_t i = 0; i < polygon.size(); ++i)
            edges.push_back({polygon[i], polygon[i + 1 == polygon.size() ? 0 : i + 1]});
    return edges;
}

// Twice the area of a-b-c: exact on a lattice of 5 m.
std::int64_t turn(IntPoint a, IntPoint b, IntPoint c) {
    return (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
}

// Each end of each edge lies on its own side of the other edge, by more than rounding can move it.
bool cross(const Edge& one, const Edge& other) {
    const auto apart = [](const Edge& line, IntPoint p, IntPoint q) {
        const std::int64_t side_p = turn(line.a, line.b, p), side_q = turn(line.a, line.b, q);
        if ((side_p > 0) == (side_q > 0)) return false;
        const double dx = static_cast<double>(line.b.X - line.a.X),
                     dy = static_cast<double>(line.b.Y - line.a.Y);
        const double least = 3 * std::sqrt(dx * dx + dy * dy);
        return std::abs(static_cast<double>(side_p)) > least && std::abs(static_cast<double>(side_q)) > least;
    };
    return apart(one, other.a, other.b) && apart(other, one.a, one.b);
}

// Squares over the edges' box, each with the edges that pass it.
class Squares {
  public:
    explicit Squares(const std::vector<Edge>& edges) : edges_(edges) {
        left_ = top_ = INT64_MAX;
        std::int64_t right = INT64_MIN, bottom = INT64_MIN;
        for (const Edge& e : edges) {
            left_ = std::min({left_, static_cast<std::int64_t>(e.a.X)});
            right = std::max({right, static_cast<std::int64_t>(e.a.X)});
            top_ = std::min({top_, static_cast<std::int64_t>(e.a.Y)});
            bottom = std::max({bottom, static_cast<std::int64_t>(e.a.Y)});
        }
        side_ = static_cast<std::int64_t>(std::sqrt(static_cast<double>(edges.size()))) + 1;
        width_ = (right - left_) / side_ + 1;
        height_ = (bottom - top_) / side_ + 1;
    }

    [[nodiscard]] Crossing look() const {
        std::vector<std::uint32_t> starts(static_cast<std::size_t>(side_ * side_) + 1);
        std::size_t entries = 0;
        for (const Edge& edge : edges_) {
            each_square(edge, [&](std::size_t square) {
                ++starts[square + 1];
                ++entries;
            });
            if (entries > most_entries) return Crossing::too_intricate;
        }
        for (std::size_t i = 1; i < starts.size(); ++i) starts[i] += starts[i - 1];
        std::vector<std::uint32_t> held(entries), filled(starts.begin(), starts.end() - 1);
        for (std::uint32_t i = 0; i < edges_.size(); ++i)
            each_square(edges_[i], [&](std::size_t square) { held[filled[square]++] = i; });
        std::size_t pairs = 0;
        for (std::size_t square = 0; square + 1 < starts.size(); ++square)
            for (std::size_t i = starts[square]; i < starts[square + 1]; ++i) {
                for (std::size_t j = starts[square]; j < i; ++j)
                    if (cross(edges_[held[i]], edges_[held[j]])) return Crossing::some;
                pairs += i - starts[square];
                if (pairs > most_pairs) return Crossing::too_intricate;
            }
        return Crossing::none;
    }

  private:
    template <class Visit>
    void each_square(const Edge& e, Visit visit) const {
        const auto column = [&](std::int64_t x) {
            return std::clamp<std::int64_t>((x - left_) / width_, 0, side_ - 1);
        };
        const auto row = [&](std::int64_t y) {
            return std::clamp<std::int64_t>((y - top_) / height_, 0, side_ - 1);
        };
        const IntPoint upper = e.a.Y < e.b.Y ? e.a : e.b, lower = e.a.Y < e.b.Y ? e.b : e.a;
        const double slope = upper.Y == lower.Y ? 0
                                                : static_cast<double>(lower.X - upper.X) /
                                                      static_cast<double>(lower.Y - upper.Y);
        for (std::int64_t r = row(upper.Y); r <= row(lower.Y); ++r) {
            std::int64_t x0 = std::min(e.a.X, e.b.X), x1 = std::max(e.a.X, e.b.X);
            if (upper.Y != lower.Y) {
                const std::int64_t y0 = std::clamp<std::int64_t>(top_ + r * height_, upper.Y, lower.Y);
                const std::int64_t y1 = std::clamp<std::int64_t>(top_ + (r + 1) * height_, upper.Y, lower.Y);
                const double xa = static_cast<double>(upper.X) + slope * static_cast<double>(y0 - upper.Y);
                const double xb = static_cast<double>(upper.X) + slope * static_cast<double>(y1 - upper.Y);
                x0 = std::max<std::int64_t>(x0, std::llround(std::min(xa, xb)) - 2);
                x1 = std::min<std::int64_t>(x1, std::llround(std::max(xa, xb)) + 2);
            }
            for (std::int64_t c = column(x0); c <= column(x1); ++c)
                visit(static_cast<std::size_t>(r * side_ + c));
        }
    }

    const std::vector<Edge>& edges_;
    std::int64_t left_, top_, width_, height_, side_;
};

// How many edges the beams of a sweep meet, all beams together.
double sweep_steps(const std::vector<Edge>& edges) {
    std::vector<ClipperLib::cInt> beams;
    for (const Edge& e : edges) beams.push_back(e.a.Y);
    std::sort(beams.begin(), beams.end());
    beams.erase(std::unique(beams.begin(), beams.end()), beams.end());
    const auto beam = [&](ClipperLib::cInt y) {
        return std::lower_bound(beams.begin(), beams.end(), y) - beams.begin();
    };
    double steps = 0;
    for (const Edge& e : edges) steps += static_cast<double>(std::abs(beam(e.a.Y) - beam(e.b.Y)));
    return steps;
}

bool comes_back_whole(const Paths& polygons) {
    ClipperLib::Clipper clipper;
    clipper.AddPaths(polygons, ClipperLib::ptSubject, true);
    Paths united;
    need_done(clipper,
              clipper.Execute(ClipperLib::ctUnion, united, ClipperLib::pftEvenOdd, ClipperLib::pftEvenOdd));
    // Overlaps that rounding makes are a thousandth of a millimetre wide.
    double length = 0;
    std::vector<double> before, after;
    for (const auto& polygon : polygons) {
        before.push_back(std::abs(ClipperLib::Area(polygon)));
        for (std::size_t i = 0; i < polygon.size(); ++i) {
            const IntPoint a = polygon[i], b = polygon[i + 1 == polygon.size() ? 0 : i + 1];
            const double dx = static_cast<double>(b.X - a.X), dy = static_cast<double>(b.Y - a.Y);
            length += std::sqrt(dx * dx + dy * dy);
        }
    }
    const double allowed = 0.001 * lattice_per_mm * length;
    for (const auto& polygon : united) after.push_back(std::abs(ClipperLib::Area(polygon)));
    // The same areas in the same order, but for slivers.
    const auto larger = [](double a, double b) { return a > b; };
    std::sort(before.begin(), before.end(), larger);
    std::sort(after.begin(), after.end(), larger);
    double off = 0;
    for (std::size_t i = 0; i < std::max(before.size(), after.size()); ++i)
        off += std::abs((i < before.size() ? before[i] : 0) - (i < after.size() ? after[i] : 0));
    return off <= allowed;
}

}  // namespace

Crossing crossing_of(const Paths& polygons) {
    const std::vector<Edge> edges = edges_of(polygons);
    if (edges.empty()) return Crossing::none;
    if (edges.size() > most_edges) return Crossing::too_intricate;
    if (const Crossing found = Squares(edges).look(); found != Crossing::none) return found;
    if (sweep_steps(edges) > most_sweep_steps) return Crossing::too_intricate;
    return comes_back_whole(polygons) ? Crossing::none : Crossing::some;
}

}  // namespace lode
