// The capitals.

#include <algorithm>
#include <cmath>

#include "art/constructed_letters.hpp"

namespace lode {

namespace {

Skeleton draw_a(const LetterMeasures& m) {
    const double bar_height = std::max(0.29, m.half + m.gap);
    // The counter above the bar is a triangle; its inscribed circle is as wide as the least gap.
    const double width = least(m.width(0.82), 1.6, [&](double w) {
        const Legs l = legs(m, w, 1);
        const double slope = std::sqrt(1 + l.run * l.run);
        const double inner_apex = (l.width / 2 - 2 * l.offset) / l.run;
        const double height = inner_apex - bar_height - m.half;
        const double sine = l.run / slope;
        return height > 0 && 2 * height * sine / (1 + sine) >= m.gap;
    });
    const Legs l = legs(m, width, 1);
    const double middle = width / 2;
    const double apex = (middle - l.offset) / l.run;
    return {{Pen(l.offset, 0)
                 .line(middle, apex)
                 .line(width - l.offset, 0)
                 .start(StrokeEnd::level)
                 .end(StrokeEnd::level)
                 .high(1)
                 .open(),
             bar(bar_height, l.offset + l.run * bar_height, width - l.offset - l.run * bar_height)},
            {}};
}

Skeleton draw_b(const LetterMeasures& m) {
    const double middle = std::min(0.525, m.highest_bar());
    const double upper = (m.top() - middle) / 2;
    const double lower = (middle - m.bottom()) / 2;
    const double width = m.width(0.68, 2 * m.stroke + m.gap);
    const double turn = std::max(width - m.half - lower, m.half + 0.01);
    return {{Pen(m.half, middle)
                 .line(turn, middle)
                 .level_to_plumb(turn + upper, middle + upper)
                 .plumb_to_level(turn, m.top())
                 .line(m.half, m.top())
                 .line(m.half, m.bottom())
                 .line(turn, m.bottom())
                 .level_to_plumb(turn + lower, middle - lower)
                 .plumb_to_level(turn, middle)
                 .line(m.half, middle)
                 .open()},
            {}};
}

Skeleton draw_c(const LetterMeasures& m) {
    return {{open_oval(m, m.width(0.83), 1)}, {}};
}

Skeleton draw_d(const LetterMeasures& m) {
    const double right = m.width(0.77) - m.half;
    const double turn = right - 0.5 + m.half;
    return {{Pen(m.half, m.bottom())
                 .line(m.half, m.top())
                 .line(turn, m.top())
                 .level_to_plumb(right, 0.5)
                 .plumb_to_level(turn, m.bottom())
                 .closed()},
            {}};
}

Skeleton draw_e(const LetterMeasures& m) {
    const double width = m.width(0.60);
    const double middle = std::min(0.515, m.highest_bar());
    return {
        {Pen(width, m.top()).line(m.half, m.top()).line(m.half, m.bottom()).line(width, m.bottom()).open(),
         bar(middle, m.half, width - 0.045)},
        {}};
}

Skeleton draw_f(const LetterMeasures& m) {
    const double width = m.width(0.57);
    const double middle = std::min(0.475, m.highest_bar());
    return {{Pen(width, m.top()).line(m.half, m.top()).line(m.half, 0).open(),
             bar(middle, m.half, width - 0.055)},
            {}};
}

Skeleton draw_g(const LetterMeasures& m) {
    const double right = m.width(0.85) - m.half;
    const double x = (m.half + right) / 2;
    const double crossbar = std::max(0.43, m.lowest_bar());
    const double turn = std::min(0.34, crossbar - 0.02);
    Pen pen = Pen(right, 0.5)
                  .plumb_to_level(x, m.round_top())
                  .level_to_plumb(m.half, 0.5)
                  .plumb_to_level(x, m.round_bottom())
                  .level_to_plumb(right, turn)
                  .line(right, crossbar)
                  .line(x + 0.02, crossbar);
    const double start =
        start_height(m, pen, 0.74, m.round_top() - 0.004, {bar(crossbar, x + 0.02, right + m.half)});
    return {{pen.start_at_height(start).open()}, {}};
}

Skeleton draw_h(const LetterMeasures& m) {
    const double right = m.width(0.73) - m.half;
    return {{stem(m.half), stem(right), bar(0.515, m.half, right)}, {}};
}

Skeleton draw_i(const LetterMeasures& m) {
    return {{stem(m.half)}, {}};
}

Skeleton draw_j(const LetterMeasures& m) {
    const double right = m.width(0.54, 2 * m.stroke + m.gap) - m.half;
    const double x = (m.half + right) / 2;
    const double turn = 0.29;
    return {{Pen(right, 1)
                 .line(right, turn)
                 .plumb_to_level(x, m.round_bottom())
                 .level_to_plumb(m.half, turn)
                 .end_at_height(turn - 0.02)
                 .open()},
            {}};
}

Skeleton draw_k(const LetterMeasures& m) {
    const double width = m.width(0.72);
    const double joint = 0.385;  // of the arm with the stem's middle
    const double run = least(
        0.1, 2, [&](double r) { return m.half + r * (1 - joint) + slant_offset(m, r) >= width - 0.02; });
    const double leg_top = joint + 0.05;
    const double leg_x = m.half + run * (leg_top - joint);
    const double leg_run =
        least(0.1, 2, [&](double r) { return leg_x + r * leg_top + slant_offset(m, r) >= width; });
    return {
        {stem(m.half), Pen(m.half, joint).line(m.half + run * (1 - joint), 1).end(StrokeEnd::level).open(),
         Pen(leg_x, leg_top).line(leg_x + leg_run * leg_top, 0).end(StrokeEnd::level).open()},
        {}};
}

Skeleton draw_l(const LetterMeasures& m) {
    return {{Pen(m.half, 1).line(m.half, m.bottom()).line(m.width(0.56), m.bottom()).open()}, {}};
}

Skeleton draw_m(const LetterMeasures& m) {
    const double vertex = std::max(0.24, m.gap);
    // Between a stem and the vertex, and between the slants at the cap height.
    const double width = m.width(0.90, 3.2 * m.stroke + 2 * m.gap);
    const double right = width - m.half;
    return {{Pen(m.half, 0)
                 .line(m.half, 1 - inset)
                 .line(width / 2, vertex + inset)
                 .line(right, 1 - inset)
                 .line(right, 0)
                 .high(1)
                 .low(vertex)
                 .open()},
            {}};
}

Skeleton draw_n(const LetterMeasures& m) {
    const double right = m.width(0.75, 2 * m.stroke + m.gap) - m.half;
    return {{Pen(m.half, 0).line(m.half, 1 - inset).line(right, inset).line(right, 1).high(1).low(0).open()},
            {}};
}

Skeleton draw_o(const LetterMeasures& m) {
    return {{oval(m.half, m.width(0.90) - m.half, m.round_bottom(), m.round_top())}, {}};
}

Skeleton draw_p(const LetterMeasures& m) {
    const double middle = std::min(0.45, m.highest_bar());
    const double bowl = (m.top() - middle) / 2;
    const double turn = std::max(m.width(0.65) - m.half - bowl, m.half + 0.01);
    return {{Pen(m.half, 0)
                 .line(m.half, m.top())
                 .line(turn, m.top())
                 .level_to_plumb(turn + bowl, middle + bowl)
                 .plumb_to_level(turn, middle)
                 .line(m.half, middle)
                 .open()},
            {}};
}

Skeleton draw_q(const LetterMeasures& m) {
    const double width = m.width(0.90);
    Skeleton q = draw_o(m);
    // Square to the bowl where it crosses it, and as far into the counter as that leaves room.
    const double x = 0.76 * width;
    const double y = 0.17;
    const Pen tail = Pen(x - 0.23, y + 0.23).line(x + 0.21, y - 0.21);
    const Chain across = Pen(width / 2, m.round_bottom())
                             .level_to_plumb(m.half, 0.5)
                             .plumb_to_level(width / 2, m.round_top())
                             .level_to_plumb(width - m.half, 0.5)
                             .open();
    const double start = start_height(m, tail, y + 0.23, y, {across});
    q.chains.push_back(Pen(tail).start_at_height(start).open());
    return q;
}

Skeleton draw_r(const LetterMeasures& m) {
    const double middle = std::min(0.465, m.highest_bar());
    const double bowl = (m.top() - middle) / 2;
    const double width = m.width(0.69);
    const double turn = std::max(width - 0.025 - m.half - bowl, m.half + 0.01);
    const double leg_x = turn - 0.03;
    const double run =
        least(0, 2, [&](double r) { return leg_x + r * middle + slant_offset(m, r) >= width; });
    return {{Pen(m.half, 0)
                 .line(m.half, m.top())
                 .line(turn, m.top())
                 .level_to_plumb(turn + bowl, middle + bowl)
                 .plumb_to_level(turn, middle)
                 .line(m.half, middle)
                 .open(),
             Pen(leg_x, middle).line(leg_x + run * middle, 0).end(StrokeEnd::level).open()},
            {}};
}

Skeleton draw_s(const LetterMeasures& m) {
    return {{ess(m, m.width(0.67), 1)}, {}};
}

Skeleton draw_t(const LetterMeasures& m) {
    const double width = m.width(0.68);
    return {{bar(m.top(), 0, width), stem(width / 2, 0, m.top())}, {}};
}

Skeleton draw_u(const LetterMeasures& m) {
    const double right = m.width(0.72) - m.half;
    const double x = (m.half + right) / 2;
    const double turn = m.round_bottom() + (x - m.half);
    return {{Pen(m.half, 1)
                 .line(m.half, turn)
                 .plumb_to_level(x, m.round_bottom())
                 .level_to_plumb(right, turn)
                 .line(right, 1)
                 .open()},
            {}};
}

Skeleton draw_v(const LetterMeasures& m) {
    return {{vee(m, m.width(0.80), 1)}, {}};
}

Skeleton draw_w(const LetterMeasures& m) {
    return {{double_vee(m, m.width(1.13), 1)}, {}};
}

Skeleton draw_x(const LetterMeasures& m) {
    return {crossed(m, m.width(0.76), 1), {}};
}

Skeleton draw_y(const LetterMeasures& m) {
    const double width = m.width(0.77);
    const double fork = 0.40;
    const double middle = width / 2;
    const double run = least(0, 2, [&](double r) { return r * (1 - fork) + slant_offset(m, r) >= middle; });
    const double offset = slant_offset(m, run);
    return {{Pen(offset, 1)
                 .line(middle, fork)
                 .line(width - offset, 1)
                 .start(StrokeEnd::level)
                 .end(StrokeEnd::level)
                 .open(),
             stem(middle, 0, fork)},
            {}};
}

Skeleton draw_z(const LetterMeasures& m) {
    return {{zed(m, m.width(0.66), 1)}, {}};
}

}  // namespace

const std::vector<LetterShape>& capital_shapes() {
    static const std::vector<LetterShape> shapes{
        {"A", draw_a}, {"B", draw_b}, {"C", draw_c}, {"D", draw_d}, {"E", draw_e}, {"F", draw_f},
        {"G", draw_g}, {"H", draw_h}, {"I", draw_i}, {"J", draw_j}, {"K", draw_k}, {"L", draw_l},
        {"M", draw_m}, {"N", draw_n}, {"O", draw_o}, {"P", draw_p}, {"Q", draw_q}, {"R", draw_r},
        {"S", draw_s}, {"T", draw_t}, {"U", draw_u}, {"V", draw_v}, {"W", draw_w}, {"X", draw_x},
        {"Y", draw_y}, {"Z", draw_z}};
    return shapes;
}

}  // namespace lode
