#include "art/skeleton.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace lode {

namespace {

Point down(Point up) {
    return {up.x, -up.y};
}

}  // namespace

Pen& Pen::line(double x, double y) {
    chain_.edges.push_back(ArcEdge::line(down(here_), {x, -y}));
    here_ = {x, y};
    return *this;
}

Pen& Pen::arc(double centre_x, double centre_y, double x, double y, int turn) {
    chain_.edges.push_back(ArcEdge::arc(down(here_), {x, -y}, {centre_x, -centre_y}, turn));
    here_ = {x, y};
    return *this;
}

Pen& Pen::level_to_plumb(double x, double y) {
    return quarter(x, y, true);
}
Pen& Pen::plumb_to_level(double x, double y) {
    return quarter(x, y, false);
}

Pen& Pen::quarter(double x, double y, bool level_first) {
    const double right = x - here_.x;
    const double up = y - here_.y;
    const double radius = std::min(std::abs(right), std::abs(up));
    const double aside = std::copysign(radius, right);
    const double rise = std::copysign(radius, up);
    const bool clockwise = level_first == ((right > 0) != (up > 0));
    const int turn = clockwise ? 1 : -1;
    constexpr double round = 1e-9;
    const bool tall = std::abs(up) > std::abs(right) + round;
    const bool broad = std::abs(right) > std::abs(up) + round;
    // The straight rest comes first where it leads into the arc.
    if (level_first && broad) line(x - aside, here_.y);
    if (!level_first && tall) line(here_.x, y - rise);
    const Point bend = level_first ? Point{x, here_.y + rise} : Point{here_.x + aside, y};
    const Point centre = level_first ? Point{here_.x, bend.y} : Point{bend.x, here_.y};
    arc(centre.x, centre.y, bend.x, bend.y, turn);
    if ((level_first && tall) || (!level_first && broad)) line(x, y);
    return *this;
}

Pen& Pen::start(StrokeEnd how) {
    chain_.start = how;
    return *this;
}
Pen& Pen::end(StrokeEnd how) {
    chain_.end = how;
    return *this;
}

void Pen::cut(bool at_start, bool level, double at) {
    constexpr double far = 100;
    const ArcEdge line = level ? ArcEdge::line({-far, at}, {far, at}) : ArcEdge::line({at, -far}, {at, far});
    std::vector<ArcEdge>& edges = chain_.edges;
    while (!edges.empty()) {
        ArcEdge& edge = at_start ? edges.front() : edges.back();
        for (const Point p : meeting_points(edge, line)) {
            if (!spans(edge, p)) continue;
            // A stump would leave no room to round the end's corners.
            constexpr double stump = 0.07;
            const Point kept = at_start ? edge.to : edge.from;
            const bool short_rest = std::abs(kept.x - p.x) < stump && std::abs(kept.y - p.y) < stump;
            if (short_rest && edges.size() > 1)
                edges.erase(at_start ? edges.begin() : edges.end() - 1);
            else
                (at_start ? edge.from : edge.to) = p;
            return;
        }
        edges.erase(at_start ? edges.begin() : edges.end() - 1);
    }
    throw std::logic_error("a stroke is cut where it does not come by");
}
Pen& Pen::start_at_height(double y) {
    cut(true, true, -y);
    return *this;
}
Pen& Pen::end_at_height(double y) {
    cut(false, true, -y);
    return *this;
}
Pen& Pen::start_at(double x) {
    cut(true, false, x);
    return *this;
}
Pen& Pen::end_at(double x) {
    cut(false, false, x);
    return *this;
}

Pen& Pen::low(double y) {
    chain_.frame.bottom = -y;
    return *this;
}
Pen& Pen::high(double y) {
    chain_.frame.top = -y;
    return *this;
}
Pen& Pen::left(double x) {
    chain_.frame.left = x;
    return *this;
}
Pen& Pen::right(double x) {
    chain_.frame.right = x;
    return *this;
}

Chain Pen::closed() const {
    Chain chain = chain_;
    chain.closed = true;
    if (chain.edges.back().to != chain.edges.front().from)
        chain.edges.push_back(ArcEdge::line(chain.edges.back().to, chain.edges.front().from));
    return chain;
}

Chain oval(double left, double right, double low, double high) {
    const double x = (left + right) / 2;
    const double y = (low + high) / 2;
    return Pen(x, high)
        .level_to_plumb(right, y)
        .plumb_to_level(x, low)
        .level_to_plumb(left, y)
        .plumb_to_level(x, high)
        .closed();
}

double distance(Point p, const Chain& chain) {
    const auto between = [](Point a, Point b) {
        return std::sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
    };
    double nearest = std::numeric_limits<double>::infinity();
    for (const ArcEdge& edge : chain.edges) {
        nearest = std::min({nearest, between(p, edge.from), between(p, edge.to)});
        if (edge.turn == 0) {
            const Point d = direction_at_start(edge);
            const double t = (p.x - edge.from.x) * d.x + (p.y - edge.from.y) * d.y;
            if (t > 0 && t < between(edge.from, edge.to))
                nearest = std::min(nearest, std::abs((p.x - edge.from.x) * d.y - (p.y - edge.from.y) * d.x));
        } else if (between(p, edge.centre) > 0 && spans(edge, p)) {
            nearest = std::min(nearest, std::abs(between(p, edge.centre) - edge.radius));
        }
    }
    return nearest;
}

Point touching_point(Point from, Point centre, double radius, int turn) {
    const Point away{from.x - centre.x, from.y - centre.y};
    const double squared = away.x * away.x + away.y * away.y;
    const double along = radius * radius / squared;
    const double aside = turn * radius * std::sqrt(std::max(0.0, squared - radius * radius)) / squared;
    // With y up, the one to the left of the line from the point to the centre goes on clockwise.
    return {centre.x + along * away.x + aside * away.y, centre.y + along * away.y - aside * away.x};
}

double least(double low, double high, const std::function<bool(double)>& holds) {
    if (holds(low)) return low;
    for (int i = 0; i < 40; ++i) {
        const double middle = (low + high) / 2;
        (holds(middle) ? high : low) = middle;
    }
    return high;
}

}  // namespace lode
