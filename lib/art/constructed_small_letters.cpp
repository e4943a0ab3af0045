// The small letters, for headings. Stems have no spurs where a round joins them: the notch that these make is
// too small to cut. Their height grows until three strokes and two counters stand above each
// other in a, e and s.

#include <algorithm>
#include <cmath>

#include "art/constructed_letters.hpp"

namespace lode {

namespace {

double round_top(const LetterMeasures& m) {
    return m.x_height - m.half + m.overshoot;
}

// A round bowl beside a stem, as wide as o.
double bowl_width(const LetterMeasures& m) {
    return m.width(0.60, 2 * m.stroke + m.gap);
}
Chain bowl(const LetterMeasures& m) {
    return oval(m.half, bowl_width(m) - m.half, m.round_bottom(), round_top(m));
}

// Up from a height, over to the right and down to the baseline.
Chain arch(const LetterMeasures& m, double left, double right, double low) {
    const double x = (left + right) / 2;
    const double spring = round_top(m) - (right - left) / 2;
    Pen pen(left, low);
    if (low < spring) pen.line(left, spring);
    return pen.plumb_to_level(x, round_top(m)).level_to_plumb(right, spring).line(right, 0).open();
}

Skeleton draw_a(const LetterMeasures& m) {
    const double right = m.width(0.55, 2 * m.stroke + m.gap + 0.02) - m.half;
    const double x = (m.half + right) / 2;
    const double top = round_top(m);
    const double middle = std::clamp(0.58 * m.x_height, m.lowest_bar(), m.x_height - 1.5 * m.stroke - m.gap);
    const double lower = (middle + m.bottom()) / 2;
    const double shoulder = top - 0.2;
    Pen pen =
        Pen(m.half + 0.02, shoulder).plumb_to_level(x, top).level_to_plumb(right, shoulder).line(right, 0);
    const Chain bowl = Pen(right, middle)
                           .line(x, middle)
                           .level_to_plumb(m.half, lower)
                           .plumb_to_level(x, m.bottom())
                           .line(right, m.bottom())
                           .open();
    const double start = start_height(m, pen, shoulder + 0.02, top - 0.004, {bowl});
    return {{pen.start_at_height(start).open(), bowl}, {}};
}

Skeleton draw_b(const LetterMeasures& m) {
    return {{stem(m.half, m.x_height / 2, m.ascender), bowl(m)}, {}};
}

Skeleton draw_c(const LetterMeasures& m) {
    return {{open_oval(m, m.width(0.56), m.x_height)}, {}};
}
Skeleton draw_d(const LetterMeasures& m) {
    return {{stem(bowl_width(m) - m.half, m.x_height / 2, m.ascender), bowl(m)}, {}};
}

Skeleton draw_e(const LetterMeasures& m) {
    const double right = m.width(0.59) - m.half;
    const double x = (m.half + right) / 2;
    const double top = round_top(m);
    const double middle = std::clamp(0.50 * m.x_height, m.lowest_bar(), m.x_height - 1.5 * m.stroke - m.gap);
    const double side = m.x_height / 2;
    const double shoulder = std::max(side, middle + 0.03);
    Pen pen = Pen(m.half, middle)
                  .line(right, middle)
                  .line(right, shoulder)
                  .plumb_to_level(x, top)
                  .level_to_plumb(m.half, side)
                  .plumb_to_level(x, m.round_bottom())
                  .level_to_plumb(right, side);
    const double end = end_height(m, pen, 0.27 * m.x_height, m.round_bottom() + 0.004,
                                  {bar(middle, m.half, right + m.half)});
    return {{pen.end_at_height(end).open()}, {}};
}

Skeleton draw_f(const LetterMeasures& m) {
    const double width = m.width(0.40);
    const double x = 0.10 + m.half;
    const double turn = std::min(0.16 + 0.4 * m.half, width - x - 0.03);
    return {{Pen(x, 0)
                 .line(x, m.ascender - m.half - turn)
                 .plumb_to_level(x + turn, m.ascender - m.half)
                 .line(width, m.ascender - m.half)
                 .open(),
             bar(m.x_height - m.half, 0, width - 0.02)},
            {}};
}

// A stem at the right that goes below the baseline and turns to the left.
Chain tail(const LetterMeasures& m, double x, double left, double high) {
    const double low = -m.descender + m.half;
    const double turn = std::min(0.2, x - left - 0.03);
    return Pen(x, high).line(x, low + turn).plumb_to_level(x - turn, low).line(left, low).open();
}

Skeleton draw_g(const LetterMeasures& m) {
    const double x = bowl_width(m) - m.half;
    return {{tail(m, x, 0.09, m.x_height / 2), bowl(m)}, {}};
}

Skeleton draw_h(const LetterMeasures& m) {
    const double right = m.width(0.57, 2 * m.stroke + m.gap) - m.half;
    const double spring = round_top(m) - (right - m.half) / 2;
    return {{stem(m.half, 0, m.ascender), arch(m, m.half, right, spring)}, {}};
}

Skeleton draw_dotless_i(const LetterMeasures& m) {
    return {{stem(m.half, 0, m.x_height)}, {}};
}
Dot dot_above(const LetterMeasures& m, double x) {
    const double radius = 1.06 * m.half;
    return {{x, -(m.x_height + m.gap + radius + 0.001)}, radius};
}
Skeleton draw_i(const LetterMeasures& m) {
    return {draw_dotless_i(m).chains, {dot_above(m, m.half)}};
}

Skeleton draw_dotless_j(const LetterMeasures& m) {
    const double x = m.width(0.26);
    return {{tail(m, x, 0, m.x_height)}, {}};
}
Skeleton draw_j(const LetterMeasures& m) {
    return {draw_dotless_j(m).chains, {dot_above(m, m.width(0.26))}};
}

Skeleton draw_k(const LetterMeasures& m) {
    const double width = m.width(0.55);
    const double joint = 0.255;
    const double run = least(0.1, 3, [&](double r) {
        return m.half + r * (m.x_height - joint) + slant_offset(m, r) >= width - 0.02;
    });
    const double leg_top = joint + 0.05;
    const double leg_x = m.half + run * (leg_top - joint);
    const double leg_run =
        least(0.1, 3, [&](double r) { return leg_x + r * leg_top + slant_offset(m, r) >= width; });
    return {{stem(m.half, 0, m.ascender),
             Pen(m.half, joint)
                 .line(m.half + run * (m.x_height - joint), m.x_height)
                 .end(StrokeEnd::level)
                 .open(),
             Pen(leg_x, leg_top).line(leg_x + leg_run * leg_top, 0).end(StrokeEnd::level).open()},
            {}};
}

Skeleton draw_l(const LetterMeasures& m) {
    const double turn = 0.12 + 0.5 * m.half;
    return {{Pen(m.half, m.ascender)
                 .line(m.half, m.half + turn)
                 .plumb_to_level(m.half + turn, m.half)
                 .line(m.half + turn + 0.06, m.half)
                 .open()},
            {}};
}

Skeleton draw_m(const LetterMeasures& m) {
    const double right = m.width(0.90, 3 * m.stroke + 2 * m.gap) - m.half;
    const double middle = (m.half + right) / 2;
    return {{arch(m, m.half, middle, 0), arch(m, middle, right, round_top(m) - (right - middle) / 2)}, {}};
}

Skeleton draw_n(const LetterMeasures& m) {
    return {{arch(m, m.half, m.width(0.57, 2 * m.stroke + m.gap) - m.half, 0)}, {}};
}

Skeleton draw_o(const LetterMeasures& m) {
    return {{bowl(m)}, {}};
}
Skeleton draw_p(const LetterMeasures& m) {
    return {{stem(m.half, -m.descender, m.x_height / 2), bowl(m)}, {}};
}

Skeleton draw_q(const LetterMeasures& m) {
    return {{stem(bowl_width(m) - m.half, -m.descender, m.x_height / 2), bowl(m)}, {}};
}

Skeleton draw_r(const LetterMeasures& m) {
    const double turn = 0.20 + 0.3 * m.half;
    const double reach = std::max({m.width(0.37), 1.5 * m.stroke + m.gap, m.half + turn + 0.05});
    return {{Pen(m.half, 0)
                 .line(m.half, m.x_height - m.half - turn)
                 .plumb_to_level(m.half + turn, m.x_height - m.half)
                 .line(reach, m.x_height - m.half)
                 .open()},
            {}};
}

Skeleton draw_s(const LetterMeasures& m) {
    return {{ess(m, m.width(0.54), m.x_height)}, {}};
}

Skeleton draw_t(const LetterMeasures& m) {
    const double x = 0.09 + m.half;
    const double turn = 0.13 + 0.5 * m.half;
    const double width = std::max(m.width(0.41), x + turn + 0.05);
    const double high = m.x_height + std::min(0.2, m.ascender - m.x_height);
    return {{Pen(x, high).line(x, m.half + turn).plumb_to_level(x + turn, m.half).line(width, m.half).open(),
             bar(m.x_height - m.half, 0, width - 0.01)},
            {}};
}

Skeleton draw_u(const LetterMeasures& m) {
    const double right = m.width(0.57, 2 * m.stroke + m.gap) - m.half;
    const double x = (m.half + right) / 2;
    const double turn = m.round_bottom() + (right - m.half) / 2;
    return {{Pen(m.half, m.x_height)
                 .line(m.half, turn)
                 .plumb_to_level(x, m.round_bottom())
                 .level_to_plumb(right, turn)
                 .line(right, m.x_height)
                 .open()},
            {}};
}

Skeleton draw_v(const LetterMeasures& m) {
    return {{vee(m, m.width(0.58), m.x_height)}, {}};
}
Skeleton draw_w(const LetterMeasures& m) {
    return {{double_vee(m, m.width(0.88), m.x_height)}, {}};
}
Skeleton draw_x(const LetterMeasures& m) {
    return {crossed(m, m.width(0.57), m.x_height), {}};
}

Skeleton draw_y(const LetterMeasures& m) {
    const double width = m.width(0.58);
    const Legs l = legs(m, width, m.x_height);
    const double middle = width / 2;
    const double vertex = m.x_height - (middle - l.offset) / l.run;
    return {{Pen(l.offset, m.x_height).line(middle, vertex).start(StrokeEnd::level).open(),
             Pen(width - l.offset, m.x_height)
                 .line(width - l.offset - l.run * (m.x_height + m.descender), -m.descender)
                 .start(StrokeEnd::level)
                 .end(StrokeEnd::level)
                 .open()},
            {}};
}

Skeleton draw_z(const LetterMeasures& m) {
    return {{zed(m, m.width(0.52), m.x_height)}, {}};
}

}  // namespace

const std::vector<LetterShape>& small_shapes() {
    static const std::vector<LetterShape> shapes{
        {"a", draw_a}, {"b", draw_b},         {"c", draw_c},        {"d", draw_d}, {"e", draw_e},
        {"f", draw_f}, {"g", draw_g},         {"h", draw_h},        {"i", draw_i}, {"j", draw_j},
        {"k", draw_k}, {"l", draw_l},         {"m", draw_m},        {"n", draw_n}, {"o", draw_o},
        {"p", draw_p}, {"q", draw_q},         {"r", draw_r},        {"s", draw_s}, {"t", draw_t},
        {"u", draw_u}, {"v", draw_v},         {"w", draw_w},        {"x", draw_x}, {"y", draw_y},
        {"z", draw_z}, {"ı", draw_dotless_i}, {"ȷ", draw_dotless_j}};
    return shapes;
}

}  // namespace lode
