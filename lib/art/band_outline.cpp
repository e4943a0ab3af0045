#include "art/band_outline.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "art/arc.hpp"

namespace lode {

namespace {

using ClipperLib::cInt;
using ClipperLib::IntPoint;

constexpr cInt unit = lattice_unit;
// Corners of a circle. Divisible by 8, so that a corner lies where a side of a band begins, whatever its
// direction.
constexpr int corners = 256;

double dot(Point a, Point b) {
    return a.x * b.x + a.y * b.y;
}
double length(Point p) {
    return std::sqrt(dot(p, p));
}
Point operator+(Point a, Point b) {
    return {a.x + b.x, a.y + b.y};
}
Point operator-(Point a, Point b) {
    return {a.x - b.x, a.y - b.y};
}
Point operator*(double by, Point p) {
    return {by * p.x, by * p.y};
}
Point real(IntPoint p) {
    return {static_cast<double>(p.X), static_cast<double>(p.Y)};
}

// The corners of a circle about 0, clockwise to the eye from the right, alike in all eight octants.
std::vector<IntPoint> circle_corners(double radius) {
    std::vector<Point> octant{{1, 0}, {std::sqrt(0.5), std::sqrt(0.5)}};
    while (octant.size() - 1 < corners / 8) {
        std::vector<Point> finer;
        for (std::size_t i = 0; i + 1 < octant.size(); ++i) {
            finer.push_back(octant[i]);
            finer.push_back(half_way(octant[i], octant[i + 1]));
        }
        finer.push_back(octant.back());
        octant = std::move(finer);
    }
    const double scale = radius * static_cast<double>(unit);
    std::vector<IntPoint> circle(corners);
    const int eighth = corners / 8;
    for (int i = 0; i <= eighth; ++i) {
        const auto x = static_cast<cInt>(std::llround(octant[static_cast<std::size_t>(i)].x * scale));
        const auto y = static_cast<cInt>(std::llround(octant[static_cast<std::size_t>(i)].y * scale));
        const auto put = [&](int corner, cInt px, cInt py) {
            circle[static_cast<std::size_t>((corner + corners) % corners)] = {px, py};
        };
        for (int quarter = 0; quarter < 4; ++quarter) {
            // A quarter turn clockwise to the eye takes (x, y) to (-y, x).
            const std::array<cInt, 4> turned_x{x, -y, -x, y};
            const std::array<cInt, 4> mirror_x{y, -x, -y, x};
            const auto q = static_cast<std::size_t>(quarter);
            put(quarter * corners / 4 + i, turned_x[q], turned_x[(q + 3) % 4]);
            put((quarter + 1) * corners / 4 - i, mirror_x[q], mirror_x[(q + 3) % 4]);
        }
    }
    return circle;
}

// The direction's angle in eighths of a turn, clockwise to the eye from the right.
int eighths(Cell by) {
    constexpr std::array<std::array<int, 3>, 3> table{{{5, 6, 7}, {4, 0, 0}, {3, 2, 1}}};
    return table[static_cast<std::size_t>(by.row + 1)][static_cast<std::size_t>(by.column + 1)];
}

int sign(int value) {
    return (value > 0) - (value < 0);
}

using Side = BandOutline::Side;
using Source = BandOutline::Source;

cInt across(int along, IntPoint p) {
    switch (along) {
        case 0:
            return p.Y;
        case 1:
            return p.Y - p.X;
        case 2:
            return p.X;
        default:
            return p.X + p.Y;
    }
}

// A stretch of the outline from one source, starting at a corner of the polygon.
struct Stretch {
    Source source;
    IntPoint start;
    int edges = 1;
};

}  // namespace

IntPoint lattice(Cell cell) {
    return {cell.column * unit + unit / 2, cell.row * unit + unit / 2};
}

Cell step_of(const Band& band) {
    const int rows = band.last.row - band.first.row;
    const int columns = band.last.column - band.first.column;
    if (rows != 0 && columns != 0 && std::abs(rows) != std::abs(columns))
        throw std::invalid_argument("a band runs along one of the eight directions");
    return {sign(rows), sign(columns)};
}

BandOutline::BandOutline(std::span<const Band> bands, double radius)
    : radius_(radius * static_cast<double>(unit)), circle_(circle_corners(radius)) {
    for (const Band& band : bands) add(band);
}

void BandOutline::add(const Band& band) {
    const Cell by = step_of(band);
    const int turn = eighths(by) * corners / 8;
    const bool straight = by.row != 0 || by.column != 0;
    ClipperLib::Path polygon;
    const auto cap = [&](Cell end, int from, int to) {
        const IntPoint centre = lattice(end);
        for (int i = from; i <= to; ++i) {
            const IntPoint corner = circle_[static_cast<std::size_t>((i + 2 * corners) % corners)];
            polygon.emplace_back(centre.X + corner.X, centre.Y + corner.Y);
        }
        centres_.insert({end.row, end.column});
    };
    if (straight) {
        cap(band.last, turn - corners / 4, turn + corners / 4);
        cap(band.first, turn + corners / 4, turn + 3 * corners / 4);
        const int along = eighths(by) % 4;
        sides_.insert({along, across(along, polygon.front())});
        sides_.insert({along, across(along, polygon[corners / 2])});
    } else {
        cap(band.first, 0, corners - 1);
    }
    capsules_.push_back(std::move(polygon));
}

std::optional<BandOutline::Side> BandOutline::side_of(IntPoint from, IntPoint to) const {
    for (int along = 0; along < 4; ++along) {
        const cInt a = across(along, from);
        const cInt b = across(along, to);
        const auto reach = static_cast<cInt>(slack);
        if (std::abs(a - b) > reach) continue;
        const auto side = sides_.lower_bound({along, std::min(a, b) - reach});
        if (side != sides_.end() && side->along == along && side->across <= std::max(a, b) + reach)
            return *side;
    }
    return std::nullopt;
}

std::optional<Cell> BandOutline::circle_of(IntPoint from, IntPoint to) const {
    const Point middle = 0.5 * (real(from) + real(to));
    // A chord of a circle with n corners dips below it by less than 5 r / n^2.
    double least = 5 * radius_ / (corners * corners) + slack;
    std::optional<Cell> best;
    const auto cell_of = [](double x) { return static_cast<int>(std::floor(x / static_cast<double>(unit))); };
    for (int row = cell_of(middle.y - radius_); row <= cell_of(middle.y + radius_); ++row)
        for (int column = cell_of(middle.x - radius_); column <= cell_of(middle.x + radius_); ++column) {
            if (!centres_.contains({row, column})) continue;
            const Point centre = real(lattice({row, column}));
            double off = 0;
            for (const Point p : {real(from), middle, real(to)})
                off = std::max(off, std::abs(length(p - centre) - radius_));
            if (off < least) {
                least = off;
                best = Cell{row, column};
            }
        }
    return best;
}

BandOutline::Source BandOutline::source_of(IntPoint from, IntPoint to) const {
    if (const auto side = side_of(from, to)) return {side, {}};
    return {{}, circle_of(from, to)};
}

// The points where the two true curves meet.
std::vector<Point> BandOutline::crossings(const Source& a, const Source& b) const {
    constexpr std::array<Point, 4> ways{{{1, 0}, {1, 1}, {0, 1}, {1, -1}}};
    const auto point_on = [](const Side& side) {
        const auto at = static_cast<double>(side.across);
        return side.along == 2 || side.along == 3 ? Point{at, 0} : Point{0, at};
    };
    if (a.side && b.side) {
        const Point p = point_on(*a.side);
        const Point v = ways[static_cast<std::size_t>(a.side->along)];
        const Point q = point_on(*b.side);
        const Point w = ways[static_cast<std::size_t>(b.side->along)];
        const double turn = v.x * w.y - v.y * w.x;
        if (turn == 0) return {};
        const double t = ((q.x - p.x) * w.y - (q.y - p.y) * w.x) / turn;
        return {p + t * v};
    }
    if (a.circle && b.circle) {
        const Point p = real(lattice(*a.circle));
        const Point q = real(lattice(*b.circle));
        const Point apart = q - p;
        const double distance = length(apart);
        if (distance == 0 || distance > 2 * radius_) return {};
        const double rise = std::sqrt(radius_ * radius_ - distance * distance / 4) / distance;
        const Point middle = 0.5 * (p + q);
        return {middle + rise * Point{-apart.y, apart.x}, middle - rise * Point{-apart.y, apart.x}};
    }
    const Source& line = a.side ? a : b;
    const Source& round = a.side ? b : a;
    if (!line.side || !round.circle) return {};
    const Point centre = real(lattice(*round.circle));
    const Point way = ways[static_cast<std::size_t>(line.side->along)];
    const Point along = (1 / length(way)) * way;
    const Point start = point_on(*line.side);
    const Point foot = start + dot(centre - start, along) * along;
    const double distance = length(foot - centre);
    // A band's own side touches its end circle: there is one point, whatever rounding makes of it.
    if (distance > radius_ - slack) return {centre + (radius_ / distance) * (foot - centre)};
    const double half = std::sqrt(radius_ * radius_ - distance * distance);
    return {foot - half * along, foot + half * along};
}

Point BandOutline::junction(const Source& a, const Source& b, IntPoint near) const {
    Point best = real(near);
    double least = most_shift;
    for (const Point p : crossings(a, b))
        if (const double off = length(p - real(near)); off < least) {
            least = off;
            best = p;
        }
    return best;
}

Contour BandOutline::curved(const ClipperLib::Path& polygon) const {
    std::vector<Stretch> stretches;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const IntPoint to = polygon[(i + 1) % polygon.size()];
        const Source source = source_of(polygon[i], to);
        const bool known = source.side || source.circle;
        if (stretches.empty() || !known || !(stretches.back().source == source))
            stretches.push_back({source, polygon[i]});
        else
            ++stretches.back().edges;
    }
    // The polygon may have started in the middle of a stretch.
    if (stretches.size() > 1 && stretches.back().source == stretches.front().source) {
        stretches.front().start = stretches.back().start;
        stretches.front().edges += stretches.back().edges;
        stretches.pop_back();
    }
    const std::size_t count = stretches.size();
    const auto start_of = [&](std::size_t i) {
        const Stretch& here = stretches[i % count];
        return count == 1 ? real(here.start)
                          : junction(stretches[(i + count - 1) % count].source, here.source, here.start);
    };
    Contour contour{start_of(0), {}};
    Point from = contour.start;
    for (std::size_t i = 0; i < count; ++i) {
        const Point end = start_of(i + 1);
        // So short a stretch has no curve to speak of, and rounding may have turned it round: as an arc it
        // would go all the way about the circle.
        const bool speck = stretches[i].edges <= 2 && count > 1 && length(end - from) < 100 * slack;
        from = end;
        if (const auto& circle = stretches[i].source.circle; circle && !speck)
            append_arc(contour, real(lattice(*circle)), end);
        else
            contour.segments.push_back(Segment::line(end));
    }
    return contour;
}

}  // namespace lode
