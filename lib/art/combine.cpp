#include "art/combine.hpp"

#include <algorithm>
#include <optional>

#include "art/outline_task.hpp"

namespace lode {

namespace {

// How often the contour goes round the point, for points off its curves.
int turns_round(const Contour& contour, Point p) {
    int turns = 0;
    // Pieces are halved until the point is above, below, or on one side of all four controls.
    const auto count = [&](const auto& self, const Cubic& c, int depth) -> void {
        const auto [low, high] = std::minmax({c.p0.y, c.p1.y, c.p2.y, c.p3.y});
        const auto [left, right] = std::minmax({c.p0.x, c.p1.x, c.p2.x, c.p3.x});
        if (p.y < low || p.y > high || left > p.x) return;
        const bool crosses = (c.p0.y <= p.y) != (c.p3.y <= p.y);
        if (right < p.x || depth == 0) {
            if (crosses) turns += c.p0.y <= p.y ? -1 : 1;
            return;
        }
        self(self, c.first_half(), depth - 1);
        self(self, c.second_half(), depth - 1);
    };
    each_piece(contour, [&](const Cubic& c) { count(count, c, 40); });
    return turns;
}

bool lies_in(const Contour& hole, const Contour& outer) {
    // Both may touch in single points: the middles of the pieces are asked, and most of them are right.
    int inside = 0, asked = 0;
    each_piece(hole, [&](const Cubic& c) {
        if (asked >= 7) return;
        ++asked;
        inside += turns_round(outer, c.at(0.5)) != 0 ? 1 : 0;
    });
    return 2 * inside > asked;
}

}  // namespace

Path united(const Path& path) {
    OutlineTask task;
    task.add(path, {1, 0});
    return task.result(Inside::either);
}

Path united(std::span<const Path> paths) {
    OutlineTask task;
    // A path on its own may go round its faces either way, so that two could cancel each other.
    for (const Path& path : paths) task.add(paths.size() == 1 ? path : united(path), {1, 0});
    return task.result(Inside::either);
}

Path cut_out(const Path& from, const Path& taken) {
    OutlineTask task;
    task.add(from, {1, 0});
    task.add(taken, {0, 1});
    return task.result(Inside::one_only);
}

Path shared(const Path& one, const Path& other) {
    OutlineTask task;
    task.add(one, {1, 0});
    task.add(other, {0, 1});
    return task.result(Inside::both);
}

std::vector<Path> parts_of(const Path& united) {
    struct Outer {
        const Contour* contour;
        double area;
        Box box;
    };
    std::vector<Path> parts;
    std::vector<Outer> outers;
    for (const Contour& contour : united.contours)
        if (const double area = signed_area(contour); area > 0) {
            parts.push_back({{contour}});
            outers.push_back({&contour, area, bounds(parts.back())});
        }
    for (const Contour& contour : united.contours) {
        const double area = signed_area(contour);
        if (!(area < 0)) continue;
        const Box box = bounds({{contour}});
        std::optional<std::size_t> owner;
        for (std::size_t i = 0; i < outers.size(); ++i) {
            const Box& o = outers[i].box;
            // A hole that touches its outer contour may stick out by a rounding error.
            const double hair = 1e-6 * (o.width() + o.height());
            if (outers[i].area < -area || box.left < o.left - hair || box.top < o.top - hair ||
                box.right > o.right + hair || box.bottom > o.bottom + hair)
                continue;
            if (owner && outers[*owner].area <= outers[i].area) continue;
            if (lies_in(contour, *outers[i].contour)) owner = i;
        }
        if (owner) parts[*owner].contours.push_back(contour);
    }
    return parts;
}

}  // namespace lode
