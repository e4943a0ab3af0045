// Latin letters that Unicode does not take apart into a letter and marks.

#include <algorithm>
#include <cmath>

#include "art/constructed_letters.hpp"

namespace lode {

namespace {

Skeleton shape_of(const std::vector<LetterShape>& shapes, std::string_view letter, const LetterMeasures& m) {
    return std::find_if(shapes.begin(), shapes.end(),
                        [&](const LetterShape& s) { return s.letter == letter; })
        ->draw(m);
}
Skeleton capital(std::string_view letter, const LetterMeasures& m) {
    return shape_of(capital_shapes(), letter, m);
}
Skeleton small(std::string_view letter, const LetterMeasures& m) {
    return shape_of(small_shapes(), letter, m);
}
Skeleton with(Skeleton skeleton, const Chain& chain) {
    skeleton.chains.push_back(chain);
    return skeleton;
}

Skeleton draw_ae(const LetterMeasures& m) {
    const double foot_bar = std::max(0.29, m.half + m.gap);
    const double run = 0.50;
    // The counter between the slant, the stem and the bars.
    const double offset = slant_offset(m, run);
    const double apex = offset + run * m.top();
    const double slope = std::sqrt(1 + run * run);
    const double stem_x = least(apex, apex + 1, [&](double x) {
        const double base = x - m.half - (offset + run * (foot_bar + m.half) + offset);
        // A right-angled corner; the diameter of its inscribed circle.
        return base >= 0.22 && base * (1 + (1 - slope) / run) >= m.gap;
    });
    const double width = stem_x + m.half + 0.40;
    const double middle = std::min(0.515, m.highest_bar());
    return {{Pen(offset, 0).line(apex, m.top()).line(width, m.top()).start(StrokeEnd::level).high(1).open(),
             Pen(stem_x, m.top()).line(stem_x, m.bottom()).line(width, m.bottom()).open(),
             bar(middle, stem_x, width - 0.045), bar(foot_bar, offset + run * foot_bar, stem_x)},
            {}};
}

Skeleton draw_oe(const LetterMeasures& m) {
    const double turn = m.width(0.44, 1.5 * m.stroke + m.gap + 0.05);
    const double stem_x = turn + 0.04;
    const double width = stem_x + m.half + 0.42;
    const double middle = std::min(0.515, m.highest_bar());
    return {{Pen(width, m.top())
                 .line(turn, m.top())
                 .level_to_plumb(m.half, 0.5)
                 .plumb_to_level(turn, m.bottom())
                 .line(width, m.bottom())
                 .open(),
             stem(stem_x, m.bottom(), m.top()), bar(middle, stem_x, width - 0.045)},
            {}};
}

// An oval with a slanting stroke across, both halves of its counter open.
Skeleton slashed(const LetterMeasures& m, double by_eye, double height) {
    const double width = std::max(m.width(by_eye), 3 * m.stroke + 2.3 * m.gap);
    const double beyond = 0.06;
    return {{oval(m.half, width - m.half, m.round_bottom(), height - m.half + m.overshoot),
             Pen(0.22 * width, -beyond).line(0.78 * width, height + beyond).open()},
            {}};
}
Skeleton draw_o_slash(const LetterMeasures& m) {
    return slashed(m, 0.88, 1);
}
Skeleton draw_small_o_slash(const LetterMeasures& m) {
    return slashed(m, 0.62, m.x_height);
}

Skeleton draw_l_slash(const LetterMeasures& m) {
    const double reach = m.half + 0.11;
    const double y = std::max(0.5, m.stroke + m.gap + 0.2);
    return with(capital("L", m),
                Pen(m.half - reach, y - 0.55 * reach).line(m.half + reach, y + 0.55 * reach).open());
}
Skeleton draw_small_l_slash(const LetterMeasures& m) {
    const double reach = m.half + 0.10;
    const double y = 0.55 * m.ascender;
    return {{stem(m.half, 0, m.ascender),
             Pen(m.half - reach, y - 0.55 * reach).line(m.half + reach, y + 0.55 * reach).open()},
            {}};
}

Skeleton draw_d_bar(const LetterMeasures& m) {
    return with(capital("D", m), bar(0.5, -0.11, m.stroke + 0.13));
}
Skeleton draw_small_d_bar(const LetterMeasures& m) {
    const double x = m.width(0.60, 2 * m.stroke + m.gap) - m.half;
    return with(small("d", m),
                bar(m.x_height + m.overshoot + m.gap + m.half + 0.001, x - m.half - 0.16, x + m.half + 0.09));
}

Skeleton draw_thorn(const LetterMeasures& m) {
    const double bowl = std::max(0.19, (m.stroke + m.gap) / 2);
    const double middle = 0.5;
    const double turn = std::max(m.width(0.64) - m.half - bowl, m.half + 0.01);
    return {{stem(m.half), Pen(m.half, middle + bowl)
                               .line(turn, middle + bowl)
                               .level_to_plumb(turn + bowl, middle)
                               .plumb_to_level(turn, middle - bowl)
                               .line(m.half, middle - bowl)
                               .open()},
            {}};
}
Skeleton draw_small_thorn(const LetterMeasures& m) {
    return with(small("p", m), stem(m.half, m.x_height / 2, m.ascender));
}

Skeleton draw_eth(const LetterMeasures& m) {
    const double right = m.width(0.60, 2 * m.stroke + m.gap) - m.half;
    const double side = m.x_height / 2;
    const double cross = m.x_height + m.overshoot + m.gap + m.half + 0.001;
    const double high = cross + m.half + 0.17;
    // One arc upwards from the bowl's right side.
    const double radius = 1.25 * (high - side);
    const auto x_at = [&](double y) {
        return right - radius + std::sqrt(radius * radius - (y - side) * (y - side));
    };
    return with(with(small("o", m), Pen(right, side).arc(right - radius, side, x_at(high), high, -1).open()),
                bar(cross, x_at(cross) - 0.13 - m.half, x_at(cross) + 0.13 + m.half));
}

// A stem that turns over to the right, and the two bowls of a 3.
Skeleton sharp_s(const LetterMeasures& m, double by_eye, double height) {
    const double right = std::max(m.width(by_eye), 2.5 * m.stroke + m.gap + 0.18) - m.half;
    const double top = height - m.half + m.overshoot;
    const double middle = std::clamp(0.55 * height, m.lowest_bar(), height - 1.5 * m.stroke - m.gap);
    const double upper = (top + middle) / 2;
    const double lower = (middle + m.bottom()) / 2;
    const double x = (m.half + right) / 2 + 0.02;
    // No nearer to the stem than the least gap.
    const double tongue = std::max(m.stroke + m.gap, x - 0.12);
    return {{Pen(m.half, 0)
                 .line(m.half, upper)
                 .plumb_to_level(x, top)
                 .level_to_plumb(right - 0.03, upper)
                 .plumb_to_level(x, middle)
                 .line(tongue, middle)
                 .open(),
             Pen((tongue + x) / 2, middle)
                 .line(x, middle)
                 .level_to_plumb(right, lower)
                 .plumb_to_level(x, m.bottom())
                 .line(tongue, m.bottom())
                 .open()},
            {}};
}
Skeleton draw_sharp_s(const LetterMeasures& m) {
    return sharp_s(m, 0.60, m.ascender);
}
Skeleton draw_capital_sharp_s(const LetterMeasures& m) {
    return sharp_s(m, 0.70, 1);
}

// The small e with another letter's side for its left.
Skeleton draw_small_oe(const LetterMeasures& m) {
    const double width = m.width(0.60, 2 * m.stroke + m.gap);
    Skeleton skeleton = small("o", m);
    for (const Chain& chain : moved(small("e", m), width - m.stroke, 0).chains)
        skeleton.chains.push_back(chain);
    return skeleton;
}
Skeleton draw_small_ae(const LetterMeasures& m) {
    // The a without its stem, which the e's side takes the place of: its bowl is round there too.
    Skeleton skeleton = small("a", m);
    const double right = skeleton.chains.front().edges.back().to.x;
    skeleton.chains.front().edges.back().to.y = -m.x_height / 2;
    const double middle = -skeleton.chains.back().edges.front().from.y;
    const double x = (m.half + right) / 2;
    skeleton.chains.back() = Pen(right, middle)
                                 .line(x, middle)
                                 .level_to_plumb(m.half, (middle + m.round_bottom()) / 2)
                                 .plumb_to_level(x, m.round_bottom())
                                 .level_to_plumb(right, std::min(middle - 0.01, m.x_height / 2))
                                 .open();
    for (const Chain& chain : moved(small("e", m), right - m.half, 0).chains)
        skeleton.chains.push_back(chain);
    return skeleton;
}

}  // namespace

const std::vector<LetterShape>& other_letter_shapes() {
    static const std::vector<LetterShape> shapes{
        {"Æ", draw_ae},          {"Œ", draw_oe},       {"Ø", draw_o_slash},       {"Ł", draw_l_slash},
        {"Đ", draw_d_bar},       {"Ð", draw_d_bar},    {"Þ", draw_thorn},         {"ẞ", draw_capital_sharp_s},
        {"æ", draw_small_ae},    {"œ", draw_small_oe}, {"ø", draw_small_o_slash}, {"ł", draw_small_l_slash},
        {"đ", draw_small_d_bar}, {"ð", draw_eth},      {"þ", draw_small_thorn},   {"ß", draw_sharp_s}};
    return shapes;
}

}  // namespace lode
