#include "support/shrinking_ball.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <limits>
#include <numeric>
#include <vector>

namespace judge {

namespace {

using Vector = std::complex<double>;

double dot(Vector a, Vector b) {
    return (std::conj(a) * b).real();
}
double cross(Vector a, Vector b) {
    return (std::conj(a) * b).imag();
}

const double stroke_lean = std::sin(15 * std::acos(-1) / 180);
const double gap_lean = std::sin(5 * std::acos(-1) / 180);

struct Curve {
    Vector a, b, c, d;
    // By de Casteljau.
    [[nodiscard]] Vector at(double t) const {
        const auto mix = [t](Vector p, Vector q) { return p + t * (q - p); };
        const Vector ab = mix(a, b), bc = mix(b, c), cd = mix(c, d);
        return mix(mix(ab, bc), mix(bc, cd));
    }
    [[nodiscard]] Vector direction(double t) const {
        const auto mix = [t](Vector p, Vector q) { return p + t * (q - p); };
        Vector along = mix(mix(b - a, c - b), mix(c - b, d - c));
        // Controls that lie on an end leave no direction there.
        if (std::abs(along) < 1e-9 * (std::abs(b - a) + std::abs(c - b) + std::abs(d - c)))
            along = at(std::min(1.0, t + 1e-4)) - at(std::max(0.0, t - 1e-4));
        return along / std::abs(along);
    }
};

struct Point {
    Vector place;
    std::size_t curve;
    double t;
    double step;  // in t, to the next sample
    bool node;    // where two curves meet
};

// The ball from one point, along a normal.
struct Ball {
    std::size_t point;
    Vector normal;
    double radius = std::numeric_limits<double>::infinity();
    std::size_t other = 0;  // the point where it ends
    Vector touched{};
    double lean = 1;
    bool taper = false;
    [[nodiscard]] Vector centre(Vector place) const { return place + radius * normal; }
};

struct Corner {
    Vector place;
    // Balls from the corner outward on both of its edges, nearest first.
    std::vector<std::size_t> before, after;
};

struct Ring {
    std::size_t first, last;  // its points
};

class Outline {
  public:
    Outline(const lode::Path& path, double spacing);
    [[nodiscard]] std::optional<double> narrowest(bool filled) const;

  private:
    [[nodiscard]] int winding(Vector p) const;
    [[nodiscard]] std::vector<Ball> balls(bool filled, std::vector<Corner>& corners) const;
    void shrink(Ball& ball) const;
    void refine(Ball& ball) const;

    std::vector<Curve> curves_;
    std::vector<Point> points_;
    std::vector<Ring> rings_;
    std::vector<int> inside_;  // by point: 1 filled to the left of its direction, -1 to the right, 0 no edge
    double size_ = 0;
};

Outline::Outline(const lode::Path& path, double spacing) {
    const auto vector = [](lode::Point p) { return Vector(p.x, p.y); };
    for (const lode::Contour& contour : path.contours) {
        Ring ring{points_.size(), 0};
        Vector from = vector(contour.start);
        const auto add = [&](Curve curve) {
            const double speed = 3 * std::max({std::abs(curve.b - curve.a), std::abs(curve.c - curve.b),
                                               std::abs(curve.d - curve.c)});
            if (!(speed > 0)) return;
            const int parts = static_cast<int>(std::ceil(speed / spacing)) + 4;
            points_.push_back({curve.a, curves_.size(), 0, 0, true});
            for (int i = 0; i < parts; ++i) {
                const double t = (i + 0.5) / parts;
                points_.push_back({curve.at(t), curves_.size(), t, 1.0 / parts, false});
            }
            curves_.push_back(curve);
        };
        for (const lode::Segment& s : contour.segments) {
            const Vector to = vector(s.to);
            if (s.curved)
                add({from, vector(s.control1), vector(s.control2), to});
            else
                add({from, from + (to - from) / 3.0, from + 2.0 * (to - from) / 3.0, to});
            from = to;
        }
        ring.last = points_.size();
        if (ring.last > ring.first) rings_.push_back(ring);
    }
    for (const Point& p : points_) size_ = std::max(size_, std::abs(p.place - points_[0].place));
    inside_.resize(points_.size());
    for (std::size_t i = points_.size(); i-- > 0;) {
        if (points_[i].node) {  // belongs to the curve that it starts
            inside_[i] = inside_[i + 1];
            continue;
        }
        const Vector left = Vector(0, 1e-6 * size_) * curves_[points_[i].curve].direction(points_[i].t);
        const bool on_left = winding(points_[i].place + left) != 0;
        const bool on_right = winding(points_[i].place - left) != 0;
        inside_[i] = on_left == on_right ? 0 : on_left ? 1 : -1;
    }
}

int Outline::winding(Vector p) const {
    int count = 0;
    for (const Ring& ring : rings_) {
        Vector a = points_[ring.last - 1].place;
        for (std::size_t i = ring.first; i < ring.last; ++i) {
            const Vector b = points_[i].place;
            if (a.imag() <= p.imag() && b.imag() > p.imag() && cross(b - a, p - a) > 0) ++count;
            if (a.imag() > p.imag() && b.imag() <= p.imag() && cross(b - a, p - a) < 0) --count;
            a = b;
        }
    }
    return count;
}

// The end of the shrinking in one pass: the ball that touches p along its normal and passes through q has the
// radius |q - p|^2 / (2 n (q - p)), and the least of these is empty.
void Outline::shrink(Ball& ball) const {
    const Vector p = points_[ball.point].place;
    double bend = 0;
    for (std::size_t i = 0; i < points_.size(); ++i) {
        const double x = points_[i].place.real() - p.real();
        const double y = points_[i].place.imag() - p.imag();
        const double forward = x * ball.normal.real() + y * ball.normal.imag();
        if (forward > bend * (x * x + y * y) && inside_[i] != 0) {
            if (x * x + y * y < 1e-18 * size_ * size_) continue;
            bend = forward / (x * x + y * y);
            ball.other = i;
        }
    }
    if (!(bend > 0)) return;
    ball.radius = 0.5 / bend;
    ball.touched = points_[ball.other].place;
    const Vector centre = ball.centre(p);
    ball.lean = std::abs((p - centre) + (ball.touched - centre)) / (2 * ball.radius);
}

// Between the samples about where it ended, by thirds.
void Outline::refine(Ball& ball) const {
    const Point& other = points_[ball.other];
    if (other.node) return;
    const Vector p = points_[ball.point].place;
    const Curve& curve = curves_[other.curve];
    const auto bend = [&](double t) {
        const Vector d = curve.at(t) - p;
        return dot(d, ball.normal) / std::norm(d);
    };
    double low = std::max(0.0, other.t - other.step);
    double high = std::min(1.0, other.t + other.step);
    for (int i = 0; i < 40; ++i) {
        const double third = (high - low) / 3;
        (bend(low + third) < bend(high - third) ? low : high) +=
            bend(low + third) < bend(high - third) ? third : -third;
    }
    const double t = (low + high) / 2;
    ball.radius = 0.5 / bend(t);
    ball.touched = curve.at(t);
    const Vector centre = ball.centre(p);
    ball.lean = std::abs((p - centre) + (ball.touched - centre)) / (2 * ball.radius);
}

std::vector<Ball> Outline::balls(bool filled, std::vector<Corner>& corners) const {
    std::vector<Ball> all;
    for (const Ring& ring : rings_) {
        const std::size_t begin = all.size();
        // Corners, and where another contour covers what follows or precedes: before which ball, and which
        // ways to go.
        struct Start {
            std::size_t where;
            Vector place;
            bool before, after;
        };
        std::vector<Start> starts;
        bool covered = inside_[ring.last - 1] == 0;
        for (std::size_t i = ring.first; i < ring.last; ++i) {
            const Point& point = points_[i];
            if ((inside_[i] == 0) != covered) {
                covered = inside_[i] == 0;
                starts.push_back({all.size(), point.place, covered, !covered});
            }
            if (covered) continue;
            const double side = (inside_[i] > 0) == filled ? 1 : -1;
            const Vector turned(0, side);
            if (!point.node) {
                all.push_back({i, turned * curves_[point.curve].direction(point.t)});
                continue;
            }
            const std::size_t last = i == ring.first ? ring.last - 1 : i - 1;
            const Vector in = curves_[points_[last].curve].direction(1);
            const Vector out = curves_[point.curve].direction(0);
            const double turn = side * std::atan2(cross(in, out), dot(in, out));
            // Towards the side looked at, the corner is convex where the outline turns to it.
            if (turn > 0 && dot(in, out) < 0) starts.push_back({all.size(), point.place, true, true});
            constexpr double step = 0.01;
            if (turn < -0.01)
                for (int k = 0; k <= std::ceil(-turn / step); ++k)
                    all.push_back(
                        {i, turned * in * std::polar(1.0, side * turn * k / std::ceil(-turn / step))});
        }
        for (const auto& [where, place, before, after] : starts) {
            Corner corner{place, {}, {}};
            const std::size_t count = all.size() - begin;
            for (std::size_t k = 0; k < count / 2; ++k) {
                if (after) corner.after.push_back(begin + (where - begin + k) % count);
                if (before) corner.before.push_back(begin + (where - begin + count - 1 - k) % count);
            }
            corners.push_back(corner);
        }
    }
    const double most_lean = filled ? stroke_lean : gap_lean;
    for (Ball& ball : all) {
        shrink(ball);
        if (ball.radius < size_ && ball.lean < 3 * most_lean) refine(ball);
    }
    return all;
}

std::optional<double> Outline::narrowest(bool filled) const {
    std::vector<Corner> corners;
    std::vector<Ball> all = balls(filled, corners);
    if (all.empty()) return {};
    for (const Corner& corner : corners)
        for (const auto* edge : {&corner.before, &corner.after}) {
            double radius = 0;
            for (const std::size_t i : *edge) {
                Ball& ball = all[i];
                if (!(ball.radius > radius * (1 - 1e-6))) break;
                if (!(ball.radius <
                      2 * ball.lean * std::abs(ball.centre(points_[ball.point].place) - corner.place)))
                    break;
                ball.taper = true;
                radius = ball.radius;
            }
        }

    // Balls that touch the same stretch of outline, or one another's, lie in the same region.
    std::vector<std::size_t> parent(points_.size());
    std::iota(parent.begin(), parent.end(), std::size_t{0});
    const auto root = [&](std::size_t i) {
        while (parent[i] != i) i = parent[i] = parent[parent[i]];
        return i;
    };
    for (const Ring& ring : rings_)
        for (std::size_t i = ring.first; i < ring.last; ++i) {
            const std::size_t next = i + 1 < ring.last ? i + 1 : ring.first;
            if (inside_[i] != 0 && inside_[next] != 0) parent[root(i)] = root(next);
        }
    for (const Ball& ball : all)
        if (std::isfinite(ball.radius)) parent[root(ball.point)] = root(ball.other);

    const double most_lean = filled ? stroke_lean : gap_lean;
    const double least = 1e-5 * size_;
    std::vector<double> narrowest(points_.size(), std::numeric_limits<double>::infinity());
    std::vector<double> largest(points_.size(), 0);
    for (const Ball& ball : all) {
        const std::size_t region = root(ball.point);
        largest[region] = std::max(largest[region], ball.radius);
        if (ball.lean <= most_lean && !ball.taper && ball.radius > least)
            narrowest[region] = std::min(narrowest[region], ball.radius);
    }
    double best = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < points_.size(); ++i)
        if (largest[i] > least)
            best = std::min(best, std::isfinite(narrowest[i]) ? narrowest[i] : largest[i]);
    if (!std::isfinite(best)) return {};
    return 2 * best;
}

}  // namespace

Widths narrowest_by_balls(const lode::Path& path, double spacing) {
    const Outline outline(path, spacing);
    return {outline.narrowest(true), outline.narrowest(false)};
}

}  // namespace judge
