#include "art/band_outline.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>

#include "art/arc.hpp"
#include "art/cubic.hpp"
#include "art/waists.hpp"

namespace lode {

namespace {

using ClipperLib::cInt;
using ClipperLib::IntPoint;

constexpr cInt unit = lattice_unit;
// Corners of a circle. Divisible by 8, so that a corner lies where a side of a band begins, whatever its
// direction.
constexpr int corners = 256;

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

// A line as a point and a direction of length 1.
struct Line {
    Point at;
    Point along;
};
std::optional<Line> line_of(const Source& source) {
    if (source.tangent) {
        const Point way = source.tangent->to - source.tangent->from;
        return Line{source.tangent->from, (1 / length(way)) * way};
    }
    if (!source.side) return std::nullopt;
    constexpr std::array<Point, 4> ways{{{1, 0}, {1, 1}, {0, 1}, {1, -1}}};
    const Point way = ways[static_cast<std::size_t>(source.side->along)];
    const auto at = static_cast<double>(source.side->across);
    const bool by_x = source.side->along == 2 || source.side->along == 3;
    return Line{by_x ? Point{at, 0} : Point{0, at}, (1 / length(way)) * way};
}
void append_round(Contour& contour, Point centre, Point to, bool clockwise) {
    if (clockwise) {
        append_arc(contour, centre, to);
        return;
    }
    Contour back{to, {}};
    append_arc(back, centre, contour.segments.empty() ? contour.start : contour.segments.back().to);
    const Contour turned = reversed(back);
    contour.segments.insert(contour.segments.end(), turned.segments.begin(), turned.segments.end());
}

IntPoint rounded(Point p) {
    return {std::llround(p.x), std::llround(p.y)};
}

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

BandOutline::Step BandOutline::step_key(Cell a, Cell b, Cell beside) {
    if (std::pair(b.row, b.column) < std::pair(a.row, a.column)) std::swap(a, b);
    return {a.row, a.column, b.row, b.column, beside.row, beside.column};
}

BandOutline::BandOutline(std::span<const Band> bands, double radius, std::span<const Waist> waists)
    : radius_(radius * static_cast<double>(unit)), circle_(circle_corners(radius)) {
    for (const Waist& waist : waists) {
        if (!(waist.radius > 0 && radius + waist.radius < 1))
            throw std::invalid_argument("a waist and a band have radii that add up to less than a cell");
        const bool other = waist.radius != radius;
        if (other && waist_circle_.empty()) {
            waist_radius_ = waist.radius * static_cast<double>(unit);
            waist_circle_ = circle_corners(waist.radius);
        }
        if (other && waist.radius * static_cast<double>(unit) != waist_radius_)
            throw std::invalid_argument("waists have at most two radii");
        waists_[step_key(waist.from, waist.to, waist.beside)] = other;
    }
    for (const Band& band : bands) add(band);
}

void BandOutline::append_side(ClipperLib::Path& polygon, Cell from, Cell to, int normal) {
    if (waists_.empty()) return;
    const Cell by{sign(to.row - from.row), sign(to.column - from.column)};
    if (by.row == 0 || by.column == 0) return;
    const auto corner = [](const std::vector<IntPoint>& circle, int i) {
        return circle[static_cast<std::size_t>((i + 2 * corners) % corners)];
    };
    const auto around = [](Cell cell, IntPoint p) {
        const IntPoint centre = lattice(cell);
        return IntPoint(centre.X + p.X, centre.Y + p.Y);
    };
    const IntPoint out = corner(circle_, normal);
    const Cell beside_by{(by.row + (out.Y > 0 ? 1 : -1)) / 2, (by.column + (out.X > 0 ? 1 : -1)) / 2};
    const Point along = std::sqrt(0.5) * Point{static_cast<double>(by.column), static_cast<double>(by.row)};
    const Point aside{along.y, -along.x};  // outlines run clockwise: what lies beside is to the left
    for (Cell at = from; at != to; at = {at.row + by.row, at.column + by.column}) {
        const Cell next{at.row + by.row, at.column + by.column};
        const Cell beside{at.row + beside_by.row, at.column + beside_by.column};
        const auto waist = waists_.find(step_key(at, next, beside));
        if (waist == waists_.end()) continue;
        const double beside_radius = waist->second ? waist_radius_ : radius_;
        const double scale = static_cast<double>(unit);
        if (radius_ + beside_radius <= std::sqrt(0.5) * scale) continue;
        const auto& found = waist_side(radius_ / scale, beside_radius / scale).corners;
        std::array<Point, 4> exact;
        for (std::size_t i = 0; i < 4; ++i)
            exact[i] = real(lattice(at)) + scale * (found[i].x * along + found[i].y * aside);
        // The circles' corners in between: as many on all four arcs, since they all turn by the same angle.
        const Point first = exact[0] - real(lattice(at));
        int turned = 0;
        while (turned < corners / 8 && cross(real(corner(circle_, normal + turned + 1)), first) > 0) ++turned;
        const auto& wide = waist->second ? waist_circle_ : circle_;
        for (int i = 0; i <= turned; ++i) polygon.push_back(around(at, corner(circle_, normal + i)));
        polygon.push_back(rounded(exact[0]));
        polygon.push_back(rounded(exact[1]));
        for (int i = turned; i >= -turned; --i)
            polygon.push_back(around(beside, corner(wide, normal + corners / 2 + i)));
        polygon.push_back(rounded(exact[2]));
        polygon.push_back(rounded(exact[3]));
        for (int i = -turned; i <= 0; ++i) polygon.push_back(around(next, corner(circle_, normal + i)));
        tangents_[{beside.row, beside.column}].push_back({exact[0], exact[1]});
        tangents_[{beside.row, beside.column}].push_back({exact[2], exact[3]});
        for (const Cell cell : {at, next}) centres_.insert({cell.row, cell.column});
        (waist->second ? waist_centres_ : centres_).insert({beside.row, beside.column});
    }
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
        const int along = eighths(by) % 4;
        cap(band.last, turn - corners / 4, turn + corners / 4);
        sides_.insert({along, across(along, polygon.front())});
        sides_.insert({along, across(along, polygon.back())});
        append_side(polygon, band.last, band.first, turn + corners / 4);
        cap(band.first, turn + corners / 4, turn + 3 * corners / 4);
        append_side(polygon, band.first, band.last, turn - corners / 4);
    } else {
        cap(band.first, 0, corners - 1);
    }
    polygons_.push_back(std::move(polygon));
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

std::optional<BandOutline::Circle> BandOutline::circle_of(IntPoint from, IntPoint to) const {
    const Point middle = 0.5 * (real(from) + real(to));
    double least = 1e300;
    std::optional<Circle> best;
    const auto cell_of = [](double x) { return static_cast<int>(std::floor(x / static_cast<double>(unit))); };
    const auto look = [&](const std::set<std::pair<int, int>>& centres, bool of_waist) {
        const double radius = of_waist ? waist_radius_ : radius_;
        // A chord of a circle with n corners dips below it by less than 5 r / n^2.
        least = std::min(least, 5 * radius / (corners * corners) + slack);
        for (int row = cell_of(middle.y - radius); row <= cell_of(middle.y + radius); ++row)
            for (int column = cell_of(middle.x - radius); column <= cell_of(middle.x + radius); ++column) {
                if (!centres.contains({row, column})) continue;
                const Point centre = real(lattice({row, column}));
                double off = 0;
                for (const Point p : {real(from), middle, real(to)})
                    off = std::max(off, std::abs(length(p - centre) - radius));
                if (off < least) {
                    least = off;
                    best = Circle{{row, column}, of_waist, cross(real(from) - centre, real(to) - centre) > 0};
                }
            }
    };
    look(centres_, false);
    if (!waist_centres_.empty()) look(waist_centres_, true);
    return best;
}

std::optional<BandOutline::Tangent> BandOutline::tangent_of(IntPoint from, IntPoint to) const {
    const Point middle = 0.5 * (real(from) + real(to));
    const auto cell_of = [](double x) { return static_cast<int>(std::floor(x / static_cast<double>(unit))); };
    // A tangent lies within a cell of the middle of the one beside it.
    const int row = cell_of(middle.y), column = cell_of(middle.x);
    for (int r = row - 1; r <= row + 1; ++r)
        for (int c = column - 1; c <= column + 1; ++c) {
            const auto here = tangents_.find({r, c});
            if (here == tangents_.end()) continue;
            for (const Tangent& tangent : here->second) {
                const Point way = tangent.to - tangent.from;
                const double size = length(way);
                const auto off = [&](Point p) {
                    const double along = dot(p - tangent.from, way) / size;
                    return std::max({std::abs(cross(way, p - tangent.from)) / size, -along, along - size});
                };
                if (off(real(from)) <= slack && off(real(to)) <= slack) return tangent;
            }
        }
    return std::nullopt;
}

BandOutline::Source BandOutline::source_of(IntPoint from, IntPoint to) const {
    if (const auto side = side_of(from, to)) return {side, {}, {}};
    if (const auto circle = circle_of(from, to)) return {{}, circle, {}};
    return {{}, {}, tangent_of(from, to)};
}

// The points where the two true curves meet.
std::vector<Point> BandOutline::crossings(const Source& a, const Source& b) const {
    const auto one = line_of(a), other = line_of(b);
    if (one && other) {
        const double turn = cross(one->along, other->along);
        if (turn == 0) return {};
        return {one->at + (cross(other->at - one->at, other->along) / turn) * one->along};
    }
    if (a.circle && b.circle) {
        const Point p = real(lattice(a.circle->cell));
        const Point q = real(lattice(b.circle->cell));
        const double r = radius_of(*a.circle), s = radius_of(*b.circle);
        const Point apart = q - p;
        const double distance = length(apart);
        if (distance == 0 || distance > r + s || distance < std::abs(r - s)) return {};
        const double along = (distance * distance + r * r - s * s) / (2 * distance);
        const double rise = std::sqrt(std::max(0.0, r * r - along * along)) / distance;
        const Point middle = p + (along / distance) * apart;
        return {middle + rise * Point{-apart.y, apart.x}, middle - rise * Point{-apart.y, apart.x}};
    }
    const auto& line = one ? one : other;
    const auto& round = one ? b.circle : a.circle;
    if (!line || !round) return {};
    const Point centre = real(lattice(round->cell));
    const double radius = radius_of(*round);
    const Point foot = line->at + dot(centre - line->at, line->along) * line->along;
    const double distance = length(foot - centre);
    // A band's own side touches its end circle, and a waist's straight part both of its circles: there is one
    // point, whatever rounding makes of it.
    if (distance > radius - slack) return {centre + (radius / distance) * (foot - centre)};
    const double half = std::sqrt(radius * radius - distance * distance);
    return {foot - half * line->along, foot + half * line->along};
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
        const bool known = source.side || source.circle || source.tangent;
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
            append_round(contour, real(lattice(circle->cell)), end, circle->clockwise);
        else
            contour.segments.push_back(Segment::line(end));
    }
    return contour;
}

}  // namespace lode
