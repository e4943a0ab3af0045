#include "art/outline_task.hpp"

#include <algorithm>
#include <stdexcept>
#include <tuple>

#include "art/curve_recovery.hpp"

namespace lode {

namespace {

auto key(const Cubic& c) {
    return std::tuple(c.p0.x, c.p0.y, c.p3.x, c.p3.y, c.straight, c.p1.x, c.p1.y, c.p2.x, c.p2.y);
}

struct Distinct {
    std::vector<Cubic> curves;
    std::vector<Turns> turns;
};

// Each curve once, where it came first.
Distinct distinct(const std::vector<Cubic>& curves, const std::vector<Turns>& turns) {
    struct Way {
        Cubic curve;  // in the lesser of its two directions
        std::size_t place;
        bool turned;
    };
    std::vector<Way> ways;
    ways.reserve(curves.size());
    for (std::size_t i = 0; i < curves.size(); ++i) {
        const Cubic& c = curves[i];
        // A line's controls carry rounding.
        const Cubic back = c.straight ? Cubic::line(c.p3, c.p0) : c.reversed();
        const bool turned = key(back) < key(c);
        ways.push_back({turned ? back : c, i, turned});
    }
    std::sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) {
        return std::pair(key(a.curve), a.place) < std::pair(key(b.curve), b.place);
    });
    std::vector<Turns> sums(curves.size());
    std::vector<bool> first(curves.size(), false);
    for (std::size_t i = 0; i < ways.size();) {
        const Way& leader = ways[i];
        Turns& sum = sums[leader.place];
        first[leader.place] = true;
        for (; i < ways.size() && key(ways[i].curve) == key(leader.curve); ++i) {
            const int sign = ways[i].turned == leader.turned ? 1 : -1;
            sum.one += sign * turns[ways[i].place].one;
            sum.other += sign * turns[ways[i].place].other;
        }
    }
    Distinct result;
    for (std::size_t i = 0; i < curves.size(); ++i)
        if (first[i] && sums[i] != Turns{}) {
            result.curves.push_back(curves[i]);
            result.turns.push_back(sums[i]);
        }
    return result;
}

}  // namespace

void OutlineTask::add(const Contour& contour, Turns turns) {
    each_piece(contour, [&](const Cubic& c) {
        for (const Point p : {c.p0, c.p1, c.p2, c.p3})
            if (!(std::abs(p.x) <= 1e9 && std::abs(p.y) <= 1e9))
                throw std::invalid_argument("an outline's coordinates are numbers within 1e9 of 0");
        curves_.push_back(c);
        turns_.push_back(turns);
    });
}

void OutlineTask::add(const Path& path, Turns turns) {
    for (const Contour& contour : path.contours) add(contour, turns);
}

Path OutlineTask::result(Inside inside) const {
    const Distinct input = distinct(curves_, turns_);
    for (int coarser = 0; coarser <= 12; coarser += 3) {
        const Lattice lattice = Lattice::around(input.curves, coarser);
        auto loops = loops_of(chords_of(input.curves, lattice), input.turns, inside);
        if (!loops) continue;
        std::vector<std::pair<std::pair<int, double>, std::size_t>> order;
        for (std::size_t i = 0; i < loops->size(); ++i)
            order.push_back({CurveRecovery::order((*loops)[i]), i});
        std::sort(order.begin(), order.end());
        const CurveRecovery recovery(input.curves, lattice);
        Path path;
        for (const auto& [key, i] : order) {
            Contour contour = recovery.curved((*loops)[i]);
            if (!contour.segments.empty()) path.contours.push_back(std::move(contour));
        }
        return path;
    }
    throw std::logic_error("outlines that cannot be told apart on any lattice");
}

}  // namespace lode
