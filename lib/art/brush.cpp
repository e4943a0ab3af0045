// The stroke is drawn twice by half, the second half turned about the stroke's middle: first an edge, from
// the stroke's start to its end, then the bristles round the end. In a half's own frame u runs along the
// stroke from 0 to its length, and v across it, to the right of who walks along; the edge lies at negative v.
//
// An edge is a height over the middle line: smooth value noise of two octaves between the two radii, over a
// slight taper, and with steps where outer bristles leave the surface early. An end is a row of bristles side
// by side, each with a level of its own along the stroke: notches run along the stroke as a brush leaves
// them, not towards a centre. Both are graphs, over u and over v, so the outline cannot cross itself.

#include "art/brush.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <vector>

#include "art/cubic.hpp"
#include "random/random.hpp"

namespace lode {

namespace {

double mix(double a, double b, double t) {
    return a + t * (b - a);
}

class Chance {
  public:
    explicit Chance(std::uint64_t seed) : random_(seed) {}
    double between(double least, double most) {
        constexpr std::uint32_t parts = 1u << 24;
        return least + (most - least) * random_.below(parts) / parts;
    }

  private:
    Random random_;
};

// Value noise: random values from -1 to 1 at whole numbers, an S-curve from each to the next.
class Noise {
  public:
    Noise(Chance& chance, double reach) {
        for (double i = 0; i < reach + 2; ++i) values_.push_back(chance.between(-1, 1));
    }
    [[nodiscard]] double at(double x) const {
        const auto i = static_cast<std::size_t>(x);
        const double t = x - static_cast<double>(i);
        return mix(values_[i], values_[i + 1], t * t * (3 - 2 * t));
    }

  private:
    std::vector<double> values_;
};

// A point of the outline and where the outline is heading there.
struct Knot {
    Point at;
    Point heading;  // of length 1
};

struct Stroke {
    double length;
    double radius;
    double least_radius;
    double least_feature;
    double liveliness;  // 0: a capsule half way between the radii

    [[nodiscard]] double middle() const { return (radius + least_radius) / 2; }
    [[nodiscard]] double room() const { return radius - least_radius; }
    // Where room is plenty, edges use the outer part of it: deep waves along an edge look like a plank.
    [[nodiscard]] double edge_room() const { return std::min(room(), 0.2 * radius); }
};

// Clockwise to the eye about the point that `out` leads away from.
Point heading_round(Point out) {
    return (1 / length(out)) * Point{-out.y, out.x};
}

double height_on(double radius, double v) {
    return std::sqrt(std::max(0.0, radius * radius - v * v));
}

std::vector<Knot> edge(const Stroke& stroke, Chance& chance) {
    // So far apart that no wave is finer than film bears, and never so many that a long word weighs down a
    // file.
    const double spacing = std::max({0.5 * stroke.radius, 2.2 * stroke.least_feature, stroke.length / 40});
    // A stroke too short for that has one knot in its middle.
    const auto parts = static_cast<std::size_t>(stroke.length / spacing + 0.5);
    const double slow_wave = 4 * stroke.radius;
    const double quick_wave = 1.1 * stroke.radius;
    const Noise slow(chance, stroke.length / slow_wave + 1);
    const Noise quick(chance, stroke.length / quick_wave + 1);
    const double slow_phase = chance.between(0, 1);
    const double quick_phase = chance.between(0, 1);
    const double taper = chance.between(-0.25, 0.15);
    const double swell = chance.between(-0.1, 0.3);
    // An outer bristle that runs dry before the others do.
    const double dry_from = stroke.length - chance.between(0.5, 3) * stroke.radius;
    const double dry_by = chance.between(0.1, 0.45);

    std::vector<double> heights;
    std::vector<double> places;
    for (std::size_t i = 0; i <= parts; ++i) {
        const double share = parts == 0 ? 0.5 : static_cast<double>(i) / static_cast<double>(parts);
        // Uneven spacing: a brush has no beat.
        const double shift = i == 0 || i == parts ? 0 : chance.between(-0.25, 0.25);
        const double u = stroke.length * (parts == 0 ? share : share + shift / static_cast<double>(parts));
        double height = 0.55 + 0.45 * slow.at(u / slow_wave + slow_phase) +
                        0.28 * quick.at(u / quick_wave + quick_phase) + taper * (2 * share - 1) +
                        swell * (4 * share * (1 - share) - 0.5);
        if (u > dry_from) height -= dry_by;
        height = stroke.radius - stroke.edge_room() * (1 - std::clamp(height, 0.04, 0.96));
        places.push_back(u);
        heights.push_back(mix(stroke.middle(), height, stroke.liveliness));
    }
    std::vector<Knot> knots;
    for (std::size_t i = 0; i <= parts; ++i) {
        Point heading{1, 0};
        // Catmull and Rom's tangent, level where the neighbours are both above or both below.
        if (i > 0 && i < parts) {
            const double before = heights[i] - heights[i - 1];
            const double after = heights[i + 1] - heights[i];
            if (before * after > 0) {
                heading = {places[i + 1] - places[i - 1], -(heights[i + 1] - heights[i - 1])};
                heading = (1 / length(heading)) * heading;
            }
        }
        knots.push_back({{places[i], -heights[i]}, heading});
    }
    return knots;
}

// How the bristles of an end lie side by side: how broad each bundle is, and whether a notch parts it from
// the next or only a step.
struct Bundle {
    double breadth;
    bool notch_after;
};

// Fills `width` with as many bundles as fit, or some fewer. A step takes one turn of the outline, a notch
// two: down, and up again.
std::vector<Bundle> bundles(double width, double turn, double fraying, Chance& chance) {
    std::vector<Bundle> found{{chance.between(0.2, 1), false}};
    double left = width - turn * chance.between(0.5, 1.2) - width * 0.6 * (1 - fraying);
    for (bool notch = chance.between(0, 1) < fraying;; notch = chance.between(0, 1) < 0.6 * fraying) {
        const double taken = (notch ? 2 : 1) * turn;
        if (taken > left) break;
        left -= taken;
        width -= taken;
        found.back().notch_after = notch;
        found.push_back({chance.between(0.2, 1), false});
    }
    // Which of them are the broad ones is chance, too.
    double sum = 0;
    for (const Bundle& bundle : found) sum += bundle.breadth;
    for (Bundle& bundle : found) bundle.breadth *= width / sum;
    return found;
}

// The front of bristles, from the edge's end (v negative) to the start of the other half's edge.
std::vector<Knot> front(const Stroke& stroke, double fraying, Chance& chance) {
    // On broad bands bristles are broader than they need be: a stroke looks alike at every scale.
    const double feature = std::max(stroke.least_feature, 0.18 * stroke.radius);
    const double reach = 0.76 * stroke.least_radius;
    const double turn = 1.2 * feature;

    const auto least = [&](double v) { return height_on(stroke.least_radius, v); };
    const auto most = [&](double v) { return height_on(stroke.radius, v); };
    const auto placed = [&](double v, double x) {
        const double margin = 0.06 * (most(v) - least(v));
        const double inside = std::clamp(x, least(v) + margin, most(v) - margin);
        return Point{stroke.length + mix(height_on(stroke.middle(), v), inside, stroke.liveliness), v};
    };
    const double slant = mix(0.12, 0.3, fraying) * chance.between(-1, 1);
    const double flat = stroke.least_radius + stroke.room() * mix(0.55, 0.7, fraying);
    const double deepest = 1.5 * feature;  // deeper, and the curves leave thin places between them

    std::vector<Point> points;
    double v = -reach;
    // Bundles lie in and out by turns, so that a step shows.
    double side = chance.between(0, 1) < 0.5 ? -1 : 1;
    for (const Bundle& bundle : bundles(2 * reach, turn, fraying, chance)) {
        const double lean = chance.between(-0.15, 0.15) * bundle.breadth;
        const double off = (side > 0 ? 0.25 : -mix(0.15, 0.6, fraying)) * chance.between(0.6, 1.2);
        const double tip = flat + slant * (v + bundle.breadth / 2) + off * std::min(stroke.room(), deepest);
        points.push_back(placed(v, tip - lean));
        if (bundle.breadth > 0.2 * feature) points.push_back(placed(v + bundle.breadth, tip + lean));
        v += bundle.breadth + turn;
        side = -side;
        if (!bundle.notch_after) continue;
        points.push_back(
            placed(v, points.back().x - stroke.length - fraying * chance.between(0.7, 1.5) * stroke.room()));
        v += turn;
        side = chance.between(0, 1) < 0.5 ? -1 : 1;
    }
    for (std::size_t i = 1; i < points.size(); ++i)
        points[i].x = std::max(points[i].x, points[i - 1].x - deepest);
    for (std::size_t i = points.size() - 1; i-- > 0;)
        points[i].x = std::max(points[i].x, points[i + 1].x - deepest);
    std::vector<Knot> knots;
    for (std::size_t i = 0; i < points.size(); ++i) {
        // Along the bristle's tip, level in a notch, and round towards the edges at the outermost.
        const Point before = i == 0 ? points[i] : points[i - 1];
        const Point after = i + 1 == points.size() ? points[i] : points[i + 1];
        const double fall_before = points[i].x - before.x;
        const double fall_after = after.x - points[i].x;
        const Point round = heading_round(points[i] - Point{stroke.length, 0});
        Point heading{0, 1};
        if (i == 0 || i + 1 == points.size())
            heading = round + heading;
        else if (fall_before * fall_after > 0)
            heading = after - before;
        heading = (stroke.liveliness / length(heading)) * heading + (1 - stroke.liveliness) * round;
        knots.push_back({points[i], (1 / length(heading)) * heading});
    }
    return knots;
}

void shoulder(const Stroke& stroke, double side, std::vector<Knot>& knots, Chance& chance) {
    // 22.6 degrees from across: 5-12-13.
    const Point out{5.0 / 13, side * 12.0 / 13};
    const double radius = mix(
        stroke.middle(), stroke.radius - stroke.edge_room() * chance.between(0.15, 0.65), stroke.liveliness);
    knots.push_back({Point{stroke.length, 0} + radius * out, {-out.y, out.x}});
}

void append_curve(Contour& contour, const Knot& from, const Knot& to, double least_feature) {
    const Point chord = to.at - from.at;
    const auto handle = [&](Point heading) {
        const double ahead = dot(chord, heading);
        const double aside = std::abs(cross(chord, heading));
        // A cubic starts with a curvature of 2/3 of the other control's distance aside over the handle
        // squared: this keeps the radius at half a feature or more.
        const double round = std::sqrt(least_feature * aside / 3);
        return std::clamp(round, 0.36 * ahead, 0.8 * ahead);
    };
    contour.segments.push_back(Segment::cubic(from.at + handle(from.heading) * from.heading,
                                              to.at - handle(to.heading) * to.heading, to.at));
}

Contour drawn(const Stroke& stroke, std::uint64_t seed) {
    Chance chance(seed);
    std::array<std::vector<Knot>, 2> edges;
    for (auto& knots : edges) knots = edge(stroke, chance);
    std::vector<Knot> all;
    for (const std::size_t half : {0u, 1u}) {
        std::vector<Knot> knots = edges[half];
        shoulder(stroke, -1, knots, chance);
        for (const Knot& knot : front(stroke, half == 0 ? 1 : 0.4, chance)) knots.push_back(knot);
        shoulder(stroke, 1, knots, chance);
        for (Knot knot : knots) {
            if (half == 1) knot = {{stroke.length - knot.at.x, -knot.at.y}, -1 * knot.heading};
            all.push_back(knot);
        }
    }
    Contour contour{all.front().at, {}};
    for (std::size_t i = 0; i < all.size(); ++i)
        append_curve(contour, all[i], all[(i + 1) % all.size()], stroke.least_feature);
    return contour;
}

bool between_radii(const Contour& contour, const Stroke& stroke) {
    constexpr int looks = 24;
    // What may lie beyond a look's neighbours is far less than this.
    const double slack = 0.004 * stroke.room();
    Point from = contour.start;
    for (const Segment& s : contour.segments) {
        for (int i = 0; i < looks; ++i) {
            const double t = static_cast<double>(i) / looks;
            const double w = 1 - t;
            const Point p =
                w * w * w * from + 3 * w * w * t * s.control1 + 3 * w * t * t * s.control2 + t * t * t * s.to;
            const double off = length(p - Point{std::clamp(p.x, 0.0, stroke.length), 0});
            if (off < stroke.least_radius + slack || off > stroke.radius - slack) return false;
        }
        from = s.to;
    }
    return true;
}

}  // namespace

Path brush_stroke(Point first, Point last, double radius, double least_radius, std::uint64_t seed,
                  double least_feature) {
    if (!(least_radius > 0) || !(radius > least_radius) || !(least_feature > 0))
        throw std::invalid_argument(
            "a brush stroke needs a radius, a smaller one above 0, and a least feature");
    const Point way = last - first;
    const double reach = length(way);
    const Point along = reach > 0 ? (1 / reach) * way : Point{1, 0};

    // Deeper notches would have to be broader, too, to leave no thin places.
    least_radius = std::max(least_radius, 0.55 * radius);

    // Curves swing beyond their knots here and there: a calmer stroke of the same seed stays inside, and at
    // last one that is hardly more than a capsule.
    Contour contour = capsule({0, 0}, {reach, 0}, (radius + least_radius) / 2).contours.front();
    for (const double liveliness : {1.0, 0.85, 0.7, 0.5, 0.3, 0.15}) {
        const Stroke stroke{reach, radius, least_radius, least_feature, liveliness};
        const Contour lively = drawn(stroke, seed);
        if (!between_radii(lively, stroke)) continue;
        contour = lively;
        break;
    }
    const auto set = [&](Point p) { return first + p.x * along + p.y * Point{-along.y, along.x}; };
    contour.start = set(contour.start);
    for (Segment& s : contour.segments) s = {s.curved, set(s.control1), set(s.control2), set(s.to)};
    return {{std::move(contour)}};
}

std::uint64_t seed_of(std::uint64_t recipe_seed, std::size_t word) {
    // One step of SplitMix64: Steele, Lea and Flood, "Fast Splittable Pseudorandom Number Generators", OOPSLA
    // 2014, figure 17.
    std::uint64_t z = recipe_seed + (static_cast<std::uint64_t>(word) + 1) * 0x9e3779b97f4a7c15u;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
    return z ^ (z >> 31);
}

}  // namespace lode
