#include "cut/thin_features.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "cut/medial_axis.hpp"

namespace lode {

namespace {

// Half of what the two contacts of a disc lack to 180 degrees is the angle by which each edge leans towards
// the other; the rules are put in its sine.
constexpr double stroke_lean = 0.25881904510252074;  // 15 degrees
constexpr double gap_lean = 0.087155742747658166;    // 5 degrees
constexpr double least_radius = 4;                   // lattice units, 2^20 of which are the path's size

struct Disc {
    Point centre;
    double radius = 0;
    std::array<OnCurve, 2> contacts;
    std::array<Point, 2> points;
    double lean = 1;
};

// Where on the axis an edge's discs count, and the narrowest of these.
struct Stretch {
    std::array<bool, 2> ends{};
    std::optional<Disc> narrowest;
};

class Measure {
  public:
    explicit Measure(const Path& path) : sides_(edge_sides(path)) {
        if (sides_.sides.empty()) return;
        axis_ = medial_axis(sides_);
        link_ends();
        mark_tapers();
    }

    // Places narrower than the bound, narrowest first.
    [[nodiscard]] std::vector<NarrowPlace> places(bool filled, double under) const;

  private:
    [[nodiscard]] Disc disc(const AxisEdge& edge, Point centre) const;
    [[nodiscard]] double chord_lean(const AxisEdge& edge, Point centre) const;
    [[nodiscard]] std::array<OnCurve, 2> guesses(const Site& site, Point centre) const;
    [[nodiscard]] bool counts(std::uint32_t edge, const Disc& disc, double most_lean) const;
    [[nodiscard]] bool tapers(const Disc& disc, Point corner) const {
        return disc.radius < 2 * disc.lean * length(disc.centre - corner);
    }
    [[nodiscard]] std::optional<std::uint32_t> region_of(const AxisEdge& edge) const;
    [[nodiscard]] Stretch stretch(std::uint32_t edge, double most_lean) const;
    [[nodiscard]] Disc limit(std::uint32_t edge, Disc inside, Point outside, double most_lean) const;
    [[nodiscard]] std::vector<Disc> largest_discs(bool filled, const std::vector<bool>& measured) const;
    [[nodiscard]] Disc settled(const Disc& disc) const;
    [[nodiscard]] bool waist(const Disc& disc, const Disc& before) const;
    [[nodiscard]] NarrowPlace place(const Disc& disc) const;
    void link_ends();
    void mark_tapers();
    void flood(std::uint32_t first, std::uint32_t corner_node);

    EdgeSides sides_;
    MedialAxis axis_;
    std::vector<std::uint32_t> before_, after_;  // a side that ends where this one starts, and the other way
    std::vector<std::uint32_t> corner_;  // by edge: the node of the corner that it tapers to, or infinite
};

void Measure::link_ends() {
    const std::vector<Side>& sides = sides_.sides;
    std::vector<std::uint32_t> by_from(sides.size());
    std::iota(by_from.begin(), by_from.end(), 0u);
    before_ = after_ = by_from;
    std::stable_sort(by_from.begin(), by_from.end(),
                     [&](std::uint32_t a, std::uint32_t b) { return sides[a].from < sides[b].from; });
    for (std::uint32_t i = 0; i < sides.size(); ++i) {
        const auto found =
            std::lower_bound(by_from.begin(), by_from.end(), sides[i].to,
                             [&](std::uint32_t a, SidePoint to) { return sides[a].from < to; });
        if (found == by_from.end() || sides[*found].from != sides[i].to) continue;
        after_[i] = *found;
        before_[*found] = i;
    }
}

// Where to seek a site's nearest point: at the end of a side, on both sides that meet there.
std::array<OnCurve, 2> Measure::guesses(const Site& site, Point centre) const {
    const Side& side = sides_.sides[site.side];
    if (site.kind == Site::Kind::from) return {side.begin, sides_.sides[before_[site.side]].end};
    if (site.kind == Site::Kind::to) return {side.end, sides_.sides[after_[site.side]].begin};
    const Point a{static_cast<double>(side.from.x), static_cast<double>(side.from.y)};
    const Point along = Point{static_cast<double>(side.to.x), static_cast<double>(side.to.y)} - a;
    const double part = std::clamp(dot(centre - a, along) / dot(along, along), 0.0, 1.0);
    const OnCurve guess{side.begin.curve, side.begin.t + part * (side.end.t - side.begin.t)};
    return {guess, guess};
}

double Measure::chord_lean(const AxisEdge& edge, Point centre) const {
    const Point a = nearest_on(sides_, edge.sites[0], centre) - centre;
    const Point b = nearest_on(sides_, edge.sites[1], centre) - centre;
    const double longer = std::max(length(a), length(b));
    return longer > 0 ? length(a + b) / (2 * longer) : 1;
}

// The disc near this centre that touches the curves themselves. The centre moves along the line through the
// contacts until it is as far from both.
Disc Measure::disc(const AxisEdge& edge, Point centre) const {
    Disc found;
    found.centre = centre;
    std::array<std::array<OnCurve, 2>, 2> tried;
    for (std::size_t k = 0; k < 2; ++k) tried[k] = guesses(edge.sites[k], centre);
    for (int round = 0; round < 4; ++round) {
        std::array<double, 2> distance{};
        for (std::size_t k = 0; k < 2; ++k) {
            const bool two = tried[k][0].curve != tried[k][1].curve || tried[k][0].t != tried[k][1].t;
            for (std::size_t which = 0; which < (two ? 2u : 1u); ++which) {
                OnCurve& on = tried[k][which];
                const EdgeCurve& curve = sides_.curves[on.curve];
                on.t = curve.nearest(found.centre, on.t);
                const Point point = curve.at(on.t);
                const double away = length(point - found.centre);
                if (which == 0 || away < distance[k]) {
                    distance[k] = away;
                    found.points[k] = point;
                    found.contacts[k] = on;
                }
            }
        }
        found.radius = (distance[0] + distance[1]) / 2;
        if (!(distance[0] > 0) || !(distance[1] > 0)) return found;
        const Point a = (1 / distance[0]) * (found.points[0] - found.centre);
        const Point b = (1 / distance[1]) * (found.points[1] - found.centre);
        found.lean = length(a + b) / 2;
        const Point across = a - b;
        const double square = dot(across, across);
        if (!(square > 1) || std::abs(distance[0] - distance[1]) < 1e-3) break;
        found.centre = found.centre + ((distance[0] - distance[1]) / square) * across;
    }
    return found;
}

// From each corner along growing discs, for as long as the edges aim at it.
void Measure::mark_tapers() {
    corner_.assign(axis_.edges.size(), AxisEdge::infinite);
    for (std::uint32_t i = 0; i < axis_.edges.size(); ++i) {
        const AxisEdge& edge = axis_.edges[i];
        if (edge.sites[0].kind != Site::Kind::body || edge.sites[1].kind != Site::Kind::body) continue;
        for (const std::uint32_t node : edge.nodes) {
            if (node == AxisEdge::infinite || !axis_.at_corner(node)) continue;
            const auto away = [&](const Site& site) {
                const Side& side = sides_.sides[site.side];
                const Point a{static_cast<double>(side.from.x), static_cast<double>(side.from.y)};
                const Point b{static_cast<double>(side.to.x), static_cast<double>(side.to.y)};
                const Point corner = axis_.nodes[node].centre;
                return length(a - corner) < length(b - corner) ? b - a : a - b;
            };
            if (dot(away(edge.sites[0]), away(edge.sites[1])) > 0) flood(i, node);
        }
    }
}

void Measure::flood(std::uint32_t first, std::uint32_t corner_node) {
    const Point corner = axis_.nodes[corner_node].centre;
    std::vector<std::array<std::uint32_t, 2>> open{{first, corner_node}};
    const auto still = [&](const AxisEdge& edge, std::uint32_t node) {
        const Point centre = axis_.nodes[node].centre;
        return chord_lean(edge, centre) > 0.5 || tapers(disc(edge, centre), corner);
    };
    while (!open.empty()) {
        const auto [edge, near] = open.back();
        open.pop_back();
        const AxisEdge& along = axis_.edges[edge];
        const std::uint32_t far = along.nodes[0] == near ? along.nodes[1] : along.nodes[0];
        if (corner_[edge] != AxisEdge::infinite || far == AxisEdge::infinite) continue;
        if (axis_.nodes[far].radius < axis_.nodes[near].radius ||
            (near != corner_node && !still(along, near)))
            continue;
        corner_[edge] = corner_node;
        if (!still(along, far)) continue;
        for (std::uint32_t k = axis_.first_adjacent[far]; k < axis_.first_adjacent[far + 1]; ++k)
            if (axis_.adjacent[k] != edge) open.push_back({axis_.adjacent[k], far});
    }
}

bool Measure::counts(std::uint32_t edge, const Disc& disc, double most_lean) const {
    if (disc.lean > most_lean || disc.radius < least_radius) return false;
    return corner_[edge] == AxisEdge::infinite || !tapers(disc, axis_.nodes[corner_[edge]].centre);
}

// The narrowest disc that counts between one that does and a place that does not.
Disc Measure::limit(std::uint32_t edge, Disc inside, Point outside, double most_lean) const {
    for (int halving = 0; halving < 14; ++halving) {
        const Disc middle = disc(axis_.edges[edge], 0.5 * (inside.centre + outside));
        if (counts(edge, middle, most_lean))
            inside = middle;
        else
            outside = middle.centre;
    }
    return inside;
}

Stretch Measure::stretch(std::uint32_t edge, double most_lean) const {
    const AxisEdge& along = axis_.edges[edge];
    Stretch found;
    std::array<std::optional<Disc>, 2> at;
    const auto take = [&](const Disc& disc) {
        if (!found.narrowest || disc.radius < found.narrowest->radius) found.narrowest = disc;
    };
    for (std::size_t end = 0; end < 2; ++end) {
        if (along.nodes[end] == AxisEdge::infinite) continue;
        const Point centre = axis_.nodes[along.nodes[end]].centre;
        if (chord_lean(along, centre) > 0.5) continue;
        at[end] = disc(along, centre);
        found.ends[end] = counts(edge, *at[end], most_lean);
        if (found.ends[end]) take(*at[end]);
    }
    for (std::size_t end = 0; end < 2; ++end)
        if (found.ends[end] && !found.ends[1 - end] && at[1 - end] && at[1 - end]->radius < at[end]->radius)
            take(limit(edge, *at[end], at[1 - end]->centre, most_lean));
    // Between a corner and what is opposite to it, the narrowest lies half way.
    const std::size_t body = along.sites[0].kind == Site::Kind::body ? 0u : 1u;
    const Site& end_site = along.sites[1 - body];
    if (end_site.kind != Site::Kind::body) {
        const Point corner = nearest_on(sides_, end_site, {});
        const Point middle = 0.5 * (corner + nearest_on(sides_, along.sites[body], corner));
        const Point across =
            nearest_on(sides_, along.sites[0], middle) - nearest_on(sides_, along.sites[1], middle);
        const auto beyond = [&](std::size_t end) {  // how far along the axis, from the middle on
            if (along.nodes[end] == AxisEdge::infinite) return end == 0 ? -1.0 : 1.0;
            return -cross(across, axis_.nodes[along.nodes[end]].centre - middle);
        };
        if (beyond(0) < 0 && beyond(1) > 0 && chord_lean(along, middle) < 0.5) {
            const Disc half_way = disc(along, middle);
            if (counts(edge, half_way, most_lean)) take(half_way);
        }
    }
    return found;
}

std::optional<std::uint32_t> Measure::region_of(const AxisEdge& edge) const {
    for (const std::uint32_t node : edge.nodes)
        if (node != AxisEdge::infinite && !axis_.at_corner(node)) return axis_.nodes[node].region;
    return {};
}

std::vector<Disc> Measure::largest_discs(bool filled, const std::vector<bool>& measured) const {
    std::vector<std::uint32_t> widest(axis_.regions.size(), AxisEdge::infinite);
    for (std::uint32_t node = 0; node < axis_.nodes.size(); ++node) {
        const std::uint32_t region = axis_.nodes[node].region;
        if (axis_.at_corner(node) || measured[region] || !axis_.regions[region].bounded ||
            axis_.regions[region].filled != filled)
            continue;
        std::uint32_t& best = widest[region];
        if (best == AxisEdge::infinite || axis_.nodes[node].radius > axis_.nodes[best].radius) best = node;
    }
    std::vector<Disc> discs;
    for (const std::uint32_t node : widest) {
        if (node == AxisEdge::infinite || axis_.nodes[node].radius < least_radius) continue;
        std::optional<Disc> best;
        for (std::uint32_t k = axis_.first_adjacent[node]; k < axis_.first_adjacent[node + 1]; ++k) {
            const Disc found = disc(axis_.edges[axis_.adjacent[k]], axis_.nodes[node].centre);
            if (!best || found.lean < best->lean) best = found;
        }
        if (best) discs.push_back(*best);
    }
    return discs;
}

// Whether a settled disc is still empty, and did not merely stop at the end of a curve that goes on slanting.
bool Measure::waist(const Disc& disc, const Disc& before) const {
    for (std::uint32_t side = 0; side < sides_.sides.size(); ++side) {
        const Point nearest = nearest_on(sides_, {side, Site::Kind::body}, disc.centre);
        if (length(nearest - disc.centre) < disc.radius - 2 * chord_tolerance) return false;
    }
    for (std::size_t k = 0; k < 2; ++k) {
        const double t = disc.contacts[k].t;
        if ((t > 0 && t < 1) || t == before.contacts[k].t) continue;
        const Point along = sides_.curves[disc.contacts[k].curve].speed(t);
        const Point across = disc.points[1] - disc.points[0];
        if (std::abs(dot(along, across)) > 1e-3 * length(along) * length(across)) return false;
    }
    return true;
}

// A waist lies between sampled discs, where the distance of the curves is least: by Newton's method in both
// contacts, and by sending each to the point nearest to the other where that does not lead downhill. Where
// the contacts slide on along converging edges, or the disc they come to is not empty, the disc was no waist
// and stays as it was.
Disc Measure::settled(const Disc& disc) const {
    Disc moved = disc;
    const EdgeCurve& one = sides_.curves[disc.contacts[0].curve];
    const EdgeCurve& other = sides_.curves[disc.contacts[1].curve];
    double& s = moved.contacts[0].t;
    double& t = moved.contacts[1].t;
    for (int step = 0; step < 24; ++step) {
        const std::array<Point, 2> before = moved.points;
        const Point between = before[0] - before[1];
        const Point along = one.speed(s), across = other.speed(t);
        const double a = dot(along, along) + dot(between, one.bend(s));
        const double b = dot(along, across);
        const double c = dot(across, across) - dot(between, other.bend(t));
        const double determinant = a * c - b * b;
        bool taken = false;
        if (a > 0 && determinant > 1e-6 * a * c) {
            const double down_s = -dot(between, along), down_t = dot(between, across);
            const double next_s = s + (c * down_s + b * down_t) / determinant;
            const double next_t = t + (a * down_t + b * down_s) / determinant;
            taken = next_s > 0 && next_s < 1 && next_t > 0 && next_t < 1;
            if (taken) {
                s = next_s;
                t = next_t;
            }
        }
        if (!taken) {
            s = one.nearest(before[1], s);
            t = other.nearest(one.at(s), t);
        }
        moved.points = {one.at(s), other.at(t)};
        moved.radius = length(moved.points[0] - moved.points[1]) / 2;
        moved.centre = 0.5 * (moved.points[0] + moved.points[1]);
        if (moved.radius < 0.97 * disc.radius || moved.radius > disc.radius) return disc;
        const double way = std::max(length(moved.points[0] - before[0]), length(moved.points[1] - before[1]));
        if (way < 1e-6 * disc.radius) return waist(moved, disc) ? moved : disc;
    }
    return disc;
}

NarrowPlace Measure::place(const Disc& disc) const {
    return {2 * disc.radius / sides_.scale, sides_.in_path(disc.centre), sides_.in_path(disc.points[0]),
            sides_.in_path(disc.points[1])};
}

std::vector<NarrowPlace> Measure::places(bool filled, double under) const {
    const double most_lean = filled ? stroke_lean : gap_lean;
    const double most_radius = under * sides_.scale / 2;
    std::vector<bool> measured(axis_.regions.size());
    std::vector<Stretch> stretches(axis_.edges.size());
    // Edges of the axis hang together where they meet at a node that counts for both and is narrow.
    std::vector<std::uint32_t> parent(axis_.edges.size());
    std::iota(parent.begin(), parent.end(), 0u);
    const auto root = [&](std::uint32_t edge) {
        while (parent[edge] != edge) edge = parent[edge] = parent[parent[edge]];
        return edge;
    };
    std::vector<std::uint32_t> at_node(axis_.nodes.size(), AxisEdge::infinite);
    for (std::uint32_t i = 0; i < axis_.edges.size(); ++i) {
        const auto region = region_of(axis_.edges[i]);
        if (!region || axis_.regions[*region].filled != filled) continue;
        stretches[i] = stretch(i, most_lean);
        if (stretches[i].narrowest) measured[*region] = true;
        for (std::size_t end = 0; end < 2; ++end) {
            const std::uint32_t node = axis_.edges[i].nodes[end];
            if (!stretches[i].ends[end] || axis_.nodes[node].radius >= most_radius) continue;
            if (at_node[node] == AxisEdge::infinite) at_node[node] = i;
            const std::uint32_t a = root(at_node[node]);
            const std::uint32_t b = root(i);
            parent[std::max(a, b)] = std::min(a, b);
        }
    }
    for (std::uint32_t i = 0; i < axis_.edges.size(); ++i) {
        const auto& mine = stretches[i].narrowest;
        auto& limb = stretches[root(i)].narrowest;
        if (mine && (!limb || mine->radius < limb->radius)) limb = mine;
    }
    std::vector<Disc> discs = largest_discs(filled, measured);
    for (std::uint32_t i = 0; i < axis_.edges.size(); ++i)
        if (root(i) == i && stretches[i].narrowest) discs.push_back(settled(*stretches[i].narrowest));
    std::erase_if(discs, [&](const Disc& disc) { return !(disc.radius < most_radius); });
    std::stable_sort(discs.begin(), discs.end(),
                     [](const Disc& a, const Disc& b) { return a.radius < b.radius; });
    std::vector<NarrowPlace> places;
    for (const Disc& disc : discs) places.push_back(place(disc));
    return places;
}

}  // namespace

Narrowest narrowest(const Path& path) {
    const Measure measure(path);
    const auto first = [&](bool filled) -> std::optional<NarrowPlace> {
        const auto places = measure.places(filled, 1e300);
        if (places.empty()) return {};
        return places.front();
    };
    return {first(true), first(false)};
}

std::vector<NarrowPlace> narrow_strokes(const Path& path, double under, std::size_t most) {
    auto places = Measure(path).places(true, under);
    if (places.size() > most) places.resize(most);
    return places;
}

std::vector<NarrowPlace> narrow_gaps(const Path& path, double under, std::size_t most) {
    auto places = Measure(path).places(false, under);
    if (places.size() > most) places.resize(most);
    return places;
}

}  // namespace lode
