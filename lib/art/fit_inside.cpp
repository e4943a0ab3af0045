// The largest scale at which boxes fit into a region, by branch and bound over the place of their middle.
//
// For one place, an edge of the region and a box rule out an interval of scales: those at which some point of
// the edge lies inside of the box. It is the shadow of a polygon in the plane of scale and place on the edge,
// so it is found by clipping a rectangle four times, for boxes about the place as for boxes beside it. The
// largest scale left free, at which every box has the region about it, is the place's answer.
//
// For a cell of places, boxes made smaller by half of the cell on every side lie inside of what any of its
// places would hold: their answer at the cell's middle bounds all of the cell. Cells are halved across the
// side that loosens the bound more, so that a ridge of equally good places (along a long room) is not paved
// with small cells. Known for discs as the search for a pole of inaccessibility; here with boxes, an exact
// answer for each place, and several boxes at once.
//
// Before the whole, the middle of the region's box, and the lines through it, are searched: what comes later
// must be better by more than the tolerance, and so a symmetric region is filled symmetrically.

#include "art/fit_inside.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>
#include <memory>
#include <queue>

#include "art/clipping.hpp"
#include "art/flatten.hpp"
#include "art/room.hpp"

namespace lode {

namespace {

constexpr double touching = 1e-9;   // mm by which an edge may reach into a box
constexpr double fit_step = 0.002;  // mm of the boxes' sides: what is no better than that is a tie
constexpr std::size_t most_cells = 100'000;

struct Interval {
    double from;
    double to;
};

struct Grain {  // a cell of places: its middle and half of its sides
    Point middle;
    double across = 0;
    double down = 0;
};

// The scales within lowest..highest at which the edge reaches into the box at the origin, made smaller by the
// grain. An edge is given from the place that is tried.
std::optional<Interval> ruled_out(Point a, Point b, const Box& box, double across, double down,
                                  Interval scales) {
    struct At {
        double scale, along;
    };
    std::array<At, 12> held{{{scales.from, 0}, {scales.to, 0}, {scales.to, 1}, {scales.from, 1}}};
    std::array<At, 12> next;
    std::size_t count = 4;
    // What must be positive: constant + by_scale * scale + by_along * along.
    const auto keep = [&](double constant, double by_scale, double by_along) {
        std::size_t kept = 0;
        const auto value = [&](const At& p) { return constant + by_scale * p.scale + by_along * p.along; };
        for (std::size_t i = 0; i < count; ++i) {
            const At p = held[i], q = held[i + 1 == count ? 0 : i + 1];
            const double vp = value(p), vq = value(q);
            if (vp > 0) next[kept++] = p;
            if ((vp > 0) != (vq > 0)) {
                const double t = vp / (vp - vq);
                next[kept++] = {p.scale + t * (q.scale - p.scale), p.along + t * (q.along - p.along)};
            }
        }
        std::copy_n(next.begin(), kept, held.begin());
        count = kept;
        return count > 0;
    };
    if (!keep(a.x - across - touching, -box.left, b.x - a.x)) return std::nullopt;
    if (!keep(-a.x - across - touching, box.right, a.x - b.x)) return std::nullopt;
    if (!keep(a.y - down - touching, -box.top, b.y - a.y)) return std::nullopt;
    if (!keep(-a.y - down - touching, box.bottom, a.y - b.y)) return std::nullopt;
    Interval out{held[0].scale, held[0].scale};
    for (std::size_t i = 1; i < count; ++i) {
        out.from = std::min(out.from, held[i].scale);
        out.to = std::max(out.to, held[i].scale);
    }
    return out;
}

using EdgeNumbers = std::vector<std::uint32_t>;

class Search {
  public:
    Search(const Room& room, std::vector<Box> boxes) : room_(room), boxes_(std::move(boxes)) {
        Box all = boxes_[0];
        for (const Box& box : boxes_)
            all = {std::min(all.left, box.left), std::min(all.top, box.top), std::max(all.right, box.right),
                   std::max(all.bottom, box.bottom)};
        shift_ = all.centre();
        for (Box& box : boxes_)
            box = {box.left - shift_.x, box.top - shift_.y, box.right - shift_.x, box.bottom - shift_.y};
        half_width_ = all.width() / 2;
        half_height_ = all.height() / 2;
        step_ = fit_step / std::max(all.width(), all.height());
        every_edge_ = std::make_shared<EdgeNumbers>();
        for (std::uint32_t i = 0; i < room_.edges().size(); ++i) every_edge_->push_back(i);
    }

    std::optional<Fit> run(Across where) {
        const Box& box = room_.box();
        const Point middle = box.centre();
        if (where == Across::on_the_middle) {
            // Boxes that are not alike on both sides are shifted: their own middle stands on the region's.
            search({middle, 0, box.height() / 2});
            if (!(best_ > 0)) return std::nullopt;
            draw_near(middle);
            return Fit{best_, {at_.x - best_ * shift_.x, at_.y - best_ * shift_.y}};
        }
        const double across = box.width() / 2, down = box.height() / 2;
        for (const Grain& grain : {Grain{middle, 0, 0}, Grain{middle, 0, down}, Grain{middle, across, 0},
                                   Grain{middle, across, down}})
            search(grain);
        if (!(best_ > 0)) return std::nullopt;
        draw_near(middle);
        return Fit{best_, {at_.x - best_ * shift_.x, at_.y - best_ * shift_.y}};
    }

  private:
    struct Cell {
        Grain grain;
        double bound;
        std::size_t number;  // of equal bounds the first made is the first tried
        std::shared_ptr<const EdgeNumbers> edges;
        bool operator<(const Cell& other) const {
            return bound != other.bound ? bound < other.bound : number > other.number;
        }
    };

    // The largest scale above `least` and up to `most`, or a negative number.
    double largest(const Grain& grain, double least, double most, const EdgeNumbers& edges) {
        const Box& room = room_.box();
        const Point p = grain.middle;
        most = std::min({most, (p.x - room.left + grain.across) / half_width_,
                         (room.right - p.x + grain.across) / half_width_,
                         (p.y - room.top + grain.down) / half_height_,
                         (room.bottom - p.y + grain.down) / half_height_});
        if (!(most > least)) return -1;
        intervals_.resize(boxes_.size());
        for (std::size_t i = 0; i < boxes_.size(); ++i) collect(i, grain, {least, most}, edges);
        double scale = most;
        for (std::size_t settled = 0, i = 0; settled < boxes_.size(); i = (i + 1) % boxes_.size()) {
            const double below = free_from(i, grain, scale);
            if (!(below > least)) return -1;
            settled = below < scale ? 1 : settled + 1;
            scale = below;
        }
        return scale;
    }

    // The scales that edges rule out for a box, overlapping ones joined, in order.
    void collect(std::size_t i, const Grain& grain, Interval scales, const EdgeNumbers& edges) {
        const Box& box = boxes_[i];
        const Point p = grain.middle;
        std::vector<Interval>& out = intervals_[i];
        out.clear();
        const double left = p.x + std::min(scales.from * box.left, scales.to * box.left) + grain.across;
        const double right = p.x + std::max(scales.from * box.right, scales.to * box.right) - grain.across;
        const double top = p.y + std::min(scales.from * box.top, scales.to * box.top) + grain.down;
        const double bottom = p.y + std::max(scales.from * box.bottom, scales.to * box.bottom) - grain.down;
        if (left >= right || top >= bottom) return;
        for (const std::uint32_t number : edges) {
            const Room::Edge& e = room_.edges()[number];
            if (e.box.right <= left || e.box.left >= right || e.box.bottom <= top || e.box.top >= bottom)
                continue;
            if (const auto found = ruled_out({e.from.x - p.x, e.from.y - p.y}, {e.to.x - p.x, e.to.y - p.y},
                                             box, grain.across, grain.down, scales))
                out.push_back(*found);
        }
        std::sort(out.begin(), out.end(), [](const Interval& a, const Interval& b) {
            return a.from != b.from ? a.from < b.from : a.to < b.to;
        });
        std::size_t kept = 0;
        for (const Interval& interval : out) {
            if (kept > 0 && interval.from <= out[kept - 1].to)
                out[kept - 1].to = std::max(out[kept - 1].to, interval.to);
            else
                out[kept++] = interval;
        }
        out.resize(kept);
    }

    // The largest scale up to this at which the box lies inside.
    [[nodiscard]] double free_from(std::size_t i, const Grain& grain, double scale) const {
        const Box& box = boxes_[i];
        const std::vector<Interval>& out = intervals_[i];
        // Of a box as thin as what may reach into it, the centre says nothing.
        const double flat_up_to = std::max((2 * grain.across + 4 * touching) / box.width(),
                                           (2 * grain.down + 4 * touching) / box.height());
        for (std::size_t below = out.size();;) {
            while (below > 0 && out[below - 1].from >= scale) --below;
            if (below > 0 && out[below - 1].to >= scale) scale = out[--below].from;
            if (scale <= flat_up_to) return scale;
            const Point centre = box.centre();
            if (room_.inside({grain.middle.x + scale * centre.x, grain.middle.y + scale * centre.y}))
                return scale;
            // The box lies outside, and so it does down to the next interval, or until it is flat.
            if (below == 0 || out[below - 1].to < flat_up_to) return flat_up_to;
            scale = out[--below].from;
        }
    }

    // Those of the edges that can reach a box from some place of the grain, at scales worth having.
    [[nodiscard]] std::shared_ptr<const EdgeNumbers> near(
        const Grain& grain, double most, const std::shared_ptr<const EdgeNumbers>& edges) const {
        if (edges->size() < 8) return edges;
        auto result = std::make_shared<EdgeNumbers>();
        for (const std::uint32_t number : *edges) {
            const Box& e = room_.edges()[number].box;
            const bool reaches = std::any_of(boxes_.begin(), boxes_.end(), [&](const Box& box) {
                const Point p = grain.middle;
                return e.right > p.x + std::min(best_ * box.left, most * box.left) - grain.across &&
                       e.left < p.x + std::max(best_ * box.right, most * box.right) + grain.across &&
                       e.bottom > p.y + std::min(best_ * box.top, most * box.top) - grain.down &&
                       e.top < p.y + std::max(best_ * box.bottom, most * box.bottom) + grain.down;
            });
            if (reaches) result->push_back(number);
        }
        return result;
    }

    void search(const Grain& whole) {
        std::priority_queue<Cell> cells;
        std::size_t made = 0;
        const auto add = [&](const Grain& grain, double most,
                             const std::shared_ptr<const EdgeNumbers>& edges) {
            ++made;
            if (const double here = largest({grain.middle, 0, 0}, best_ + step_, most, *edges); here > 0) {
                best_ = here;
                at_ = grain.middle;
            }
            if (grain.across == 0 && grain.down == 0) return;
            const double bound = largest(grain, best_ + step_, most, *edges);
            if (bound > 0) cells.push({grain, bound, made, near(grain, bound, edges)});
        };
        const Box& room = room_.box();
        add(whole, std::min(room.width() / half_width_, room.height() / half_height_), every_edge_);
        while (!cells.empty() && made < most_cells) {
            const Cell cell = cells.top();
            cells.pop();
            if (!(cell.bound > best_ + step_)) return;
            const Grain& g = cell.grain;
            const auto alone = [&](double across, double down) {
                return largest({g.middle, across, down}, best_ + step_, cell.bound, *cell.edges);
            };
            bool halve_across = g.down == 0;
            if (g.across > 0 && g.down > 0) {
                const double with_across = alone(g.across, 0), with_down = alone(0, g.down);
                halve_across = with_across != with_down ? with_across > with_down
                                                        : g.across / half_width_ >= g.down / half_height_;
            }
            for (const double side : {-0.5, 0.5}) {
                Grain half = g;
                if (halve_across) {
                    half.across /= 2;
                    half.middle.x += side * g.across;
                } else {
                    half.down /= 2;
                    half.middle.y += side * g.down;
                }
                add(half, cell.bound, cell.edges);
            }
        }
    }

    // Moves along the axes towards the middle as far as the scale is kept.
    void draw_near(Point middle) {
        for (const bool across : {true, false}) {
            const double from = across ? at_.x : at_.y, to = across ? middle.x : middle.y;
            const auto place = [&](double share) {
                const double moved = share == 1 ? to : from + share * (to - from);
                return across ? Point{moved, at_.y} : Point{at_.x, moved};
            };
            const auto keeps = [&](double share) {
                return largest({place(share), 0, 0}, best_ * (1 - 1e-12), best_, *every_edge_) > 0;
            };
            double kept = 0, lost = 1;
            if (keeps(1)) kept = 1;
            for (int i = 0; kept < 1 && i < 40; ++i) {
                const double share = (kept + lost) / 2;
                (keeps(share) ? kept : lost) = share;
            }
            if (kept > 0) at_ = place(kept);
        }
    }

    const Room& room_;
    std::vector<Box> boxes_;
    Point shift_;
    double half_width_ = 0;
    double half_height_ = 0;
    double step_ = 0;
    double best_ = 0;
    Point at_;
    std::shared_ptr<EdgeNumbers> every_edge_;
    std::vector<std::vector<Interval>> intervals_;
};

}  // namespace

Path room_inside(const Path& outline, double margin, const Path& kept_clear) {
    using namespace ClipperLib;
    Paths wanted = lattice_polygons(outline, fit_tolerance_mm / 2);
    const auto grown = [&](Paths paths, double by) {
        // A round join may be off by half of the tolerance; joins are made where a corner of material points
        // into the room.
        ClipperOffset offset(2, fit_tolerance_mm / 2 * lattice_per_mm);
        offset.AddPaths(paths, jtRound, etClosedPolygon);
        offset.Execute(paths, by * lattice_per_mm);
        return paths;
    };
    if (margin != 0) wanted = grown(std::move(wanted), -margin);
    if (!kept_clear.empty()) {
        Clipper clipper;
        clipper.AddPaths(wanted, ptSubject, true);
        clipper.AddPaths(grown(lattice_polygons(kept_clear, fit_tolerance_mm / 2), margin), ptClip, true);
        need_done(clipper, clipper.Execute(ctDifference, wanted, pftNonZero, pftNonZero));
    }
    Path room;
    for (const auto& polygon : wanted) {
        const auto at = [](const IntPoint& p) {
            return Point{static_cast<double>(p.X) / lattice_per_mm,
                         static_cast<double>(p.Y) / lattice_per_mm};
        };
        Contour contour{at(polygon[0]), {}};
        for (std::size_t i = 1; i <= polygon.size(); ++i)
            contour.segments.push_back(Segment::line(at(polygon[i % polygon.size()])));
        room.contours.push_back(std::move(contour));
    }
    return room;
}

std::optional<Fit> largest_fit(const Path& region, std::span<const Box> boxes, Across where) {
    const Room room(region);
    const bool flat = std::any_of(boxes.begin(), boxes.end(),
                                  [](const Box& box) { return !(box.width() > 0 && box.height() > 0); });
    if (room.empty() || boxes.empty() || flat) return std::nullopt;
    return Search(room, {boxes.begin(), boxes.end()}).run(where);
}

bool holds(const Path& region, const Box& box) {
    constexpr double slack = 1e-6;
    const Room room(region);
    if (room.empty() || !room.inside(box.centre())) return false;
    const Point middle = box.centre();
    const Box about{box.left - middle.x + slack, box.top - middle.y + slack, box.right - middle.x - slack,
                    box.bottom - middle.y - slack};
    return std::none_of(room.edges().begin(), room.edges().end(), [&](const Room::Edge& e) {
        return ruled_out({e.from.x - middle.x, e.from.y - middle.y}, {e.to.x - middle.x, e.to.y - middle.y},
                         about, 0, 0, {1, 1 + 1e-12})
            .has_value();
    });
}

}  // namespace lode
