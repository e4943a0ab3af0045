#include "art/arrangement.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>

#include "art/joined_chords.hpp"

namespace lode {

namespace {

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}
Turns operator+(Turns a, Turns b) {
    return {a.one + b.one, a.other + b.other};
}
Turns operator-(Turns a) {
    return {-a.one, -a.other};
}

bool holds(Inside inside, Turns turns) {
    switch (inside) {
        case Inside::either:
            return turns.one != 0;
        case Inside::backward:
            return turns.one < 0;
        case Inside::one_only:
            return turns.one != 0 && turns.other == 0;
        default:
            return turns.one != 0 && turns.other != 0;
    }
}

// A piece of chords, from the lesser corner to the greater.
struct Edge {
    LatticePoint from, to;
    Turns turns;  // more on its right, as the eye sees it, than on its left
    int first_trace = 0;
    int traces = 0;
    int start = 0;  // places of the corners
    int end = 0;
};

// Edges in a row between two corners where others meet them.
struct Chain {
    std::vector<std::pair<int, bool>> edges;  // and whether they are gone along forward
    int start = 0;
    int end = 0;
};

// Counts how often the outlines go round the side of an edge that lies towards lower x: along a ray that way.
// Turned over, with x and y changed, for edges along x.
class Rays {
  public:
    Rays(const std::vector<Edge>& edges, bool turned) : edges_(edges), turned_(turned) {
        for (const Edge& e : edges) {
            least_ = std::min({least_, y(e.from), y(e.to)});
            most_ = std::max({most_, y(e.from), y(e.to)});
        }
        const auto strips = std::clamp<std::size_t>(edges.size() / 2, 1, 4096);
        height_ = (most_ - least_) / static_cast<std::int64_t>(strips) + 1;
        strips_.resize(strips);
        for (std::size_t i = 0; i < edges.size(); ++i) {
            const auto [low, high] = std::minmax({y(edges[i].from), y(edges[i].to)});
            if (low == high) continue;
            for (std::size_t s = strip(low); s <= strip(high); ++s) strips_[s].push_back(static_cast<int>(i));
        }
    }
    [[nodiscard]] Turns before(int edge) const {
        const Edge& e = edges_[at(edge)];
        // All doubled, so that the middle is on the lattice.
        const std::int64_t middle_x = x(e.from) + x(e.to);
        const std::int64_t middle_y = y(e.from) + y(e.to);
        Turns sum;
        for (const int i : strips_[strip(middle_y >= 0 ? middle_y / 2 : (middle_y - 1) / 2)]) {
            if (i == edge) continue;
            const Edge& f = edges_[at(i)];
            const bool rises = y(f.from) < y(f.to);
            const LatticePoint low = rises ? f.from : f.to;
            const LatticePoint high = rises ? f.to : f.from;
            if (2 * y(low) > middle_y || 2 * y(high) <= middle_y) continue;
            if (2 * (x(high) - x(low)) * (middle_y - 2 * y(low)) <
                2 * (y(high) - y(low)) * (middle_x - 2 * x(low)))
                sum = sum + (rises ? -f.turns : f.turns);
        }
        return turned_ ? -sum : sum;
    }

  private:
    [[nodiscard]] std::int64_t x(LatticePoint p) const { return turned_ ? p.y : p.x; }
    [[nodiscard]] std::int64_t y(LatticePoint p) const { return turned_ ? p.x : p.y; }
    [[nodiscard]] std::size_t strip(std::int64_t y) const {
        return static_cast<std::size_t>((y - least_) / height_);
    }

    const std::vector<Edge>& edges_;
    bool turned_;
    std::int64_t least_ = INT64_MAX / 4, most_ = INT64_MIN / 4, height_ = 1;
    std::vector<std::vector<int>> strips_;
};

class Arrangement {
  public:
    Arrangement(const std::vector<JoinedChord>& chords, std::span<const Turns> turns) {
        make_edges(chords, turns);
        make_corners();
        make_chains();
    }
    std::optional<std::vector<Loop>> loops(Inside inside) {
        keep(inside);
        if (!join_chains()) return std::nullopt;
        return walked();
    }

  private:
    void make_edges(const std::vector<JoinedChord>& chords, std::span<const Turns> turns);
    void make_corners();
    void make_chains();
    void follow(Chain& chain, int edge, bool forward, std::vector<bool>& seen) const;
    void keep(Inside inside);
    [[nodiscard]] bool join_chains();
    [[nodiscard]] std::vector<Loop> walked() const;
    void append(std::span<const int> chains, std::vector<Loop>& loops) const;

    std::vector<Edge> edges_;
    std::vector<Trace> traces_;
    std::vector<LatticePoint> corners_;
    std::vector<int> first_at_;  // corner -> its place in at_corner_
    std::vector<int> at_corner_;
    std::vector<Chain> chains_;  // after keep: those round what is inside, with it on their right
    std::vector<int> next_;      // the chain that follows a chain
};

void Arrangement::make_edges(const std::vector<JoinedChord>& chords, std::span<const Turns> turns) {
    struct Piece {
        LatticePoint from, to;
        Trace trace;
        bool forward;
    };
    std::vector<Piece> pieces;
    for (const JoinedChord& c : chords)
        for (std::size_t i = 0; i + 1 < c.stops.size(); ++i) {
            const Stop& a = c.stops[i];
            const Stop& b = c.stops[i + 1];
            if (a.at < b.at) pieces.push_back({a.at, b.at, {c.chord->curve, a.parameter, b.parameter}, true});
            if (b.at < a.at) pieces.push_back({b.at, a.at, {c.chord->curve, b.parameter, a.parameter}, false});
        }
    std::stable_sort(pieces.begin(), pieces.end(), [](const Piece& a, const Piece& b) {
        return std::tie(a.from, a.to, a.trace.curve) < std::tie(b.from, b.to, b.trace.curve);
    });
    for (std::size_t i = 0; i < pieces.size();) {
        Edge edge{pieces[i].from, pieces[i].to, {}, static_cast<int>(traces_.size()), 0, 0, 0};
        for (; i < pieces.size() && pieces[i].from == edge.from && pieces[i].to == edge.to; ++i) {
            const Turns by = turns[at(pieces[i].trace.curve)];
            edge.turns = edge.turns + (pieces[i].forward ? by : -by);
            traces_.push_back(pieces[i].trace);
            ++edge.traces;
        }
        if (edge.turns != Turns{}) edges_.push_back(edge);
    }
}

void Arrangement::make_corners() {
    for (const Edge& e : edges_) {
        corners_.push_back(e.from);
        corners_.push_back(e.to);
    }
    std::sort(corners_.begin(), corners_.end());
    corners_.erase(std::unique(corners_.begin(), corners_.end()), corners_.end());
    const auto place = [&](LatticePoint p) {
        return static_cast<int>(std::lower_bound(corners_.begin(), corners_.end(), p) - corners_.begin());
    };
    first_at_.assign(corners_.size() + 1, 0);
    for (Edge& e : edges_) {
        e.start = place(e.from);
        e.end = place(e.to);
        ++first_at_[at(e.start) + 1];
        ++first_at_[at(e.end) + 1];
    }
    std::partial_sum(first_at_.begin(), first_at_.end(), first_at_.begin());
    at_corner_.resize(2 * edges_.size());
    std::vector<int> filled = first_at_;
    for (std::size_t i = 0; i < edges_.size(); ++i)
        for (const int corner : {edges_[i].start, edges_[i].end})
            at_corner_[at(filled[at(corner)]++)] = static_cast<int>(i);
}

void Arrangement::follow(Chain& chain, int edge, bool forward, std::vector<bool>& seen) const {
    chain.start = forward ? edges_[at(edge)].start : edges_[at(edge)].end;
    while (true) {
        seen[at(edge)] = true;
        chain.edges.emplace_back(edge, forward);
        chain.end = forward ? edges_[at(edge)].end : edges_[at(edge)].start;
        const int first = first_at_[at(chain.end)];
        if (first_at_[at(chain.end) + 1] - first != 2 || chain.end == chain.start) return;
        const int next = at_corner_[at(first)] == edge ? at_corner_[at(first + 1)] : at_corner_[at(first)];
        edge = next;
        forward = edges_[at(edge)].start == chain.end;
    }
}

void Arrangement::make_chains() {
    std::vector<bool> seen(edges_.size(), false);
    const auto start_at = [&](std::size_t corner) {
        for (int i = first_at_[corner]; i < first_at_[corner + 1]; ++i) {
            const int edge = at_corner_[at(i)];
            if (seen[at(edge)]) continue;
            Chain chain;
            follow(chain, edge, at(edges_[at(edge)].start) == corner, seen);
            chains_.push_back(std::move(chain));
        }
    };
    for (std::size_t c = 0; c < corners_.size(); ++c)
        if (first_at_[c + 1] - first_at_[c] != 2) start_at(c);
    for (std::size_t c = 0; c < corners_.size(); ++c) start_at(c);  // rings that meet nothing
}

void Arrangement::keep(Inside inside) {
    std::optional<Rays> rays, turned;
    std::vector<Chain> kept;
    for (Chain& chain : chains_) {
        // The edge that rises most is the safest to ask.
        const auto rise = [&](const std::pair<int, bool>& e) {
            return std::abs(edges_[at(e.first)].to.y - edges_[at(e.first)].from.y);
        };
        const auto [asked, forward] =
            *std::max_element(chain.edges.begin(), chain.edges.end(),
                              [&](const auto& a, const auto& b) { return rise(a) < rise(b); });
        const Edge& edge = edges_[at(asked)];
        Turns left, right;  // as the eye sees them, y running down
        if (edge.from.y == edge.to.y) {
            if (!turned) turned.emplace(edges_, true);
            left = turned->before(asked);
            right = left + edge.turns;
        } else {
            if (!rays) rays.emplace(edges_, false);
            const Turns before = rays->before(asked);
            const bool down = edge.from.y < edge.to.y;
            right = down ? before : before + edge.turns;
            left = right + -edge.turns;
        }
        if (!forward) std::swap(left, right);
        if (holds(inside, left) == holds(inside, right)) continue;
        if (holds(inside, left)) {
            std::reverse(chain.edges.begin(), chain.edges.end());
            for (auto& e : chain.edges) e.second = !e.second;
            std::swap(chain.start, chain.end);
        }
        kept.push_back(std::move(chain));
    }
    chains_ = std::move(kept);
}

// At each corner what is inside fills sectors, each between a chain that leaves and one that arrives: these
// two belong to one loop.
bool Arrangement::join_chains() {
    struct End {
        int corner;
        LatticePoint way;  // from the corner
        int chain;
        bool arrives;
    };
    const auto way = [&](const std::pair<int, bool>& e, bool from_its_end) {
        const Edge& edge = edges_[at(e.first)];
        const bool from_greater = e.second == from_its_end;
        const LatticePoint by{edge.to.x - edge.from.x, edge.to.y - edge.from.y};
        return from_greater ? LatticePoint{-by.x, -by.y} : by;
    };
    std::vector<End> ends;
    for (std::size_t i = 0; i < chains_.size(); ++i) {
        const Chain& c = chains_[i];
        ends.push_back({c.start, way(c.edges.front(), false), static_cast<int>(i), false});
        ends.push_back({c.end, way(c.edges.back(), true), static_cast<int>(i), true});
    }
    const auto upper = [](LatticePoint p) { return p.y < 0 || (p.y == 0 && p.x < 0); };
    std::sort(ends.begin(), ends.end(), [&](const End& a, const End& b) {
        if (a.corner != b.corner) return a.corner < b.corner;
        if (upper(a.way) != upper(b.way)) return upper(b.way);
        return cross(LatticePoint{}, a.way, b.way) > 0;
    });
    next_.assign(chains_.size(), -1);
    for (std::size_t first = 0; first < ends.size();) {
        std::size_t last = first;
        while (last < ends.size() && ends[last].corner == ends[first].corner) ++last;
        for (std::size_t i = first; i < last; ++i) {
            const End& before = ends[i == first ? last - 1 : i - 1];
            if (ends[i].arrives == before.arrives) return false;
            if (ends[i].arrives) next_[at(ends[i].chain)] = before.chain;
        }
        first = last;
    }
    return true;
}

void Arrangement::append(std::span<const int> chains, std::vector<Loop>& loops) const {
    Loop loop;
    std::uint64_t twice_area = 0;  // only the sum fits for sure, whatever its parts
    double perimeter = 0;
    const LatticePoint origin = corners_[at(chains_[at(chains.front())].start)];
    for (const int chain : chains)
        for (const auto& [place, forward] : chains_[at(chain)].edges) {
            const Edge& e = edges_[at(place)];
            const LatticePoint from = forward ? e.from : e.to;
            const LatticePoint to = forward ? e.to : e.from;
            twice_area += static_cast<std::uint64_t>(cross(origin, from, to));
            const auto dx = static_cast<double>(to.x - from.x);
            const auto dy = static_cast<double>(to.y - from.y);
            perimeter += std::sqrt(dx * dx + dy * dy);
            LoopEdge edge{from, {}};
            for (int i = 0; i < e.traces; ++i) {
                const Trace& t = traces_[at(e.first_trace + i)];
                edge.traces.push_back(forward ? t : Trace{t.curve, t.last, t.first});
            }
            loop.push_back(std::move(edge));
        }
    const double area = std::abs(static_cast<double>(static_cast<std::int64_t>(twice_area)));
    if (area > 3 * perimeter) loops.push_back(std::move(loop));
}

std::vector<Loop> Arrangement::walked() const {
    std::vector<Loop> loops;
    std::vector<bool> seen(chains_.size(), false);
    std::vector<int> place(corners_.size(), -1);  // of a corner on the way that is being gone
    for (std::size_t first = 0; first < chains_.size(); ++first) {
        if (seen[first]) continue;
        std::vector<int> way;
        for (int chain = static_cast<int>(first);; chain = next_[at(chain)]) {
            const int corner = chains_[at(chain)].start;
            if (const int back = place[at(corner)]; back >= 0) {
                append(std::span(way).subspan(at(back)), loops);
                for (std::size_t i = at(back); i < way.size(); ++i) place[at(chains_[at(way[i])].start)] = -1;
                way.resize(at(back));
            }
            if (seen[at(chain)]) break;
            seen[at(chain)] = true;
            place[at(corner)] = static_cast<int>(way.size());
            way.push_back(chain);
        }
    }
    return loops;
}

}  // namespace

std::optional<std::vector<Loop>> loops_of(const Chords& chords, std::span<const Turns> turns, Inside inside) {
    const auto pieces = joined(chords);
    if (!pieces) return std::nullopt;
    return Arrangement(*pieces, turns).loops(inside);
}

}  // namespace lode
