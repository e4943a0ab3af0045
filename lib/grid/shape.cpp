#include <cmath>
#include <numbers>

#include <letterlode/grid.hpp>

namespace lode {
namespace {

constexpr std::array<std::string_view, 5> names{"rectangle", "ellipse", "heart", "diamond", "star"};

// Each shape is drawn in the square from (-1, -1) to (1, 1), y upward, and touches all four of its sides.
bool in_ellipse(double x, double y) {
    return x * x + y * y <= 1.0;
}

bool in_diamond(double x, double y) {
    return std::abs(x) + std::abs(y) <= 1.0;
}

// Under two half circles of radius 1/2 whose tops touch y = 1 and above the sides that run from where a line
// through the foot (0, -1) touches them: a heart with a full body, in which words find room.
bool in_heart(double x, double y) {
    constexpr double radius = 0.5;
    constexpr double lobe_y = 1.0 - radius;
    const double side = std::abs(x);
    const double from_lobe = (side - radius) * (side - radius) + (y - lobe_y) * (y - lobe_y);
    if (from_lobe <= radius * radius) return true;
    // The tangent from the foot to the lobe, by its angle from the line between foot and centre.
    const double height = lobe_y + 1.0;
    const double distance = std::hypot(radius, height);
    const double angle = std::atan2(height, radius) - std::asin(radius / distance);
    const double reach = std::sqrt(distance * distance - radius * radius);
    const double touch_y = -1.0 + reach * std::sin(angle);
    const bool above_side = (y + 1.0) * std::cos(angle) >= side * std::sin(angle);
    if (y <= touch_y) return above_side;
    // Above the touching points, what the lobes enclose between them belongs to the heart too.
    return y <= lobe_y && side <= radius;
}

// A star of five points, a little fuller than the pentagram, so that its arms hold letters; stretched to the
// square.
bool in_star(double x, double y) {
    using std::numbers::pi;
    constexpr double inner = 0.55;
    const double half_width = std::sin(2 * pi / 5);
    const double foot = -std::cos(pi / 5);
    const double star_x = x * half_width;
    const double star_y = foot + (y + 1.0) / 2.0 * (1.0 - foot);
    // One tenth of the star serves for all: the angle from the nearest point, 0 to pi/5.
    double angle = std::abs(std::atan2(star_x, star_y));
    angle = std::fmod(angle, 2 * pi / 5);
    if (angle > pi / 5) angle = 2 * pi / 5 - angle;
    const double distance = std::hypot(star_x, star_y);
    // Inside the line from the point (1 at angle 0) to the notch (inner at angle pi/5).
    const double along = distance * std::cos(angle);
    const double across = distance * std::sin(angle);
    const double notch_along = inner * std::cos(pi / 5);
    const double notch_across = inner * std::sin(pi / 5);
    return (1.0 - along) * notch_across >= across * (1.0 - notch_along);
}

bool in_shape(Shape shape, double x, double y) {
    switch (shape) {
        case Shape::rectangle:
            return true;
        case Shape::ellipse:
            return in_ellipse(x, y);
        case Shape::heart:
            return in_heart(x, y);
        case Shape::diamond:
            return in_diamond(x, y);
        case Shape::star:
            return in_star(x, y);
    }
    return false;
}

}  // namespace

std::string_view name(Shape shape) {
    return names[static_cast<unsigned>(shape)];
}

std::optional<Shape> shape_named(std::string_view wanted) {
    for (const Shape shape : all_shapes)
        if (name(shape) == wanted) return shape;
    return std::nullopt;
}

Mask shape_mask(Shape shape, Size size) {
    Mask mask(size, false);
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column) {
            const double x = (2.0 * column + 1.0) / size.columns - 1.0;
            const double y = 1.0 - (2.0 * row + 1.0) / size.rows;
            mask.set({row, column}, in_shape(shape, x, y));
        }
    return mask;
}

}  // namespace lode
