#include "art/svg_path_data.hpp"

#include <algorithm>
#include <cmath>

#include "art/affine.hpp"
#include "art/svg_text.hpp"

namespace lode {

namespace {

Point end_of(const Contour& contour) {
    return contour.segments.empty() ? contour.start : contour.segments.back().to;
}

Point unit(Point p) {
    const double size = std::sqrt(p.x * p.x + p.y * p.y);
    return {p.x / size, p.y / size};
}

bool is_command(char c) {
    return std::string_view("MmLlHhVvCcSsQqTtAaZz").find(c) != std::string_view::npos;
}

// The commands change where the pen stands, where a new subpath would start, and the control that a smooth
// curve continues.
class PathReader {
  public:
    PathReader(std::string_view data, std::size_t most) : read_(data), most_(most) {}

    PathData all() {
        read_.skip_blanks();
        while (!read_.ended() && good_) {
            place_ = read_.place();
            if (!is_command(read_.next())) return failed();
            const char command = read_.take();
            if (before_first_ && command != 'M' && command != 'm') return failed();
            before_first_ = false;
            run(command);
            read_.skip_blanks();
        }
        if (!good_) return failed();
        finish();
        return std::move(result_);
    }

  private:
    PathData failed() {
        result_.fault = place_;
        return std::move(result_);
    }

    double number() {
        if (!good_) return 0;
        read_.skip_separator();
        place_ = read_.place();
        const auto value = read_.number();
        if (!value) good_ = false;
        return value.value_or(0);
    }
    bool flag() {
        if (!good_) return false;
        read_.skip_separator();
        place_ = read_.place();
        const auto value = read_.flag();
        if (!value) good_ = false;
        return value.value_or(false);
    }
    Point point(bool relative) {
        const double x = number();
        const double y = number();
        return relative ? Point{pen_.x + x, pen_.y + y} : Point{x, y};
    }
    [[nodiscard]] bool another() {
        SvgText ahead = read_;
        ahead.skip_separator();
        const char c = ahead.next();
        return (c >= '0' && c <= '9') || c == '+' || c == '-' || c == '.';
    }

    void begin(Point start) {
        finish();
        current_ = Subpath{{start, {}}, false};
        begun_ = true;
        pen_ = start;
    }
    void finish() {
        if (begun_ && !current_.contour.segments.empty()) result_.subpaths.push_back(std::move(current_));
        begun_ = false;
    }
    Contour& contour() {
        if (!begun_) begin(pen_);
        return current_.contour;
    }
    void draw(const Segment& segment) {
        contour().segments.push_back(segment);
        pen_ = segment.to;
        if (++segments_ > most_) good_ = false;
    }

    void run(char command) {
        const bool relative = command >= 'a';
        const char kind = relative ? static_cast<char>(command - 'a' + 'A') : command;
        if (kind == 'Z') {
            const Point start = contour().start;
            close(current_);
            finish();
            pen_ = start;
            last_ = kind;
            return;
        }
        bool first = true;
        do {
            // Pairs after the first of a move are lines.
            if (kind == 'M' && first)
                begin(point(relative));
            else
                one(kind, relative);
            last_ = kind;
            first = false;
        } while (good_ && another());
    }

    void one(char kind, bool relative) {
        const Point from = pen_;
        const auto mirrored_control = [&](bool applies) {
            return applies ? Point{2 * from.x - control_.x, 2 * from.y - control_.y} : from;
        };
        const auto cubic = [&](Point control1, Point control2, Point to) {
            draw(Segment::cubic(control1, control2, to));
            control_ = control2;
        };
        const auto quadratic = [&](Point control, Point to) {
            draw(
                Segment::cubic({from.x + (control.x - from.x) * 2 / 3, from.y + (control.y - from.y) * 2 / 3},
                               {to.x + (control.x - to.x) * 2 / 3, to.y + (control.y - to.y) * 2 / 3}, to));
            control_ = control;
        };
        switch (kind) {
            case 'M':
            case 'L':
                draw(Segment::line(point(relative)));
                break;
            case 'H':
                draw(Segment::line({number() + (relative ? from.x : 0), from.y}));
                break;
            case 'V':
                draw(Segment::line({from.x, number() + (relative ? from.y : 0)}));
                break;
            case 'C': {
                const Point control1 = point(relative), control2 = point(relative), to = point(relative);
                cubic(control1, control2, to);
                break;
            }
            case 'S': {
                const Point control1 = mirrored_control(last_ == 'C' || last_ == 'S');
                const Point control2 = point(relative), to = point(relative);
                cubic(control1, control2, to);
                break;
            }
            case 'Q': {
                const Point control = point(relative), to = point(relative);
                quadratic(control, to);
                break;
            }
            case 'T': {
                const Point control = mirrored_control(last_ == 'Q' || last_ == 'T');
                quadratic(control, point(relative));
                break;
            }
            default:
                arc(relative);
        }
    }

    void arc(bool relative) {
        const double rx = number(), ry = number(), degrees = number();
        const bool large = flag(), sweep = flag();
        const Point to = point(relative);
        if (!good_) return;
        const std::size_t before = contour().segments.size();
        append_elliptical_arc(contour(), rx, ry, degrees, large, sweep, to);
        segments_ += contour().segments.size() - before;
        if (segments_ > most_) good_ = false;
        pen_ = to;
    }

    SvgText read_;
    std::size_t most_;
    PathData result_;
    Subpath current_;
    bool begun_ = false;
    std::size_t segments_ = 0;
    std::size_t place_ = 0;
    Point pen_;
    Point control_;
    char last_ = 'M';
    bool before_first_ = true;
    bool good_ = true;
};

}  // namespace

PathData read_path_data(std::string_view data, std::size_t most_segments) {
    return PathReader(data, most_segments).all();
}

void close(Subpath& subpath) {
    if (end_of(subpath.contour) != subpath.contour.start)
        subpath.contour.segments.push_back(Segment::line(subpath.contour.start));
    subpath.closed = true;
}

void append_elliptical_arc(Contour& contour, double rx, double ry, double degrees, bool large, bool sweep,
                           Point to) {
    const Point from = end_of(contour);
    if (from == to) return;
    rx = std::abs(rx);
    ry = std::abs(ry);
    if (rx == 0 || ry == 0) {
        contour.segments.push_back(Segment::line(to));
        return;
    }
    // In a system in which the ellipse is the unit circle, and half of the chord starts at the origin.
    const AngleTurn turn = turn_of(degrees);
    const double x = (from.x - to.x) / 2, y = (from.y - to.y) / 2;
    Point half{(turn.cosine * x + turn.sine * y) / rx, (turn.cosine * y - turn.sine * x) / ry};
    const double square = half.x * half.x + half.y * half.y;
    Point centre{};
    if (square >= 1) {
        const double larger = std::sqrt(square);
        rx *= larger;
        ry *= larger;
        half = {half.x / larger, half.y / larger};
    } else if (square < 1e-14 && !large) {
        // So flat that the centre is too far away to be reckoned with.
        contour.segments.push_back(Segment::line(to));
        return;
    } else {
        const double away = std::sqrt((1 - square) / square) * (large != sweep ? 1 : -1);
        centre = {away * half.y, -away * half.x};
    }
    const Point start = unit({half.x - centre.x, half.y - centre.y});
    const Point end = unit({-half.x - centre.x, -half.y - centre.y});
    // The circle's arcs turn clockwise to the eye; one that turns the other way is drawn from its end.
    Contour arc{sweep ? start : end, {}};
    append_arc(arc, {0, 0}, sweep ? end : start);
    if (!sweep) {
        Contour back{start, {}};
        for (std::size_t i = arc.segments.size(); i-- > 0;) {
            const Segment& s = arc.segments[i];
            back.segments.push_back(
                Segment::cubic(s.control2, s.control1, i == 0 ? arc.start : arc.segments[i - 1].to));
        }
        arc = std::move(back);
    }
    const Affine stretch{turn.cosine * rx, turn.sine * rx, -turn.sine * ry, turn.cosine * ry, 0, 0};
    const Point moved = stretch(centre);
    Affine map = stretch;
    map.e = moved.x + (from.x + to.x) / 2;
    map.f = moved.y + (from.y + to.y) / 2;
    Contour placed = mapped(arc, map);
    placed.segments.back().to = to;
    contour.segments.insert(contour.segments.end(), placed.segments.begin(), placed.segments.end());
}

Subpath ellipse_outline(Point centre, double rx, double ry) {
    Contour circle{{1, 0}, {}};
    append_arc(circle, {0, 0}, {1, 0});
    return {mapped(circle, {rx, 0, 0, ry, centre.x, centre.y}), true};
}

Subpath rectangle_outline(const Box& box, double rx, double ry) {
    rx = std::min(rx, box.width() / 2);
    ry = std::min(ry, box.height() / 2);
    const bool round = rx > 0 && ry > 0;
    if (!round) rx = ry = 0;
    Contour contour{{box.left + rx, box.top}, {}};
    const auto side = [&](Point to, Point corner_end) {
        contour.segments.push_back(Segment::line(to));
        if (round) append_elliptical_arc(contour, rx, ry, 0, false, true, corner_end);
    };
    side({box.right - rx, box.top}, {box.right, box.top + ry});
    side({box.right, box.bottom - ry}, {box.right - rx, box.bottom});
    side({box.left + rx, box.bottom}, {box.left, box.bottom - ry});
    side({box.left, box.top + ry}, contour.start);
    contour.segments.back().to = contour.start;
    return {std::move(contour), true};
}

}  // namespace lode
