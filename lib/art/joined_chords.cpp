#include "art/joined_chords.hpp"

#include <algorithm>
#include <cmath>

namespace lode {

namespace {

constexpr int most_passes = 30;

std::int64_t dot(LatticePoint origin, LatticePoint a, LatticePoint b) {
    return (a.x - origin.x) * (b.x - origin.x) + (a.y - origin.y) * (b.y - origin.y);
}

// Within one unit of the inside of a-b. One unit and no more: the pieces are then shorter than the whole, and
// the cutting ends.
bool lies_on(LatticePoint p, LatticePoint a, LatticePoint b) {
    const std::int64_t square = dot(a, b, b);
    const std::int64_t way = dot(a, b, p);
    if (way <= 0 || way >= square || p == a || p == b) return false;
    return std::abs(static_cast<double>(cross(a, b, p))) <= std::sqrt(static_cast<double>(square));
}

std::optional<LatticePoint> crossing(LatticePoint a, LatticePoint b, LatticePoint c, LatticePoint d) {
    const std::int64_t from = cross(c, d, a);
    const std::int64_t to = cross(c, d, b);
    const std::int64_t other_from = cross(a, b, c);
    const std::int64_t other_to = cross(a, b, d);
    const auto differ = [](std::int64_t s, std::int64_t t) { return (s < 0 && t > 0) || (s > 0 && t < 0); };
    if (!differ(from, to) || !differ(other_from, other_to)) return std::nullopt;
    const double way = static_cast<double>(from) / (static_cast<double>(from) - static_cast<double>(to));
    return LatticePoint{a.x + std::llround(way * static_cast<double>(b.x - a.x)),
                        a.y + std::llround(way * static_cast<double>(b.y - a.y))};
}

// Where, between two parameters of the chord's own piece, the curve passes the point. Far from proportional
// to the way along the chord, even where both are as good as straight.
double passing(const Chord& chord, double low, double high, LatticePoint p) {
    const Cubic& curve = chord.scaled;
    const Point along = curve.p3 - curve.p0;
    const Point point{static_cast<double>(p.x), static_cast<double>(p.y)};
    const auto ahead = [&](double t) { return dot(curve.at(t) - point, along); };
    if (ahead(low) >= 0) return low;
    if (ahead(high) <= 0) return high;
    double t = 0.5 * (low + high);
    // Newton's steps, halvings where these lead out.
    for (int i = 0; i < 60; ++i) {
        const double by = ahead(t);
        (by < 0 ? low : high) = t;
        const double speed = dot(curve.speed(t), along);
        double next = speed > 0 ? t - by / speed : low;
        if (!(next > low && next < high)) next = 0.5 * (low + high);
        if (std::abs(next - t) <= 1e-12) break;
        t = next;
    }
    return t;
}

// Puts a corner between the stops i and i + 1.
void cut(JoinedChord& joined, std::size_t i, LatticePoint at) {
    const Stop& from = joined.stops[i];
    const Stop& to = joined.stops[i + 1];
    const Chord& chord = *joined.chord;
    const double size = chord.last - chord.first;
    double way = 0;
    if (chord.scaled.straight) {
        way = static_cast<double>(dot(from.at, to.at, at)) / static_cast<double>(dot(from.at, to.at, to.at));
        way = from.parameter + std::clamp(way, 0.0, 1.0) * (to.parameter - from.parameter);
    } else {
        way = chord.first + size * passing(chord, (from.parameter - chord.first) / size,
                                           (to.parameter - chord.first) / size, at);
        way = std::clamp(way, from.parameter, to.parameter);
    }
    joined.stops.insert(joined.stops.begin() + static_cast<std::ptrdiff_t>(i) + 1, {at, way});
}

bool overlap(const Stop& a, const Stop& b, const Stop& c, const Stop& d) {
    return std::min(a.at.x, b.at.x) <= std::max(c.at.x, d.at.x) + 1 &&
           std::min(c.at.x, d.at.x) <= std::max(a.at.x, b.at.x) + 1 &&
           std::min(a.at.y, b.at.y) <= std::max(c.at.y, d.at.y) + 1 &&
           std::min(c.at.y, d.at.y) <= std::max(a.at.y, b.at.y) + 1;
}

// One cut of a piece of each, where they need it.
bool cut_pieces(JoinedChord& one, std::size_t i, JoinedChord& other, std::size_t j) {
    const LatticePoint a = one.stops[i].at, b = one.stops[i + 1].at;
    const LatticePoint c = other.stops[j].at, d = other.stops[j + 1].at;
    for (const LatticePoint p : {c, d})
        if (lies_on(p, a, b)) {
            cut(one, i, p);
            return true;
        }
    for (const LatticePoint p : {a, b})
        if (lies_on(p, c, d)) {
            cut(other, j, p);
            return true;
        }
    const auto at = crossing(a, b, c, d);
    if (!at) return false;
    const bool inner = *at != a && *at != b;
    const bool other_inner = *at != c && *at != d;
    if (inner) cut(one, i, *at);
    if (other_inner) cut(other, j, *at);
    return inner || other_inner;
}

bool cut_pair(JoinedChord& one, JoinedChord& other) {
    bool any = false;
    for (std::size_t i = 0; i + 1 < one.stops.size(); ++i)
        for (std::size_t j = 0; j + 1 < other.stops.size();) {
            const bool done = !overlap(one.stops[i], one.stops[i + 1], other.stops[j], other.stops[j + 1]) ||
                              !cut_pieces(one, i, other, j);
            if (done)
                ++j;
            else
                any = true;
        }
    return any;
}

}  // namespace

std::optional<std::vector<JoinedChord>> joined(const Chords& chords) {
    std::vector<JoinedChord> result;
    std::vector<int> place(chords.all.size(), -1);
    for (std::size_t i = 0; i < chords.all.size(); ++i) {
        const Chord& c = chords.all[i];
        if (c.halves >= 0 || c.from == c.to) continue;
        place[i] = static_cast<int>(result.size());
        result.push_back({&c, {{c.from, c.first}, {c.to, c.last}}});
    }
    std::vector<std::pair<int, int>> near;
    for (const auto& [one, other] : chords.near) {
        const int i = place[static_cast<std::size_t>(one)];
        const int j = place[static_cast<std::size_t>(other)];
        if (i >= 0 && j >= 0 && i != j) near.emplace_back(i, j);
    }
    for (int pass = 0; pass < most_passes; ++pass) {
        bool any = false;
        for (const auto& [i, j] : near)
            any |= cut_pair(result[static_cast<std::size_t>(i)], result[static_cast<std::size_t>(j)]);
        if (!any) return result;
    }
    return std::nullopt;
}

}  // namespace lode
