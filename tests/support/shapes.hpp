#pragma once
// Outlines for tests: exact ones, and random ones that every machine draws alike.

#include <letterlode/path.hpp>
#include <random>
#include <vector>

namespace lode::test {

Path rectangle(double left, double top, double right, double bottom);

class RandomShapes {
  public:
    explicit RandomShapes(unsigned seed) : numbers_(seed) {}
    double between(double least, double most);
    // A closed curve through points about a centre, in the order of their angles: it never crosses itself.
    Contour pebble(Point centre, double radius, int points);
    // Lines and cubics between points drawn anywhere: crosses itself as it likes.
    Contour scribble(Point centre, double reach, int points);
    // Both edges of a stroke along a winding way: so many cubics.
    Contour brush(Point start, double step, double width, int cubics);

  private:
    std::mt19937 numbers_;
};

// Each curve in so many straight parts.
std::vector<std::vector<Point>> rings(const Path& path, int parts_of_a_curve);
std::size_t segments(const Path& path);

}  // namespace lode::test
