#pragma once
// A stroke of one breadth along straight lines and quarter turns that follow each other smoothly, with a knob
// at either end. Its edges are true parallels: lines, and arcs about the turns' own centres.

#include <cstddef>
#include <vector>

#include <letterlode/path.hpp>

namespace lode {

enum class Turn : bool { clockwise, anticlockwise };  // to the eye

class Spine {
  public:
    static constexpr Point left{-1, 0};
    static constexpr Point right{1, 0};

    // Headings are along the axes, and of length 1.
    Spine(Point start, Point heading) : start_(start), end_(start), heading_(heading) {}

    void straight(double length);
    void turn(double radius, Turn turn);
    [[nodiscard]] Point end() const { return end_; }

    // The outline, as path.hpp asks for it. Turns must have a radius over half of the breadth, and knobs a
    // radius of at least half of it; the last piece and the first must be longer than the knob's radius. It
    // does not look for places where the stroke runs into itself.
    [[nodiscard]] Path stroke(double breadth, double start_knob, double end_knob) const;

    // The heading that so many quarter turns lead to `heading`.
    [[nodiscard]] static Point before(Point heading, std::size_t turns, Turn turn);

  private:
    struct Piece {
        Point from;
        Point to;
        Point heading;  // at `from`
        bool round;
        Point centre;  // of no meaning where straight
        Turn turn;
    };

    Point start_;
    Point end_;
    Point heading_;
    std::vector<Piece> pieces_;
};

}  // namespace lode
