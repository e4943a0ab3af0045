#include "art/spine.hpp"

#include <cmath>
#include <iterator>

namespace lode {

namespace {

// A quarter turn.
Point turned(Point p, Turn turn) {
    return turn == Turn::clockwise ? Point{-p.y, p.x} : Point{p.y, -p.x};
}
Point moved(Point p, double by, Point along) {
    return {p.x + by * along.x, p.y + by * along.y};
}
Point end_of(const Contour& contour) {
    return contour.segments.empty() ? contour.start : contour.segments.back().to;
}

void append_turn(Contour& contour, Point centre, Point to, Turn turn) {
    if (turn == Turn::clockwise) {
        append_arc(contour, centre, to);
        return;
    }
    Contour back{to, {}};
    append_arc(back, centre, end_of(contour));
    for (const Segment& s : reversed(back).segments) contour.segments.push_back(s);
}

// Where a circle about `centre` through `edge` meets one about `end`, before the stroke gets there: `back` is
// the way that it came.
Point on_both(Point centre, Point edge, Point end, double knob, Point back) {
    const auto apart = [](Point a, Point b) {
        return std::sqrt((b.x - a.x) * (b.x - a.x) + (b.y - a.y) * (b.y - a.y));
    };
    const double radius = apart(centre, edge);
    const double distance = apart(centre, end);
    const Point out{(end.x - centre.x) / distance, (end.y - centre.y) / distance};
    const double along = (distance * distance + radius * radius - knob * knob) / (2 * distance);
    const double aside = std::sqrt(radius * radius - along * along);
    return moved(moved(centre, along, out), aside, back);
}

}  // namespace

void Spine::straight(double length) {
    if (!(length > 0)) return;
    const Point to = moved(end_, length, heading_);
    pieces_.push_back({end_, to, heading_, false, {}, Turn::clockwise});
    end_ = to;
}

void Spine::turn(double radius, Turn turn) {
    const Point next = turned(heading_, turn);
    const Point centre = moved(end_, radius, next);
    const Point to = moved(centre, radius, heading_);
    pieces_.push_back({end_, to, heading_, true, centre, turn});
    end_ = to;
    heading_ = next;
}

Point Spine::before(Point heading, std::size_t turns, Turn turn) {
    const Turn back = turn == Turn::clockwise ? Turn::anticlockwise : Turn::clockwise;
    for (; turns > 0; --turns) heading = turned(heading, back);
    return heading;
}

Path Spine::stroke(double breadth, double start_knob, double end_knob) const {
    const double half = breadth / 2;
    // Points of both edges where pieces meet; the ends' lie on the knobs.
    const auto edge_at = [&](std::size_t joint, Turn side) {
        const bool last = joint == pieces_.size();
        const Point at = last ? end_ : pieces_[joint].from;
        const Point heading = last ? heading_ : pieces_[joint].heading;
        const Point edge = moved(at, half, turned(heading, side));
        if (joint != 0 && !last) return edge;
        const Piece& piece = last ? pieces_.back() : pieces_.front();
        const double knob = last ? end_knob : start_knob;
        const Point inwards = last ? Point{-heading.x, -heading.y} : heading;
        if (!piece.round) return moved(edge, std::sqrt(knob * knob - half * half), inwards);
        return on_both(piece.centre, edge, at, knob, inwards);
    };
    // Along the left edge, round the end, back along the right one, round the start: clockwise to the eye.
    Contour contour{edge_at(0, Turn::anticlockwise), {}};
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
        const Point to = edge_at(i + 1, Turn::anticlockwise);
        if (pieces_[i].round)
            append_turn(contour, pieces_[i].centre, to, pieces_[i].turn);
        else
            contour.segments.push_back(Segment::line(to));
    }
    append_arc(contour, end_, edge_at(pieces_.size(), Turn::clockwise));
    for (std::size_t i = pieces_.size(); i-- > 0;) {
        const Point to = edge_at(i, Turn::clockwise);
        const Turn back = pieces_[i].turn == Turn::clockwise ? Turn::anticlockwise : Turn::clockwise;
        if (pieces_[i].round)
            append_turn(contour, pieces_[i].centre, to, back);
        else
            contour.segments.push_back(Segment::line(to));
    }
    append_arc(contour, start_, contour.start);
    return {{std::move(contour)}};
}

}  // namespace lode
