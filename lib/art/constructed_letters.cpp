#include "art/constructed_letters.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

namespace lode {

LetterMeasures::LetterMeasures(double stroke_width, double least_gap)
    : stroke(stroke_width),
      half(stroke_width / 2),
      gap(least_gap),
      x_height(std::max(0.70, 3 * stroke_width + 2 * least_gap + 0.01)),
      ascender(std::max(1.0, x_height + stroke_width + least_gap + 0.012)),
      descender(std::max(0.27, stroke_width + least_gap + 0.026)),
      overshoot(0.012) {}

double LetterMeasures::width(double by_eye, double at_least) const {
    constexpr double middling = 0.14;
    constexpr double growth = 0.6;
    return std::max(by_eye + growth * (stroke - middling), at_least);
}

Chain stem(double x, double low, double high) {
    return Pen(x, low).line(x, high).open();
}
Chain bar(double y, double left, double right) {
    return Pen(left, y).line(right, y).open();
}

Skeleton moved(Skeleton skeleton, double right, double up) {
    const auto point = [&](Point p) { return Point{p.x + right, p.y - up}; };
    for (Chain& chain : skeleton.chains) {
        for (ArcEdge& edge : chain.edges)
            edge = {point(edge.from), point(edge.to), edge.turn, point(edge.centre), edge.radius};
        Box& frame = chain.frame;
        frame = {frame.left + right, frame.top - up, frame.right + right, frame.bottom - up};
    }
    for (Dot& dot : skeleton.dots) dot.centre = point(dot.centre);
    return skeleton;
}

namespace {

// How far from one height to another a stroke has to go until its end is clear of others.
double clear_height(const LetterMeasures& m, double wanted, double limit, const std::vector<Chain>& others,
                    const std::function<std::pair<Point, Point>(double)>& end_at) {
    constexpr double spare = 0.006;  // the rounded corners bulge a little beside the stroke's end
    const double share = least(0, 1, [&](double t) {
        const auto [p, d] = end_at(wanted + t * (limit - wanted));
        for (const double side : {-m.half, m.half})
            for (const Chain& other : others)
                if (distance({p.x + side * d.y, p.y - side * d.x}, other) < m.half + m.gap + spare)
                    return false;
        return true;
    });
    return wanted + share * (limit - wanted);
}

}  // namespace

double start_height(const LetterMeasures& m, const Pen& stroke, double wanted, double limit,
                    const std::vector<Chain>& others) {
    return clear_height(m, wanted, limit, others, [&](double height) {
        const ArcEdge first = Pen(stroke).start_at_height(height).open().edges.front();
        return std::pair{first.from, direction_at_start(first)};
    });
}
double end_height(const LetterMeasures& m, const Pen& stroke, double wanted, double limit,
                  const std::vector<Chain>& others) {
    return clear_height(m, wanted, limit, others, [&](double height) {
        const ArcEdge last = Pen(stroke).end_at_height(height).open().edges.back();
        return std::pair{last.to, direction_at_end(last)};
    });
}

double slant_offset(const LetterMeasures& m, double run) {
    return m.half * std::sqrt(1 + run * run);
}

}  // namespace lode
