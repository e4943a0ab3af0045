#include "art/ring.hpp"

#include <stdexcept>

namespace lode {

Path ring(Point first, Point last, double outer_radius, double line) {
    if (!(line > 0) || !(outer_radius > line))
        throw std::invalid_argument("a ring needs a line, and a radius that leaves a hole");
    Path path = capsule(first, last, outer_radius);
    path.contours.push_back(reversed(capsule(first, last, outer_radius - line).contours.front()));
    return path;
}

}  // namespace lode
