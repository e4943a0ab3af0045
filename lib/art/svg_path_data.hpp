#pragma once
// The path data of an SVG document (SVG 1.1, chapter 8.3), and its basic shapes, as lines and cubics.

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include <letterlode/path.hpp>

namespace lode {

struct Subpath {
    Contour contour;
    bool closed = false;  // the contour then ends where it starts
};

struct PathData {
    std::vector<Subpath> subpaths;
    std::optional<std::size_t> fault;  // the byte at which the data is no path data
};

// Reads no more than so many segments: one more is a fault. Linear.
[[nodiscard]] PathData read_path_data(std::string_view data, std::size_t most_segments);

// An elliptical arc as SVG gives it, from where the contour stands: radii that are too small are enlarged, an
// arc of no radius is a line, an arc to where it starts is nothing. At most 4.3e-6 of the radii off.
void append_elliptical_arc(Contour& contour, double rx, double ry, double degrees, bool large, bool sweep,
                           Point to);

[[nodiscard]] Subpath ellipse_outline(Point centre, double rx, double ry);
// Radii are cut down to half of the sides.
[[nodiscard]] Subpath rectangle_outline(const Box& box, double rx, double ry);
// Adds the line back to the start where there is something to add.
void close(Subpath& subpath);

}  // namespace lode
