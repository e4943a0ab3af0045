#include "art/affine.hpp"

#include <cmath>

namespace lode {

Affine operator*(const Affine& o, const Affine& i) {
    return {o.a * i.a + o.c * i.b, o.b * i.a + o.d * i.b,       o.a * i.c + o.c * i.d,
            o.b * i.c + o.d * i.d, o.a * i.e + o.c * i.f + o.e, o.b * i.e + o.d * i.f + o.f};
}

Contour mapped(const Contour& contour, const Affine& map) {
    Contour result{map(contour.start), {}};
    result.segments.reserve(contour.segments.size());
    for (const Segment& s : contour.segments)
        result.segments.push_back({s.curved, map(s.control1), map(s.control2), map(s.to)});
    return result;
}

AngleTurn turn_of(double degrees) {
    // Remainders are exact. What is left is at most 45 degrees, for which ten terms of Taylor's series leave
    // less than 1e-19.
    const double rest = std::fmod(degrees, 360.0);
    const double quarters = std::floor(rest / 90 + 0.5);
    constexpr double radian = 3.14159265358979323846 / 180;
    const double x = (rest - quarters * 90) * radian;
    const double square = x * x;
    double cosine = 1, sine = 1;
    for (int k = 18; k >= 2; k -= 2) {
        cosine = 1 - cosine * square / (k * (k - 1));
        sine = 1 - sine * square / (k * (k + 1));
    }
    sine *= x;
    switch ((static_cast<int>(quarters) + 8) % 4) {
        case 0:
            return {cosine, sine};
        case 1:
            return {-sine, cosine};
        case 2:
            return {-cosine, -sine};
        default:
            return {sine, -cosine};
    }
}

}  // namespace lode
