#include "art/registration.hpp"

#include <initializer_list>

namespace lode {

namespace {

constexpr double reach = 3.5;     // from a mark's middle, mm
constexpr double half_arm = 0.5;  // mm: an arm of 1 mm survives (common practice)

Path polygon(Point middle, std::initializer_list<Point> corners) {
    Contour contour;
    for (const Point& corner : corners) {
        const Point at{middle.x + corner.x, middle.y + corner.y};
        if (&corner == corners.begin())
            contour.start = at;
        else
            contour.segments.push_back(Segment::line(at));
    }
    contour.segments.push_back(Segment::line(contour.start));
    return {{contour}};
}

Path cross(Point middle) {
    constexpr double r = reach, a = half_arm;
    return polygon(middle, {{-a, -r},
                            {a, -r},
                            {a, -a},
                            {r, -a},
                            {r, a},
                            {a, a},
                            {a, r},
                            {-a, r},
                            {-a, a},
                            {-r, a},
                            {-r, -a},
                            {-a, -a}});
}

Path square(Point middle) {
    return polygon(middle, {{-reach, -reach}, {reach, -reach}, {reach, reach}, {-reach, reach}});
}

}  // namespace

std::vector<Piece> registration_marks(const BlankSize& blank) {
    constexpr double out = registration_overhang_mm / 2;
    const double right = blank.width_mm + out;
    const double bottom = blank.height_mm + out;
    return {{"registration mark, upper left", square({-out, -out})},
            {"registration mark, upper right", cross({right, -out})},
            {"registration mark, lower left", cross({-out, bottom})},
            {"registration mark, lower right", cross({right, bottom})}};
}

}  // namespace lode
