// Punctuation and signs. Those with strokes one above another grow taller than the capitals where they must.

#include <algorithm>
#include <cmath>

#include "art/constructed_letters.hpp"

namespace lode {

namespace {

constexpr double middle_height = 0.44;

double dot_radius(const LetterMeasures& m) {
    return 1.06 * m.half;
}
Dot dot(const LetterMeasures& m, double x, double y) {
    return {{x, -y}, dot_radius(m)};
}

// A short slanting stroke that hangs from a height.
Chain comma(const LetterMeasures& m, double x, double high, bool backwards = false) {
    const double length = 0.14 + m.half;
    const double run = (backwards ? -0.3 : 0.3) * length;
    return Pen(x + run / 2, high)
        .line(x - run / 2, high - length)
        .start(StrokeEnd::level)
        .end(StrokeEnd::level)
        .open();
}
// Two side by side with the least gap between them.
std::vector<Chain> commas(const LetterMeasures& m, double high, bool backwards) {
    const double apart = 1.05 * m.stroke + std::max(0.1, 1.05 * m.gap);
    return {comma(m, 0, high, backwards), comma(m, apart, high, backwards)};
}

Skeleton draw_ampersand(const LetterMeasures& m) {
    const double upper_radius = std::max(0.165, m.half + m.gap / 2 + 0.006);
    const double lower_radius = std::max(0.235, m.half + 0.66 * m.gap + 0.03);
    // Both circles are apart, so that a stroke passes between them.
    const double top = std::max(m.round_top(), m.round_bottom() + 2.06 * (upper_radius + lower_radius));
    const double width = m.width(0.84, 3 * m.stroke + 2.4 * m.gap);
    const Point lower{lower_radius + m.half, m.round_bottom() + lower_radius};
    const Point upper{lower.x + 0.02, top - upper_radius};
    const Point foot{width - 0.75 * m.stroke, 0};
    const Point hand{width - 0.5 * m.half, std::max(0.47, 1.2 * m.stroke + m.gap)};
    const double share = upper_radius / (upper_radius + lower_radius);
    const Point between{upper.x + share * (lower.x - upper.x), upper.y + share * (lower.y - upper.y)};
    const Point first = touching_point(foot, upper, upper_radius, 1);
    const Point second = touching_point(between, upper, upper_radius, -1);
    const Point third = touching_point(between, lower, lower_radius, -1);
    const Point fourth = touching_point(hand, lower, lower_radius, 1);
    return {{Pen(foot.x, foot.y)
                 .line(first.x, first.y)
                 .arc(upper.x, upper.y, second.x, second.y, 1)
                 .line(third.x, third.y)
                 .arc(lower.x, lower.y, fourth.x, fourth.y, -1)
                 .line(hand.x, hand.y)
                 .start(StrokeEnd::level)
                 .open()},
            {}};
}

Skeleton draw_question(const LetterMeasures& m) {
    const double right = m.width(0.54, 2 * m.stroke + m.gap) - m.half;
    const double x = (m.half + right) / 2;
    const double foot = 2 * dot_radius(m) + m.gap;
    const double neck = std::max(0.42, foot + m.half + 0.06);
    const double top = std::max(m.round_top(), neck + m.stroke + m.gap);
    const double side = (neck + top) / 2;
    Pen pen = Pen(m.half, side)
                  .plumb_to_level(x, top)
                  .level_to_plumb(right, side)
                  .plumb_to_level(x, neck)
                  .line(x, foot);
    const double start =
        start_height(m, pen, side + 0.03, top - 0.004, {Pen(x, neck + m.half).line(x, foot).open()});
    return {{pen.start_at_height(start).open()}, {dot(m, x, dot_radius(m))}};
}

Skeleton draw_exclamation(const LetterMeasures& m) {
    const double foot = 2 * dot_radius(m) + m.gap + 0.001;
    return {{stem(0, foot, std::max(1.0, foot + 1.5 * m.stroke))}, {dot(m, 0, dot_radius(m))}};
}

Skeleton draw_full_stop(const LetterMeasures& m) {
    return {{}, {dot(m, 0, dot_radius(m))}};
}
Skeleton draw_comma(const LetterMeasures& m) {
    return {{comma(m, 0, m.stroke)}, {}};
}
double upper_dot(const LetterMeasures& m) {
    return std::max(0.60, 2 * m.stroke + m.gap);
}
Skeleton draw_colon(const LetterMeasures& m) {
    return {{}, {dot(m, 0, dot_radius(m)), dot(m, 0, upper_dot(m))}};
}
Skeleton draw_semicolon(const LetterMeasures& m) {
    return {{comma(m, 0, m.stroke)}, {dot(m, 0.02, upper_dot(m))}};
}

Skeleton draw_apostrophe(const LetterMeasures&) {
    return {{stem(0, 0.68)}, {}};
}
Skeleton draw_double_mark(const LetterMeasures& m) {
    return {{stem(0, 0.68), stem(m.stroke + std::max(0.09, m.gap), 0.68)}, {}};
}
Skeleton draw_opening(const LetterMeasures& m) {
    return {{comma(m, 0, 1, true)}, {}};
}
Skeleton draw_closing(const LetterMeasures& m) {
    return {{comma(m, 0, 1)}, {}};
}
Skeleton draw_double_opening(const LetterMeasures& m) {
    return {commas(m, 1, true), {}};
}
Skeleton draw_double_closing(const LetterMeasures& m) {
    return {commas(m, 1, false), {}};
}
Skeleton draw_double_low(const LetterMeasures& m) {
    return {commas(m, m.stroke, false), {}};
}

Skeleton draw_hyphen(const LetterMeasures&) {
    return {{bar(middle_height - 0.02, 0, 0.33)}, {}};
}
Skeleton draw_short_dash(const LetterMeasures&) {
    return {{bar(middle_height - 0.02, 0, 0.55)}, {}};
}
Skeleton draw_long_dash(const LetterMeasures&) {
    return {{bar(middle_height - 0.02, 0, 1.0)}, {}};
}

// An arc through three points: both ends and a bulge to one side.
Skeleton parenthesis(const LetterMeasures& m, double bulge) {
    const double low = -0.14 + m.half / 2;
    const double high = 1.06 - m.half / 2;
    const double half_height = (high - low) / 2;
    const double reach = std::abs(bulge);
    const double radius = (half_height * half_height + reach * reach) / (2 * reach);
    const double x = bulge > 0 ? bulge - radius : bulge + radius;
    return {{Pen(0, low).arc(x, (low + high) / 2, 0, high, bulge > 0 ? -1 : 1).open()}, {}};
}
Skeleton draw_opening_parenthesis(const LetterMeasures& m) {
    return parenthesis(m, -0.18);
}
Skeleton draw_closing_parenthesis(const LetterMeasures& m) {
    return parenthesis(m, 0.18);
}

Skeleton draw_slash(const LetterMeasures&) {
    return {{Pen(0, -0.06).line(0.44, 1.06).start(StrokeEnd::level).end(StrokeEnd::level).open()}, {}};
}
Skeleton draw_plus(const LetterMeasures& m) {
    const double reach = std::max(0.29, 1.5 * m.stroke);
    return {{bar(middle_height, 0, 2 * reach), stem(reach, middle_height - reach, middle_height + reach)},
            {}};
}
Skeleton draw_equals(const LetterMeasures& m) {
    const double apart = std::max(0.13, (m.stroke + m.gap) / 2);
    return {{bar(middle_height + apart, 0, 0.58), bar(middle_height - apart, 0, 0.58)}, {}};
}

Skeleton draw_number_sign(const LetterMeasures& m) {
    const double apart = std::max(0.14, (m.stroke + m.gap) / 2);
    const double reach = apart + m.half + 0.11;
    return {{bar(0.5 + apart, 0, 2 * reach), bar(0.5 - apart, 0, 2 * reach), stem(reach - apart),
             stem(reach + apart)},
            {}};
}

// Three strokes through one point, at angles of 60 degrees.
Skeleton draw_asterisk(const LetterMeasures& m) {
    const double reach = std::max(0.24, 1.9 * m.stroke);
    const double y = 1 - reach;
    const double aside = reach * std::sqrt(0.75);
    const double rise = reach / 2;
    return {{stem(0, y - reach, y + reach), Pen(-aside, y - rise).line(aside, y + rise).open(),
             Pen(-aside, y + rise).line(aside, y - rise).open()},
            {}};
}

double small_ring(const LetterMeasures& m, double by_eye) {
    return std::max(by_eye, m.half + m.gap / 2 + 0.001);
}
Chain ring(double x, double y, double radius) {
    return oval(x - radius, x + radius, y - radius, y + radius);
}

Skeleton draw_percent(const LetterMeasures& m) {
    const double radius = small_ring(m, 0.125);
    const double edge = radius + m.half;
    // From a ring's middle to the slanting stroke's.
    const double clear = radius + m.stroke + m.gap + 0.001;
    const double rise = std::max(1.0, 2 * edge);
    const double run = 0.42;
    const double length = std::sqrt(rise * rise + run * run);
    const double high = rise / 2 - edge;
    // The ring stands beside the stroke's middle line, which is at `run / rise * high` there.
    const double aside = clear * length / rise - run / rise * high;
    const double x = std::max(aside, run / 2);
    return {{ring(-x, rise / 2 + high, radius), ring(x, rise / 2 - high, radius),
             Pen(-run / 2, 0).line(run / 2, rise).start(StrokeEnd::level).end(StrokeEnd::level).open()},
            {}};
}

Skeleton draw_middle_dot(const LetterMeasures& m) {
    return {{}, {dot(m, 0, middle_height)}};
}
Skeleton draw_bullet(const LetterMeasures& m) {
    return {{}, {{{0, -middle_height}, std::max(0.16, 1.2 * m.stroke)}}};
}
Skeleton draw_degree(const LetterMeasures& m) {
    const double radius = small_ring(m, 0.13);
    return {{ring(0, 1 + m.overshoot - radius - m.half, radius)}, {}};
}

// A ring with a stem beside it, whose foot turns and goes all the way round.
Skeleton draw_at(const LetterMeasures& m) {
    const double room = m.stroke + std::max(0.12, m.gap + 0.001);
    const double inner = small_ring(m, std::max(0.16, room / 2 + 0.01));
    const double outer = inner + room;
    const double y = middle_height;
    const double turn = room / 2;
    return {{ring(0, y, inner), Pen(inner, y)
                                    .line(inner, y - inner + turn)
                                    .plumb_to_level(inner + turn, y - inner)
                                    .level_to_plumb(outer, y - inner + turn)
                                    .line(outer, y)
                                    .plumb_to_level(0, y + outer)
                                    .level_to_plumb(-outer, y)
                                    .plumb_to_level(0, y - outer)
                                    .line(outer - 0.1, y - outer)
                                    .open()},
            {}};
}

}  // namespace

const std::vector<LetterShape>& sign_shapes() {
    static const std::vector<LetterShape> shapes{{"&", draw_ampersand},
                                                 {"?", draw_question},
                                                 {"!", draw_exclamation},
                                                 {".", draw_full_stop},
                                                 {",", draw_comma},
                                                 {":", draw_colon},
                                                 {";", draw_semicolon},
                                                 {"'", draw_apostrophe},
                                                 {"\"", draw_double_mark},
                                                 {"‘", draw_opening},
                                                 {"’", draw_closing},
                                                 {"‚", draw_comma},
                                                 {"“", draw_double_opening},
                                                 {"”", draw_double_closing},
                                                 {"„", draw_double_low},
                                                 {"-", draw_hyphen},
                                                 {"‐", draw_hyphen},
                                                 {"‑", draw_hyphen},
                                                 {"–", draw_short_dash},
                                                 {"—", draw_long_dash},
                                                 {"(", draw_opening_parenthesis},
                                                 {")", draw_closing_parenthesis},
                                                 {"/", draw_slash},
                                                 {"+", draw_plus},
                                                 {"=", draw_equals},
                                                 {"#", draw_number_sign},
                                                 {"@", draw_at},
                                                 {"*", draw_asterisk},
                                                 {"%", draw_percent},
                                                 {"·", draw_middle_dot},
                                                 {"•", draw_bullet},
                                                 {"°", draw_degree}};
    return shapes;
}

}  // namespace lode
