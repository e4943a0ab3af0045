#include "art/curve_recovery.hpp"

#include <algorithm>
#include <optional>

namespace lode {

namespace {

// Chords of no length on the lattice are missing from a curve's edges, and leave a gap in its parameter.
constexpr double most_gap = 0.01;
// How far, in lattice units, a true crossing may lie from that of the chords: they are within a unit of their
// curves, and may cross at a small angle.
constexpr double most_shift = 256;

bool continues(const Trace& before, const Trace& after) {
    if (before.curve != after.curve) return false;
    const bool forward = before.first < before.last;
    if (forward != (after.first < after.last)) return false;
    const double gap = forward ? after.first - before.last : before.last - after.first;
    return gap >= 0 && gap <= most_gap;
}

const Trace* continuing(const LoopEdge& edge, const Trace& before) {
    for (const Trace& t : edge.traces)
        if (continues(before, t)) return &t;
    return nullptr;
}

// The edges as stretches of one curve each, as long as can be, starting at an edge where one has to start.
std::vector<Trace> stretches(const Loop& loop) {
    const std::size_t count = loop.size();
    std::size_t start = 0;
    for (std::size_t i = 0; i < count; ++i) {
        const LoopEdge& before = loop[(i + count - 1) % count];
        if (std::none_of(before.traces.begin(), before.traces.end(),
                         [&](const Trace& t) { return continuing(loop[i], t) != nullptr; })) {
            start = i;
            break;
        }
    }
    std::vector<Trace> result;
    for (std::size_t done = 0; done < count;) {
        Trace longest{};
        std::size_t most = 0;
        for (const Trace& first : loop[(start + done) % count].traces) {
            Trace stretch = first;
            Trace last = first;
            std::size_t edges = 1;
            while (done + edges < count) {
                const Trace* const next = continuing(loop[(start + done + edges) % count], last);
                if (!next) break;
                last = *next;
                stretch.last = last.last;
                ++edges;
            }
            if (edges > most) {
                most = edges;
                longest = stretch;
            }
        }
        result.push_back(longest);
        done += most;
    }
    return result;
}

bool is_end(double t) {
    return t == 0 || t == 1;
}

}  // namespace

double CurveRecovery::nearest(const Cubic& curve, double t, Point p) const {
    for (int i = 0; i < 8; ++i) {
        const Point speed = curve.speed(t);
        const double square = dot(speed, speed);
        if (!(square > 0)) break;
        const double next = std::clamp(t + dot(p - curve.at(t), speed) / square, 0.0, 1.0);
        if (next == t) break;
        t = next;
    }
    return t;
}

// The corner of two curves near these parameters, the curves in an order that does not depend on who asks.
CurveRecovery::Corner CurveRecovery::meeting(int one, double t, int other, double s) const {
    const Cubic& a = curve(one);
    const Cubic& b = curve(other);
    if (is_end(t)) {
        const Point at = t == 0 ? a.p0 : a.p3;
        return {at, t, is_end(s) ? s : nearest(b, s, at)};
    }
    if (is_end(s)) {
        const Point at = s == 0 ? b.p0 : b.p3;
        return {at, nearest(a, t, at), s};
    }
    double x = t, y = s;
    bool settled = false;
    for (int i = 0; i < 20 && !settled; ++i) {
        const Point apart = b.at(y) - a.at(x);
        const Point u = a.speed(x);
        const Point v = b.speed(y);
        const double determinant = cross(u, v);
        if (!(std::abs(determinant) > 1e-9 * length(u) * length(v))) break;
        const double dx = cross(apart, v) / determinant;
        const double dy = cross(apart, u) / determinant;
        const double next_x = std::clamp(x + dx, 0.0, 1.0);
        const double next_y = std::clamp(y + dy, 0.0, 1.0);
        settled = std::abs(next_x - x) <= 1e-15 && std::abs(next_y - y) <= 1e-15;
        x = next_x;
        y = next_y;
    }
    const Point at = a.at(x);
    const double off = lattice_.scale * length(b.at(y) - at);
    const double shift = lattice_.scale * length(at - a.at(t));
    if (off <= 1e-2 && shift <= most_shift) return {at, x, y};
    const Point middle = a.at(t);
    return {middle, t, nearest(b, s, middle)};
}

CurveRecovery::Corner CurveRecovery::corner(const Trace& before, const Trace& after) const {
    if (before.curve <= after.curve) return meeting(before.curve, before.last, after.curve, after.first);
    const Corner other = meeting(after.curve, after.first, before.curve, before.last);
    return {other.at, other.after, other.before};
}

Contour CurveRecovery::curved(const Loop& loop) const {
    const std::vector<Trace> pieces = stretches(loop);
    const std::size_t count = pieces.size();
    const auto place = [](const Trace& t) { return std::pair(t.curve, std::min(t.first, t.last)); };
    std::size_t first = 0;
    for (std::size_t i = 1; i < count; ++i)
        if (place(pieces[i]) < place(pieces[first])) first = i;
    if (pieces[first].last < pieces[first].first) ++first;  // backward it comes last

    std::vector<Corner> corners(count);  // corner i is where piece i starts
    for (std::size_t i = 0; i < count; ++i) corners[i] = corner(pieces[(i + count - 1) % count], pieces[i]);
    Contour contour{corners[first % count].at, {}};
    for (std::size_t k = 0; k < count; ++k) {
        const std::size_t i = (first + k) % count;
        const Corner& from = corners[i];
        const Corner& to = corners[(i + 1) % count];
        const Cubic& whole = curve(pieces[i].curve);
        const bool backward = pieces[i].last < pieces[i].first;
        const double low = backward ? to.before : from.after;
        const double high = backward ? from.after : to.before;
        if (!(low < high) || whole.straight) {
            if (from.at != to.at) contour.segments.push_back(Segment::line(to.at));
            continue;
        }
        Cubic piece = low == 0 && high == 1 ? whole : whole.part(low, high);
        if (backward) piece = piece.reversed();
        if (piece.p0 != from.at || piece.p3 != to.at) piece = piece.between(from.at, to.at);
        contour.segments.push_back(piece.segment());
    }
    return contour;
}

std::pair<int, double> CurveRecovery::order(const Loop& loop) {
    std::pair<int, double> least{INT32_MAX, 0};
    for (const LoopEdge& e : loop)
        for (const Trace& t : e.traces) least = std::min(least, {t.curve, std::min(t.first, t.last)});
    return least;
}

}  // namespace lode
