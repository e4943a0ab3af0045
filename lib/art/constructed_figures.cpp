// The figures. All stand on the baseline and reach the cap height; a little narrower than the capitals that
// they could be taken for.

#include <algorithm>
#include <cmath>

#include "art/constructed_letters.hpp"

namespace lode {

namespace {

Skeleton draw_zero(const LetterMeasures& m) {
    const double width = m.width(0.64, 2 * m.stroke + m.gap);
    return {{oval(m.half, width - m.half, m.round_bottom(), m.round_top())}, {}};
}

Skeleton draw_one(const LetterMeasures& m) {
    const double x = m.width(0.36) - m.half;
    const double flag = std::max(0.16, m.stroke);
    return {{Pen(x - flag - m.half, 1 - inset - 0.62 * (flag + m.half))
                 .line(x, 1 - inset)
                 .line(x, 0)
                 .high(1)
                 .start(StrokeEnd::plumb)
                 .open()},
            {}};
}

Skeleton draw_two(const LetterMeasures& m) {
    const double width = m.width(0.62);
    const double right = width - m.half - 0.01;
    const double left = m.half + 0.02;
    const double x = (left + right) / 2;
    const double bowl = 0.70;
    // The neck runs from the bowl to the foot's corner, which is cut off at the left side.
    const double radius = (right - left) / 2;
    const Point centre{right - radius, bowl};
    const Point foot{0.7 * m.half, m.bottom()};
    const Point touch = touching_point(foot, centre, radius, -1);
    return {{Pen(left, bowl)
                 .plumb_to_level(x, m.round_top())
                 .level_to_plumb(right, bowl)
                 .arc(centre.x, centre.y, touch.x, touch.y, 1)
                 .line(foot.x, foot.y)
                 .line(width, foot.y)
                 .left(0)
                 .start_at_height(bowl + 0.02)
                 .open()},
            {}};
}

Skeleton draw_three(const LetterMeasures& m) {
    const double width = m.width(0.62);
    const double right = width - m.half;
    const double upper_right = right - 0.02;
    const double middle = std::clamp(0.53, m.lowest_bar(), m.highest_bar());
    const double upper = (m.round_top() + middle) / 2;
    const double lower = (m.round_bottom() + middle) / 2;
    const double x = (m.half + right) / 2;
    const double tongue = x - 0.06;
    Pen above = Pen(m.half + 0.02, upper)
                    .plumb_to_level(x, m.round_top())
                    .level_to_plumb(upper_right, upper)
                    .plumb_to_level(x, middle)
                    .line(tongue, middle);
    Pen below = Pen(x - 0.03, middle)
                    .line(x, middle)
                    .level_to_plumb(right, lower)
                    .plumb_to_level(x, m.round_bottom())
                    .level_to_plumb(m.half, lower);
    const Chain bar_between = bar(middle, tongue + m.half, x);
    const double start = start_height(m, above, upper + 0.02, m.round_top() - 0.004, {bar_between});
    const double end = end_height(m, below, lower - 0.02, m.round_bottom() + 0.004, {bar_between});
    return {{above.start_at_height(start).open(), below.end_at_height(end).open()}, {}};
}

Skeleton draw_four(const LetterMeasures& m) {
    const double crossbar = std::max(0.27, m.half + m.gap);
    // The counter is a triangle with a right angle: as wide as what its sides leave.
    const double width = least(m.width(0.70), 1.5, [&](double w) {
        const double stem_x = w - m.half - 0.11;
        const double run = (stem_x - 0.6 * m.half) / (1 - inset - crossbar);
        const double across = stem_x - m.half;
        const double inner_left = 0.6 * m.half + slant_offset(m, run) + run * m.half;
        const double base = across - inner_left;
        const double height = base / run;
        return base > 0 && base + height - std::sqrt(base * base + height * height) >= m.gap;
    });
    const double stem_x = width - m.half - 0.11;
    return {{Pen(width, crossbar)
                 .line(0.6 * m.half, crossbar)
                 .line(stem_x, 1 - inset)
                 .line(stem_x, 0)
                 .high(1)
                 .left(0)
                 .open()},
            {}};
}

Skeleton draw_five(const LetterMeasures& m) {
    const double width = m.width(0.62);
    const double right = width - m.half;
    const double left = m.half + 0.035;
    const double middle = std::clamp(0.57, m.lowest_bar(), m.highest_bar());
    const double lower = (middle + m.round_bottom()) / 2;
    const double turn = (m.half + right) / 2 - 0.01;
    Pen pen = Pen(width - 0.05, m.top())
                  .line(left, m.top())
                  .line(left, middle)
                  .line(turn, middle)
                  .level_to_plumb(right, lower)
                  .plumb_to_level(turn, m.round_bottom())
                  .level_to_plumb(m.half, lower);
    const double end =
        end_height(m, pen, lower - 0.04, m.round_bottom() + 0.004, {bar(middle, left - m.half, turn)});
    return {{pen.end_at_height(end).open()}, {}};
}

Skeleton draw_six(const LetterMeasures& m) {
    const double width = m.width(0.63, 2 * m.stroke + m.gap);
    const double right = width - m.half;
    const double x = (m.half + right) / 2;
    const double bowl_top = std::clamp(0.555, m.lowest_bar(), m.highest_bar());
    const double lower = (bowl_top + m.round_bottom()) / 2;
    const double shoulder = 0.58;
    Pen pen = Pen(right - 0.01, 0.70)
                  .plumb_to_level(x + 0.015, m.round_top())
                  .level_to_plumb(m.half, shoulder)
                  .line(m.half, lower)
                  .plumb_to_level(x, m.round_bottom())
                  .level_to_plumb(right, lower)
                  .plumb_to_level(x, bowl_top)
                  .level_to_plumb(m.half, lower);
    const Chain bowl = Pen(right, lower).plumb_to_level(x, bowl_top).level_to_plumb(m.half, lower).open();
    const double start = start_height(m, pen, 0.78, m.round_top() - 0.004, {bowl});
    return {{pen.start_at_height(start).open()}, {}};
}

// The same turned by half a turn.
Skeleton turned(Skeleton skeleton, double width) {
    const auto point = [width](Point p) { return Point{width - p.x, -1 - p.y}; };
    for (Chain& chain : skeleton.chains)
        for (ArcEdge& edge : chain.edges)
            edge = {point(edge.from), point(edge.to), edge.turn, point(edge.centre), edge.radius};
    return skeleton;
}

Skeleton draw_seven(const LetterMeasures& m) {
    const double width = m.width(0.60);
    const double corner = width - 0.55 * m.half;
    const double foot = slant_offset(m, 0.42) + 0.09;
    return {{Pen(0, m.top()).line(corner, m.top()).line(foot, 0).end(StrokeEnd::level).right(width).open()},
            {}};
}

Skeleton draw_eight(const LetterMeasures& m) {
    const double width = m.width(0.65, 2 * m.stroke + m.gap + 0.06);
    const double narrowing = 0.025;
    const double middle = std::clamp(0.53, m.lowest_bar(), m.highest_bar());
    return {{oval(m.half + narrowing, width - m.half - narrowing, middle, m.round_top()),
             oval(m.half, width - m.half, m.round_bottom(), middle)},
            {}};
}

Skeleton draw_nine(const LetterMeasures& m) {
    return turned(draw_six(m), m.width(0.63, 2 * m.stroke + m.gap));
}

}  // namespace

const std::vector<LetterShape>& figure_shapes() {
    static const std::vector<LetterShape> shapes{
        {"0", draw_zero}, {"1", draw_one}, {"2", draw_two},   {"3", draw_three}, {"4", draw_four},
        {"5", draw_five}, {"6", draw_six}, {"7", draw_seven}, {"8", draw_eight}, {"9", draw_nine}};
    return shapes;
}

}  // namespace lode
