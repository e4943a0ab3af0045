#include "art/optical_middle.hpp"

#include <array>

#include "art/cubic.hpp"

namespace lode {

namespace {

// Gauss and Legendre's rule of five points on 0 to 1, exact for polynomials of degree 9 (Abramowitz and
// Stegun, Handbook of Mathematical Functions, 1964, table 25.4); what is integrated here has degree 8.
struct Node {
    double at;
    double weight;
};
constexpr double inner = 0.5384693101056831 / 2;
constexpr double outer = 0.9061798459386640 / 2;
constexpr std::array<Node, 5> nodes{{{0.5 - outer, 0.2369268850561891 / 2},
                                     {0.5 - inner, 0.4786286704993665 / 2},
                                     {0.5, 0.5688888888888889 / 2},
                                     {0.5 + inner, 0.4786286704993665 / 2},
                                     {0.5 + outer, 0.2369268850561891 / 2}}};

}  // namespace

double centre_of_ink(const Path& path) {
    const double middle = bounds(path).centre().x;
    // Green's theorem, about the middle of the box: the area is the integral of x dy along the outline, its
    // moment that of x^2 / 2 dy.
    double area = 0, moment = 0;
    for (const Contour& contour : path.contours)
        each_piece(contour, [&](const Cubic& piece) {
            for (const Node& node : nodes) {
                const double x = piece.at(node.at).x - middle;
                const double dy = node.weight * piece.speed(node.at).y;
                area += x * dy;
                moment += x * x / 2 * dy;
            }
        });
    return area == 0 ? middle : middle + moment / area;
}

double optical_middle(const Path& path) {
    return (bounds(path).centre().x + centre_of_ink(path)) / 2;
}

}  // namespace lode
