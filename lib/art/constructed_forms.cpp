// What letters are made of that more than one of them has.

#include <algorithm>
#include <cmath>

#include "art/constructed_letters.hpp"

namespace lode {

Legs legs(const LetterMeasures& m, double width, double height) {
    Legs result{width, 0, 0};
    result.run = least(
        0, width, [&](double run) { return run * (height - inset) + slant_offset(m, run) >= width / 2; });
    result.offset = slant_offset(m, result.run);
    return result;
}

Chain open_oval(const LetterMeasures& m, double width, double height) {
    const double right = width - m.half;
    const double x = (m.half + right) / 2;
    const double y = height / 2;
    const double top = height - m.half + m.overshoot;
    const double opening = std::max(0.23 * height, (m.gap + m.stroke) / 2);
    return Pen(right, y)
        .plumb_to_level(x, top)
        .level_to_plumb(m.half, y)
        .plumb_to_level(x, m.round_bottom())
        .level_to_plumb(right, y)
        .start_at_height(y + opening)
        .end_at_height(y - opening)
        .open();
}

Chain ess(const LetterMeasures& m, double width, double height) {
    const double right = width - m.half;
    const double upper_right = right - 0.02;
    const double left = m.half;
    const double upper_left = m.half + 0.015;
    const double top = height - m.half + m.overshoot;
    const double middle = std::clamp(0.51 * height, m.lowest_bar(), height - 1.5 * m.stroke - m.gap);
    const double upper = (top + middle) / 2;
    const double lower = (m.round_bottom() + middle) / 2;
    constexpr double tightness = 0.90;
    const double upper_radius = tightness * (upper - middle);
    const double lower_radius = tightness * (middle - lower);
    // The spine touches both circles, one on either side of it: from the point between them that divides
    // their distance as their radii do.
    const Point upper_centre{upper_left + upper_radius, upper};
    const Point lower_centre{right - lower_radius, lower};
    const double share = upper_radius / (upper_radius + lower_radius);
    const Point between{upper_centre.x + share * (lower_centre.x - upper_centre.x),
                        upper_centre.y + share * (lower_centre.y - upper_centre.y)};
    const Point first = touching_point(between, upper_centre, upper_radius, 1);
    const Point second = touching_point(between, lower_centre, lower_radius, 1);
    const double upper_x = (upper_left + upper_right) / 2;
    const double lower_x = (left + right) / 2;
    const Chain spine = Pen(first.x, first.y)
                            .line(second.x, second.y)
                            .arc(lower_centre.x, lower_centre.y, right, lower, 1)
                            .open();
    const Chain spine_seen_from_below = Pen(upper_left, upper)
                                            .arc(upper_centre.x, upper_centre.y, first.x, first.y, -1)
                                            .line(second.x, second.y)
                                            .open();
    Pen pen = Pen(upper_right, upper)
                  .plumb_to_level(upper_x, top)
                  .level_to_plumb(upper_left, upper)
                  .arc(upper_centre.x, upper_centre.y, first.x, first.y, -1)
                  .line(second.x, second.y)
                  .arc(lower_centre.x, lower_centre.y, right, lower, 1)
                  .plumb_to_level(lower_x, m.round_bottom())
                  .level_to_plumb(left, lower);
    const double terminal = upper + 0.25 * (top - upper);
    const double low_terminal = lower - 0.25 * (lower - m.round_bottom());
    const double start = start_height(m, pen, terminal, top - 0.004, {spine});
    const double end = end_height(m, pen, low_terminal, m.round_bottom() + 0.004, {spine_seen_from_below});
    return pen.start_at_height(start).end_at_height(end).open();
}

Chain vee(const LetterMeasures& m, double width, double height) {
    const Legs l = legs(m, width, height);
    const double middle = width / 2;
    const double depth = (middle - l.offset) / l.run;
    return Pen(l.offset, height)
        .line(middle, height - depth)
        .line(width - l.offset, height)
        .start(StrokeEnd::level)
        .end(StrokeEnd::level)
        .low(0)
        .open();
}

Chain double_vee(const LetterMeasures& m, double width, double height) {
    // Four slants of one run. Between their edges, above and below, the least gap.
    const double run = least(0.1, 2, [&](double r) {
        const double offset = slant_offset(m, r);
        return 2 * offset + r * (4 * height - 6 * inset) >= width &&
               2 * r * (height - 2 * inset) - 2 * offset >= m.gap;
    });
    const double outer = run * (height - inset);
    const double inner = run * (height - 2 * inset);
    const double x = slant_offset(m, run);
    return Pen(x, height)
        .line(x + outer, inset)
        .line(x + outer + inner, height - inset)
        .line(x + outer + 2 * inner, inset)
        .line(x + 2 * outer + 2 * inner, height)
        .start(StrokeEnd::level)
        .end(StrokeEnd::level)
        .low(0)
        .high(height)
        .open();
}

std::vector<Chain> crossed(const LetterMeasures& m, double width, double height) {
    const double run = least(0, 2, [&](double r) { return r * height + 2 * slant_offset(m, r) >= width; });
    const double offset = slant_offset(m, run);
    const auto slant = [&](double from, double to) {
        return Pen(from, 0).line(to, height).start(StrokeEnd::level).end(StrokeEnd::level).open();
    };
    return {slant(offset, width - offset), slant(width - offset, offset)};
}

Chain zed(const LetterMeasures& m, double width, double height) {
    const double top = height - m.half;
    // The slant's outer edge meets the letter's side where the bar's lower edge does.
    double corner = width - m.half / 2;
    for (int i = 0; i < 20; ++i) {
        const double run = 2 * corner - width;
        const double rise = top - m.bottom();
        const double length = std::sqrt(run * run + rise * rise);
        corner = width - m.half * (length - run) / rise;
    }
    return Pen(0.015, top)
        .line(corner, top)
        .line(width - corner, m.bottom())
        .line(width, m.bottom())
        .left(0)
        .right(width)
        .open();
}

}  // namespace lode
