#include "art/clearance.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace lode {

namespace {

// The two errors there are, of the band's edge as a polygon and of the search along the letters, add up to
// less than the 0.01 mm promised.
constexpr double edge_error = 0.002;
constexpr double search_error = 0.005;

Point halfway(Point a, Point b) {
    return {(a.x + b.x) / 2, (a.y + b.y) / 2};
}
double apart(Point a, Point b) {
    return std::sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
}

struct Curve {
    Point from;
    Point control1;
    Point control2;
    Point to;
};

// A straight line as a curve that runs evenly along it.
Curve curve_of(Point from, const Segment& s) {
    if (s.curved) return {from, s.control1, s.control2, s.to};
    const auto on = [&](double t) {
        return Point{from.x + t * (s.to.x - from.x), from.y + t * (s.to.y - from.y)};
    };
    return {from, on(1.0 / 3), on(2.0 / 3), s.to};
}

// De Casteljau's halving.
std::pair<Curve, Curve> halves(const Curve& c) {
    const Point a = halfway(c.from, c.control1);
    const Point b = halfway(c.control1, c.control2);
    const Point d = halfway(c.control2, c.to);
    const Point ab = halfway(a, b);
    const Point bd = halfway(b, d);
    const Point middle = halfway(ab, bd);
    return {{c.from, a, ab, middle}, {middle, bd, d, c.to}};
}

struct Edge {
    Point from;
    Point to;
};

double squared_distance(Point p, const Edge& e) {
    const double along_x = e.to.x - e.from.x;
    const double along_y = e.to.y - e.from.y;
    const double square = along_x * along_x + along_y * along_y;
    const double along = (p.x - e.from.x) * along_x + (p.y - e.from.y) * along_y;
    const double t = square > 0 ? std::clamp(along / square, 0.0, 1.0) : 0;
    const double x = p.x - e.from.x - t * along_x;
    const double y = p.y - e.from.y - t * along_y;
    return x * x + y * y;
}

// The band's edge as a polygon.
class Polygon {
  public:
    explicit Polygon(const Path& path) {
        for (const Contour& contour : path.contours) {
            Point from = contour.start;
            for (const Segment& s : contour.segments) {
                if (s.curved)
                    flatten({from, s.control1, s.control2, s.to});
                else
                    edges_.push_back({from, s.to});
                from = s.to;
            }
        }
    }

    // Positive inside.
    [[nodiscard]] double depth(Point p) const {
        double least = 1e300;
        int winding = 0;
        for (const Edge& e : edges_) {
            const double below = std::max(e.from.y, e.to.y) - p.y;
            const double above = p.y - std::min(e.from.y, e.to.y);
            const double aside = std::max(std::min(e.from.x, e.to.x) - p.x, p.x - std::max(e.from.x, e.to.x));
            const double away = std::max({-below, -above, aside, 0.0});
            if (away * away < least) least = std::min(least, squared_distance(p, e));
            const bool crosses = (e.from.y <= p.y) != (e.to.y <= p.y);
            if (!crosses) continue;
            const double turn =
                (e.to.x - e.from.x) * (p.y - e.from.y) - (e.to.y - e.from.y) * (p.x - e.from.x);
            if (e.to.y > e.from.y && turn > 0) ++winding;
            if (e.to.y < e.from.y && turn < 0) --winding;
        }
        return winding != 0 ? std::sqrt(least) : -std::sqrt(least);
    }

  private:
    // A cubic is no further from its chord than its controls.
    void flatten(const Curve& c) {
        const Edge chord{c.from, c.to};
        const double off = std::max(squared_distance(c.control1, chord), squared_distance(c.control2, chord));
        if (off <= edge_error * edge_error) {
            edges_.push_back(chord);
            return;
        }
        const auto [first, second] = halves(c);
        flatten(first);
        flatten(second);
    }

    std::vector<Edge> edges_;
};

// Depth changes by no more than the way that was gone: a curve whose middle lies deep enough for its length
// cannot hold the least, and is looked at no further.
void search(const Polygon& band, const Curve& c, double& least) {
    const auto [first, second] = halves(c);
    const Point middle = first.to;
    const double depth = band.depth(middle);
    least = std::min(least, depth);
    const double reach = std::max(
        {apart(middle, c.from), apart(middle, c.control1), apart(middle, c.control2), apart(middle, c.to)});
    if (depth - reach >= least - search_error) return;
    search(band, first, least);
    search(band, second, least);
}

}  // namespace

double clearance(const Path& band, const Path& letters) {
    if (band.empty() || letters.empty())
        throw std::invalid_argument("clearance is between a band and letters: one of them is empty");
    const Polygon polygon(band);
    double least = 1e300;
    // All ends first: a good guess spares most of the search.
    for (const Contour& contour : letters.contours) {
        least = std::min(least, polygon.depth(contour.start));
        for (const Segment& s : contour.segments) least = std::min(least, polygon.depth(s.to));
    }
    for (const Contour& contour : letters.contours) {
        Point from = contour.start;
        for (const Segment& s : contour.segments) {
            search(polygon, curve_of(from, s), least);
            from = s.to;
        }
    }
    return least;
}

}  // namespace lode
