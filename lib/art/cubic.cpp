#include "art/cubic.hpp"

namespace lode {

Point Cubic::at(double t) const {
    if (straight) return t == 1 ? p3 : p0 + t * (p3 - p0);
    const double u = 1 - t;
    const double a = u * u * u, b = 3 * u * u * t, c = 3 * u * t * t, d = t * t * t;
    return {a * p0.x + b * p1.x + c * p2.x + d * p3.x, a * p0.y + b * p1.y + c * p2.y + d * p3.y};
}

Point Cubic::speed(double t) const {
    if (straight) return p3 - p0;
    const double u = 1 - t;
    return 3 * ((u * u) * (p1 - p0) + (2 * u * t) * (p2 - p1) + (t * t) * (p3 - p2));
}

Point Cubic::bend(double t) const {
    if (straight) return {};
    return 6 * ((1 - t) * ((p2 - p1) - (p1 - p0)) + t * ((p3 - p2) - (p2 - p1)));
}

Cubic Cubic::part(double first, double last) const {
    const Point from = first == 0 ? p0 : at(first);
    const Point to = last == 1 ? p3 : at(last);
    if (straight) return line(from, to);
    const double third = (last - first) / 3;
    return {from, from + third * speed(first), to - third * speed(last), to, false};
}

Cubic Cubic::first_half() const {
    const auto middle = [](Point a, Point b) { return 0.5 * (a + b); };
    const Point a = middle(p0, p1);
    const Point m = middle(p1, p2);
    const Point b = middle(a, m);
    return {p0, a, b, middle(b, middle(m, middle(p2, p3))), straight};
}

Cubic Cubic::between(Point from, Point to) const {
    if (straight) return line(from, to);
    return {from, p1 + (from - p0), p2 + (to - p3), to, false};
}

Point Cubic::way_out() const {
    for (const Point p : {p1, p2, p3})
        if (p != p0) return (1 / length(p - p0)) * (p - p0);
    return {};
}

Point Cubic::way_in() const {
    const Point back = reversed().way_out();
    return {-back.x, -back.y};
}

}  // namespace lode
