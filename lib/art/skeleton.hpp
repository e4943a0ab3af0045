#pragma once
// Drawing a letter's skeleton with ruler and compass. x runs to the right from the letter's left side and y
// up from the baseline, in cap heights; what is kept has y down, as all outlines have.

#include <functional>
#include <vector>

#include "art/stroked.hpp"

namespace lode {

struct Dot {
    Point centre;
    double radius;
};

struct Skeleton {
    std::vector<Chain> chains;
    std::vector<Dot> dots;
};

class Pen {
  public:
    Pen(double x, double y) : here_{x, y} {}

    Pen& line(double x, double y);
    // Round a centre; clockwise to the eye where turn is 1.
    Pen& arc(double centre_x, double centre_y, double x, double y, int turn);
    // A quarter of an oval, from a level start to a plumb end or the other way: an arc of a quarter turn, and
    // a straight rest at the side of the longer half axis.
    Pen& level_to_plumb(double x, double y);
    Pen& plumb_to_level(double x, double y);

    Pen& start(StrokeEnd how);
    Pen& end(StrokeEnd how);
    // Starts, or ends, where the chain first comes by this height, or this far to the right.
    Pen& start_at_height(double y);
    Pen& end_at_height(double y);
    Pen& start_at(double x);
    Pen& end_at(double x);
    // Sharp corners are cut off there.
    Pen& low(double y);
    Pen& high(double y);
    Pen& left(double x);
    Pen& right(double x);

    [[nodiscard]] Chain open() const { return chain_; }
    [[nodiscard]] Chain closed() const;

  private:
    Point here_;  // y up
    Chain chain_;

    Pen& quarter(double x, double y, bool level_first);
    void cut(bool at_start, bool level, double at);
};

// An oval through the middles of the sides of a box.
[[nodiscard]] Chain oval(double left, double right, double low, double high);

// Where a straight line from the point touches a circle, the circle going on clockwise to the eye (turn 1)
// from there, or the other way. y up.
[[nodiscard]] Point touching_point(Point from, Point centre, double radius, int turn);

// From a point (y down, as in chains) to the nearest of the skeleton.
[[nodiscard]] double distance(Point p, const Chain& chain);

// The least value between both for which the condition holds, which must hold from some value on: by halving,
// to within 1e-9.
[[nodiscard]] double least(double low, double high, const std::function<bool(double)>& holds);

}  // namespace lode
