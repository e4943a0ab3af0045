#include "art/room.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "art/fit_inside.hpp"
#include "art/flatten.hpp"

namespace lode {

Room::Room(const Path& region) {
    for (const Contour& contour : region.contours) {
        const std::vector<Point> points = flattened(contour, fit_tolerance_mm);
        if (points.size() < 3) continue;
        for (std::size_t i = 0; i < points.size(); ++i) {
            const Point a = points[i], b = points[i + 1 == points.size() ? 0 : i + 1];
            edges_.push_back(
                {a, b, {std::min(a.x, b.x), std::min(a.y, b.y), std::max(a.x, b.x), std::max(a.y, b.y)}});
        }
    }
    if (edges_.empty()) return;
    box_ = edges_[0].box;
    for (const Edge& e : edges_)
        box_ = {std::min(box_.left, e.box.left), std::min(box_.top, e.box.top),
                std::max(box_.right, e.box.right), std::max(box_.bottom, e.box.bottom)};
    strips_.resize(static_cast<std::size_t>(std::sqrt(static_cast<double>(edges_.size())) * 4) + 1);
    for (std::size_t i = 0; i < edges_.size(); ++i)
        for (std::size_t s = strip(edges_[i].box.top); s <= strip(edges_[i].box.bottom); ++s)
            strips_[s].push_back(i);
}

std::size_t Room::strip(double y) const {
    const double share = (y - box_.top) / (box_.height() > 0 ? box_.height() : 1);
    const double last = static_cast<double>(strips_.size() - 1);
    return static_cast<std::size_t>(std::clamp(share * static_cast<double>(strips_.size()), 0.0, last));
}

bool Room::inside(Point p) const {
    if (!(p.x > box_.left && p.x < box_.right && p.y > box_.top && p.y < box_.bottom)) return false;
    int winding = 0;
    for (const std::size_t i : strips_[strip(p.y)]) {
        const Edge& e = edges_[i];
        if ((e.from.y <= p.y) == (e.to.y <= p.y)) continue;
        const bool down = e.from.y < e.to.y;
        const double turn = (e.to.x - e.from.x) * (p.y - e.from.y) - (e.to.y - e.from.y) * (p.x - e.from.x);
        if ((turn > 0) == down) continue;  // passes to the right of p
        winding += down ? -1 : 1;
    }
    return winding != 0;
}

}  // namespace lode
