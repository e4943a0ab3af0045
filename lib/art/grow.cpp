// Offsets. Idea: every stretch of the boundary sweeps a strip between itself and its offset curve, and every
// outward corner a sector; what is grown is the sum of all. Their inner edges cancel, so that a contour's
// strips and sectors together are one contour: the offset curves, with arcs round outward corners, and by way
// of the corner itself where it points inward. All of these go round the same way, so a nonzero union of them
// is right whatever overlaps (Chen and McMains, "Polygon Offsetting by Computing Winding Numbers", 2005, for
// polygons). A strip would turn over where a curve bends inward more sharply than the offset's radius:
// nothing of the outline can come from there, and discs about the stretch's ends cover what it should.
//
// To shrink is to grow the outside.

#include <array>
#include <optional>
#include <stdexcept>

#include "art/combine.hpp"
#include "art/outline_task.hpp"

namespace lode {

namespace {

// Of the offset's radius.
constexpr double tolerance = 1e-4;
constexpr int most_halvings = 24;

struct Strip {
    Cubic inner;
    std::optional<Cubic> outer;  // nothing where it would turn over
};

// To the left of the way, as the eye sees it.
Point left_of(Point way) {
    return {way.y, -way.x};
}

class Growth {
  public:
    Growth(OutlineTask& task, double radius) : task_(task), radius_(radius) {}
    void add(const Contour& contour) {
        strips_.clear();
        each_piece(contour, [&](const Cubic& c) { sweep(c, most_halvings); });
        if (!strips_.empty()) task_.add(swept(), {1, 0});
    }

  private:
    // How much longer the offset curve is than the curve, at an end.
    [[nodiscard]] double stretch(const Cubic& c, double t) const {
        const Point speed = c.speed(t);
        const double size = length(speed);
        return 1 + radius_ * cross(speed, c.bend(t)) / (size * size * size);
    }
    void sweep(const Cubic& c, int most);
    [[nodiscard]] std::optional<Cubic> offset(const Cubic& c) const;
    [[nodiscard]] Contour swept();

    OutlineTask& task_;
    double radius_;
    std::vector<Strip> strips_;
};

// The curve with the offset's ends, and its directions and speeds there; nothing where that strays too far.
std::optional<Cubic> Growth::offset(const Cubic& c) const {
    const Point from = c.p0 + radius_ * left_of(c.way_out());
    const Point to = c.p3 + radius_ * left_of(c.way_in());
    const Cubic result{from, from + stretch(c, 0) * (c.p1 - c.p0), to - stretch(c, 1) * (c.p3 - c.p2), to,
                       false};
    for (const double t : {0.25, 0.5, 0.75}) {
        const Point speed = c.speed(t);
        const Point true_point = c.at(t) + (radius_ / length(speed)) * left_of(speed);
        if (!(length(result.at(t) - true_point) <= tolerance * radius_)) return std::nullopt;
    }
    return result;
}

void Growth::sweep(const Cubic& c, int most) {
    const double reach = length(c.p1 - c.p0) + length(c.p2 - c.p1) + length(c.p3 - c.p2);
    if (c.straight || most == 0 || reach <= tolerance * radius_) {
        if (c.p0 == c.p3) return;
        const Cubic line = Cubic::line(c.p0, c.p3);
        const Point by = radius_ * left_of(line.way_out());
        strips_.push_back({line, Cubic::line(line.p0 + by, line.p3 + by)});
        return;
    }
    const auto halve = [&] {
        sweep(c.first_half(), most - 1);
        sweep(c.second_half(), most - 1);
    };
    const double turn = dot(c.way_out(), c.way_in());
    const bool tame = turn >= 0.86 && reach <= 1.1 * length(c.p3 - c.p0) && c.p1 != c.p0 && c.p2 != c.p3;
    if (!tame) return halve();
    // Off the ends, where a curve that was split just here stands on the border of both sorts.
    constexpr std::array<double, 5> asked{0.05, 0.25, 0.5, 0.75, 0.95};
    const auto turns_over = [&](double t) { return !(stretch(c, t) > 1e-3); };
    for (std::size_t i = 0; i + 1 < asked.size(); ++i) {
        if (turns_over(asked[i]) == turns_over(asked[i + 1])) continue;
        double low = asked[i], high = asked[i + 1];
        for (int k = 0; k < 40; ++k) {
            const double middle = 0.5 * (low + high);
            (turns_over(middle) == turns_over(asked[i]) ? low : high) = middle;
        }
        sweep(c.part(0, low), most - 1);
        sweep(c.part(low, 1), most - 1);
        return;
    }
    if (!turns_over(0.5)) {
        const auto outer = offset(c);
        if (!outer) return halve();
        strips_.push_back({c, outer});
        return;
    }
    strips_.push_back({c, std::nullopt});
    task_.add(capsule(c.p0, c.p0, radius_), {1, 0});
    task_.add(capsule(c.p3, c.p3, radius_), {1, 0});
}

Contour Growth::swept() {
    const std::size_t count = strips_.size();
    // Offsets by the directions before and after each corner: one and the same where it is smooth.
    struct Corner {
        Point before, after;
        bool outward = false;
    };
    std::vector<Corner> corners(count);  // where each strip starts
    for (std::size_t i = 0; i < count; ++i) {
        const Point in = strips_[(i + count - 1) % count].inner.way_in();
        const Point out = strips_[i].inner.way_out();
        const Point at = strips_[i].inner.p0;
        const double turn = cross(in, out);
        const bool smooth = std::abs(turn) <= 1e-5 && dot(in, out) > 0;
        const Point before = at + radius_ * left_of(in);
        corners[i] = {before, smooth ? before : at + radius_ * left_of(out),
                      turn > 0 || (dot(in, out) < 0 && turn > -1e-9)};
    }
    Contour contour{corners[0].after, {}};
    const auto line_to = [&](Point p) { contour.segments.push_back(Segment::line(p)); };
    for (std::size_t i = 0; i < count; ++i) {
        const auto& [inner, outer] = strips_[i];
        const Corner& next = corners[(i + 1) % count];
        if (outer) {
            contour.segments.push_back(outer->between(corners[i].after, next.before).segment());
        } else {
            line_to(inner.p0);
            contour.segments.push_back(inner.segment());
            line_to(next.before);
        }
        if (next.before == next.after) continue;
        if (next.outward) {
            append_arc(contour, inner.p3, next.after);
        } else {
            line_to(inner.p3);
            line_to(next.after);
        }
    }
    return contour;
}

}  // namespace

Path grown(const Path& path, double by) {
    if (!(std::abs(by) <= 1e9)) throw std::invalid_argument("an outline grows by a number within 1e9 of 0");
    const Path whole = united(path);
    if (by == 0) return whole;
    OutlineTask task;
    Growth growth(task, std::abs(by));
    for (const Contour& contour : whole.contours) growth.add(by > 0 ? contour : reversed(contour));
    return task.result(by > 0 ? Inside::either : Inside::backward);
}

}  // namespace lode
