#include <cstdint>
#include <cstdlib>

#include <letterlode/grid.hpp>

namespace lode {
namespace {

constexpr std::array<std::string_view, 5> names{"rectangle", "ellipse", "heart", "diamond", "star"};

// The centre of a cell in the square from (-1, -1) to (1, 1), y upward, as two fractions. Shapes are the same
// on both sides, and a centre may lie right on an edge: so `across` is the distance from the middle, and
// edges are asked for in whole numbers or in sums that every machine rounds alike.
struct Centre {
    std::int64_t across;   // x = +-across / columns
    std::int64_t up;       // y = up / rows
    std::int64_t columns;  // with rows at most max_cells in all, so that their products can be squared
    std::int64_t rows;
};

// Where the number of columns or rows is even, the two in the middle both count as the middle: a point of a
// shape is then two cells wide, and does not fall between them.
Centre centre_of(Cell cell, Size size) {
    const auto even = [](int side) { return side % 2 == 0 ? 1 : 0; };
    const int across = std::abs(2 * cell.column + 1 - size.columns) - even(size.columns);
    const int up = size.rows - 2 * cell.row - 1;
    return {across, up > 0 ? up - even(size.rows) : up + even(size.rows), size.columns - even(size.columns),
            size.rows - even(size.rows)};
}

bool in_ellipse(const Centre& at) {
    const std::int64_t x = at.across * at.rows;
    const std::int64_t y = at.up * at.columns;
    const std::int64_t one = at.columns * at.rows;
    return x * x + y * y <= one * one;
}

bool in_diamond(const Centre& at) {
    return at.across * at.rows + std::abs(at.up) * at.columns <= at.columns * at.rows;
}

// Two discs of radius 11/20, which touch the top and the sides, and a point at the foot whose sides rise by
// 5/4: close to the discs' tangents. A full body, in which words find room, and a shallow dent.
bool in_heart(const Centre& at) {
    const std::int64_t one = at.columns * at.rows;
    const std::int64_t x = at.across * at.rows;
    const std::int64_t y = at.up * at.columns;
    const std::int64_t from_disc_x = 20 * x - 9 * one;
    const std::int64_t from_disc_y = 20 * y - 9 * one;
    const std::int64_t radius = 11 * one;
    if (from_disc_x * from_disc_x + from_disc_y * from_disc_y <= radius * radius) return true;
    const bool below_discs = 10 * y <= one;
    if (below_discs) return 4 * (y + one) >= 5 * x;
    const bool between_discs = from_disc_y <= 0 && from_disc_x <= 0;
    return between_discs;
}

// A star of five points, a little fuller than the pentagram (its notches at 0.55 of its points' distance), so
// that its arms hold letters; stretched to the square.
bool in_star(const Centre& at) {
    struct Point {
        double x;
        double y;
    };
    // From the upper point to the lower notch: sines and cosines of multiples of 36 degrees, stretched.
    constexpr std::array<Point, 6> outline{{{0.0, 1.0},
                                            {0.339919, 0.386362},
                                            {1.0, 0.236068},
                                            {0.55, -0.293475},
                                            {0.618034, -1.0},
                                            {0.0, -0.713638}}};
    constexpr Point middle{0.0, -0.105573};
    const Point centre{static_cast<double>(at.across) / static_cast<double>(at.columns),
                       static_cast<double>(at.up) / static_cast<double>(at.rows)};
    // Positive where `to` lies clockwise of `from`, seen from `about`.
    const auto turn = [](const Point& about, const Point& from, const Point& to) {
        return (from.y - about.y) * (to.x - about.x) - (from.x - about.x) * (to.y - about.y);
    };
    // The half is made of triangles that meet in the middle.
    for (std::size_t corner = 0; corner + 1 < outline.size(); ++corner)
        if (turn(middle, outline[corner], centre) >= 0 && turn(middle, centre, outline[corner + 1]) >= 0)
            return turn(outline[corner], outline[corner + 1], centre) >= 0;
    return false;
}

bool in_shape(Shape shape, const Centre& at) {
    switch (shape) {
        case Shape::rectangle:
            return true;
        case Shape::ellipse:
            return in_ellipse(at);
        case Shape::heart:
            return in_heart(at);
        case Shape::diamond:
            return in_diamond(at);
        case Shape::star:
            return in_star(at);
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
    if (shape == Shape::rectangle) return Mask(size);
    Mask mask(size, false);
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column)
            mask.set({row, column}, in_shape(shape, centre_of({row, column}, size)));
    return mask;
}

}  // namespace lode
