#include "art/chords.hpp"

#include <algorithm>
#include <stdexcept>

namespace lode {

namespace {

constexpr double least_sag = 0.25;   // no finer than this
constexpr double least_length = 16;  // nor shorter
constexpr double slack = 8;          // what rounding and joining may move, and more
constexpr int most_first_halvings = 8;
// Far above any drawing, far below what would hurt.
constexpr std::size_t most_near = 2'000'000;

double from_segment(Point p, Point a, Point b) {
    const Point along = b - a;
    const double square = dot(along, along);
    const double way = dot(p - a, along);
    if (!(way > 0)) return length(p - a);
    if (way >= square) return length(p - b);
    return std::abs(cross(along, p - a)) / std::sqrt(square);
}

// The distance from the chord is convex, and the weights of the two controls never exceed 3/4 together.
double sag_of(const Cubic& c) {
    if (c.straight) return 0;
    return 0.75 * std::max(from_segment(c.p1, c.p0, c.p3), from_segment(c.p2, c.p0, c.p3));
}

struct Bounds {
    double left, top, right, bottom;
    [[nodiscard]] bool meets(const Bounds& o) const {
        return left <= o.right && o.left <= right && top <= o.bottom && o.top <= bottom;
    }
};

Bounds bounds_of(const Chord& c) {
    const double by = c.sag + slack / 2;
    return {std::min(c.scaled.p0.x, c.scaled.p3.x) - by, std::min(c.scaled.p0.y, c.scaled.p3.y) - by,
            std::max(c.scaled.p0.x, c.scaled.p3.x) + by, std::max(c.scaled.p0.y, c.scaled.p3.y) + by};
}

// Whether one chord's line keeps the whole of the other on one side.
bool parts_from(const Chord& a, const Chord& b) {
    const Point along = a.scaled.p3 - a.scaled.p0;
    const double size = length(along);
    const double reach = (a.sag + b.sag + slack) * size;
    const double one = cross(along, b.scaled.p0 - a.scaled.p0);
    const double other = cross(along, b.scaled.p3 - a.scaled.p0);
    return (one > reach && other > reach) || (one < -reach && other < -reach);
}

// Whether two pieces that start at one point lie on different sides of a line through it and so meet nowhere
// else. The line halves the angle between their chords.
bool parts_at_start(const Cubic& a, const Cubic& b) {
    const Point one = a.p3 - a.p0;
    const Point other = b.p3 - b.p0;
    const double one_size = length(one);
    const double other_size = length(other);
    if (!(one_size > 0) || !(other_size > 0)) return false;
    const Point apart = (1 / one_size) * one - (1 / other_size) * other;
    const double size = length(apart);
    if (!(size > 0)) return false;
    // Where their directions nearly agree, as at a cusp, rounding to the lattice would let them meet near
    // their start after all.
    const auto lies_aside = [&](Point by, double sign) {
        return sign * dot(apart, by) / size >= 0.05 * length(by);
    };
    return dot(apart, one) / size > slack && dot(apart, other) / size < -slack && lies_aside(one, 1) &&
           lies_aside(a.p1 - a.p0, 1) && lies_aside(a.p2 - a.p0, 1) && lies_aside(other, -1) &&
           lies_aside(b.p1 - b.p0, -1) && lies_aside(b.p2 - b.p0, -1);
}

bool parts_at_shared_end(const Chord& a, const Chord& b) {
    if (a.from == b.to && a.to == b.from) return false;
    if (a.from == b.from && a.to == b.to) return false;
    if (a.to == b.from) return parts_at_start(a.scaled.reversed(), b.scaled);
    if (a.from == b.to) return parts_at_start(a.scaled, b.scaled.reversed());
    if (a.from == b.from) return parts_at_start(a.scaled, b.scaled);
    if (a.to == b.to) return parts_at_start(a.scaled.reversed(), b.scaled.reversed());
    return false;
}

class Refinement {
  public:
    Refinement(std::span<const Cubic> curves, const Lattice& lattice) : lattice_(lattice) {
        for (std::size_t i = 0; i < curves.size(); ++i) {
            const Cubic& c = curves[i];
            Cubic scaled{lattice.scaled(c.p0), lattice.scaled(c.p1), lattice.scaled(c.p2),
                         lattice.scaled(c.p3), c.straight};
            start(static_cast<int>(i), scaled, 0, 1, most_first_halvings);
        }
    }
    Chords result() && {
        meet_all();
        std::sort(chords_.near.begin(), chords_.near.end());
        return std::move(chords_);
    }

  private:
    static Chord made(int curve, const Cubic& scaled, double first, double last) {
        const auto rounded = [](Point p) { return LatticePoint{std::llround(p.x), std::llround(p.y)}; };
        return {curve, first, last, rounded(scaled.p0), rounded(scaled.p3), sag_of(scaled), scaled, -1};
    }
    void start(int curve, const Cubic& scaled, double first, double last, int most) {
        const Chord chord = made(curve, scaled, first, last);
        if (most > 0 && !is_tame(chord) && chord.sag > least_length) {
            const double middle = 0.5 * (first + last);
            start(curve, scaled.first_half(), first, middle, most - 1);
            start(curve, scaled.second_half(), middle, last, most - 1);
            return;
        }
        chords_.all.push_back(chord);
    }
    Chord& chord(int i) { return chords_.all[static_cast<std::size_t>(i)]; }

    int halves_of(int i) {
        if (chord(i).halves < 0) {
            const Chord whole = chord(i);
            const double middle = 0.5 * (whole.first + whole.last);
            chord(i).halves = static_cast<int>(chords_.all.size());
            chords_.all.push_back(made(whole.curve, whole.scaled.first_half(), whole.first, middle));
            chords_.all.push_back(made(whole.curve, whole.scaled.second_half(), middle, whole.last));
            // The halves of a curve that turns back meet too.
            if (!is_tame(whole)) meet(chord(i).halves, chord(i).halves + 1);
        }
        return chord(i).halves;
    }
    // A tenth is 45 degrees of a circle.
    [[nodiscard]] static bool is_tame(const Chord& c) {
        return c.sag <= 0.1 * length(c.scaled.p3 - c.scaled.p0);
    }
    [[nodiscard]] static bool is_fine(const Chord& c) {
        return c.sag <= least_sag ||
               (length(c.scaled.p3 - c.scaled.p0) <= least_length && c.sag <= least_length);
    }

    void meet(int i, int j) {
        const Chord& a = chord(i);
        const Chord& b = chord(j);
        if (!bounds_of(a).meets(bounds_of(b)) || parts_from(a, b) || parts_from(b, a) ||
            parts_at_shared_end(a, b))
            return;
        const bool fine = is_fine(a);
        const bool other_fine = is_fine(b);
        if (fine && other_fine) {
            chords_.near.emplace_back(std::min(i, j), std::max(i, j));
            if (chords_.near.size() > most_near)
                throw std::length_error("an outline whose curves lie across each other too often");
            return;
        }
        const bool split_first = !fine && (other_fine || a.sag >= b.sag);
        const int halves = halves_of(split_first ? i : j);
        const int other = split_first ? j : i;
        meet(halves, other);
        meet(halves + 1, other);
    }

    // Every two first chords whose boxes meet: swept from left to right in horizontal strips.
    void meet_all() {
        const int count = static_cast<int>(chords_.all.size());
        if (count < 2) return;
        std::vector<Bounds> boxes;
        boxes.reserve(chords_.all.size());
        for (const Chord& c : chords_.all) boxes.push_back(bounds_of(c));
        double top = boxes[0].top, bottom = boxes[0].bottom, heights = 0;
        for (const Bounds& b : boxes) {
            top = std::min(top, b.top);
            bottom = std::max(bottom, b.bottom);
            heights += b.bottom - b.top;
        }
        const double height = std::max({(bottom - top) / 512, heights / count, 1.0});
        const auto strip_of = [&](double y) { return static_cast<std::size_t>((y - top) / height); };
        std::vector<std::vector<int>> strips(strip_of(bottom) + 1);
        std::vector<int> order(chords_.all.size());
        for (int i = 0; i < count; ++i) order[static_cast<std::size_t>(i)] = i;
        std::sort(order.begin(), order.end(), [&](int i, int j) {
            return std::pair(boxes[static_cast<std::size_t>(i)].left, i) <
                   std::pair(boxes[static_cast<std::size_t>(j)].left, j);
        });
        for (const int i : order) {
            const Bounds& b = boxes[static_cast<std::size_t>(i)];
            for (std::size_t s = strip_of(b.top); s <= strip_of(b.bottom); ++s) strips[s].push_back(i);
        }
        for (std::size_t s = 0; s < strips.size(); ++s)
            for (std::size_t k = 0; k < strips[s].size(); ++k) {
                const Bounds one = boxes[static_cast<std::size_t>(strips[s][k])];
                for (std::size_t m = k + 1; m < strips[s].size(); ++m) {
                    const Bounds& other = boxes[static_cast<std::size_t>(strips[s][m])];
                    if (other.left > one.right) break;
                    if (one.meets(other) && strip_of(std::max(one.top, other.top)) == s)
                        meet(strips[s][k], strips[s][m]);
                }
            }
    }

    Lattice lattice_;
    Chords chords_;
};

}  // namespace

Lattice Lattice::around(std::span<const Cubic> curves, int coarser) {
    Lattice lattice;
    if (curves.empty()) return lattice;
    Point least = curves[0].p0, most = curves[0].p0;
    for (const Cubic& c : curves)
        for (const Point p : {c.p0, c.p1, c.p2, c.p3}) {
            least = {std::min(least.x, p.x), std::min(least.y, p.y)};
            most = {std::max(most.x, p.x), std::max(most.y, p.y)};
        }
    const double reach = 0.5 * std::max({most.x - least.x, most.y - least.y, 1e-6});
    constexpr double room = (1 << 28) - 4096;
    while (lattice.scale * reach > room) lattice.scale /= 2;
    while (lattice.scale * 2 * reach <= room) lattice.scale *= 2;
    for (int i = 0; i < coarser; ++i) lattice.scale /= 2;
    // On the lattice, so that whole coordinates stay whole.
    const auto middle = [&](double a, double b) {
        return std::floor(0.5 * (a + b) * lattice.scale) / lattice.scale;
    };
    lattice.centre = {middle(least.x, most.x), middle(least.y, most.y)};
    return lattice;
}

LatticePoint Lattice::nearest(Point p) const {
    const Point s = scaled(p);
    return {std::llround(s.x), std::llround(s.y)};
}

Chords chords_of(std::span<const Cubic> curves, const Lattice& lattice) {
    return Refinement(curves, lattice).result();
}

}  // namespace lode
