#include "art/stroked.hpp"

#include <cmath>
#include <optional>
#include <stdexcept>

namespace lode {

namespace {

Point across(Point p, Point d, bool level, double at) {
    const double t = level ? (at - p.y) / d.y : (at - p.x) / d.x;
    return level ? Point{p.x + t * d.x, at} : Point{at, p.y + t * d.y};
}

// One side of the pen's mark, from edge to edge.
class Side {
  public:
    Side(const Chain& chain, double to_left, bool backwards) : chain_(chain) {
        const std::size_t count = chain.edges.size();
        for (std::size_t i = 0; i < count; ++i) {
            const ArcEdge& edge = chain.edges[backwards ? count - 1 - i : i];
            if (edge.turn != 0 && !(edge.radius + edge.turn * to_left > 0))
                throw std::logic_error("a stroke turns more sharply than its width allows");
            const ArcEdge side = parallel(edge, to_left);
            edges_.push_back(backwards ? reversed(side) : side);
        }
    }

    // Cuts the side where the mark ends.
    void cut_start(StrokeEnd how, Point at) { cut(edges_.front().from, edges_.front(), how, at); }
    void cut_end(StrokeEnd how, Point at) { cut(edges_.back().to, edges_.back(), how, at); }

    [[nodiscard]] ArcContour joined() const {
        ArcContour contour;
        ArcEdge edge = edges_.front();
        for (std::size_t i = 1; i < edges_.size(); ++i) {
            ArcEdge next = edges_[i];
            append_join(contour, edge, next);
            edge = next;
        }
        if (!chain_.closed) {
            contour.push_back(edge);
            return contour;
        }
        ArcEdge first = edges_.front();
        append_join(contour, edge, first);
        contour.front().from = first.from;
        return contour;
    }

  private:
    const Chain& chain_;
    std::vector<ArcEdge> edges_;

    static void cut(Point& end, const ArcEdge& edge, StrokeEnd how, Point at) {
        if (how == StrokeEnd::square) return;
        if (edge.turn != 0) throw std::logic_error("only a straight stroke is cut aslant");
        const bool level = how == StrokeEnd::level;
        end = across(edge.from, direction_at_start(edge), level, level ? at.y : at.x);
    }

    // The line of the frame that a point is beyond.
    [[nodiscard]] std::optional<std::pair<bool, double>> beyond_frame(Point p) const {
        const Box& frame = chain_.frame;
        if (p.y < frame.top) return std::pair{true, frame.top};
        if (p.y > frame.bottom) return std::pair{true, frame.bottom};
        if (p.x < frame.left) return std::pair{false, frame.left};
        if (p.x > frame.right) return std::pair{false, frame.right};
        return std::nullopt;
    }

    // Ends `edge` and goes on to the start of `next`, which it may move.
    void append_join(ArcContour& contour, ArcEdge edge, ArcEdge& next) const {
        const Point d = direction_at_end(edge);
        const Point e = direction_at_start(next);
        const double sine = d.x * e.y - d.y * e.x;
        constexpr double smooth = 1e-6;
        if (std::abs(sine) < smooth && d.x * e.x + d.y * e.y > 0) {
            next.from = edge.to;
            contour.push_back(edge);
            return;
        }
        const Point corner_of_skeleton = skeleton_corner(edge, next);
        // Going along a side, the mark is to the right: a turn to the right is an outer one.
        if (sine < 0) {
            contour.push_back(edge);
            contour.push_back(ArcEdge::line(edge.to, corner_of_skeleton));
            contour.push_back(ArcEdge::line(corner_of_skeleton, next.from));
            return;
        }
        const double t = ((next.from.x - edge.to.x) * e.y - (next.from.y - edge.to.y) * e.x) / sine;
        const Point tip{edge.to.x + t * d.x, edge.to.y + t * d.y};
        const auto limit = beyond_frame(tip);
        const Point first = limit ? across(edge.to, d, limit->first, limit->second) : tip;
        const Point second = limit ? across(next.from, e, limit->first, limit->second) : tip;
        if (edge.turn == 0) {
            edge.to = first;
            contour.push_back(edge);
        } else {
            contour.push_back(edge);
            contour.push_back(ArcEdge::line(edge.to, first));
        }
        if (limit) contour.push_back(ArcEdge::line(first, second));
        if (next.turn != 0)
            contour.push_back(ArcEdge::line(second, next.from));
        else
            next.from = second;
    }

    [[nodiscard]] static Point skeleton_corner(const ArcEdge& edge, const ArcEdge& next) {
        // Both ends lie equally far to the left of it, square to their edges.
        const Point d = direction_at_end(edge);
        const Point e = direction_at_start(next);
        const Point normal_difference{d.y - e.y, e.x - d.x};
        const Point end_difference{edge.to.x - next.from.x, edge.to.y - next.from.y};
        const double size =
            normal_difference.x * normal_difference.x + normal_difference.y * normal_difference.y;
        const double h =
            (normal_difference.x * end_difference.x + normal_difference.y * end_difference.y) / size;
        return {edge.to.x - h * d.y, edge.to.y + h * d.x};
    }
};

}  // namespace

std::vector<ArcContour> stroked(const Chain& chain, double width) {
    Side left(chain, width / 2, false);
    Side right(chain, -width / 2, true);
    if (chain.closed) return {left.joined(), right.joined()};
    const Point start = chain.edges.front().from;
    const Point end = chain.edges.back().to;
    left.cut_start(chain.start, start);
    right.cut_end(chain.start, start);
    left.cut_end(chain.end, end);
    right.cut_start(chain.end, end);
    ArcContour contour = left.joined();
    const ArcContour back = right.joined();
    contour.push_back(ArcEdge::line(contour.back().to, back.front().from));
    contour.insert(contour.end(), back.begin(), back.end());
    contour.push_back(ArcEdge::line(contour.back().to, contour.front().from));
    return {contour};
}

}  // namespace lode
