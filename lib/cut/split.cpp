// A piece is parted by a straight line through the whole of it, and what is still too large by further lines.
// Lines run in the middle of gaps between boxes of contours. On each axis the gaps at both ends are tried,
// and the one as far along as what lies before it still fits, as long as there is patience; so a wide heading
// is parted from the letters below it before it stands in the way of their columns. Then marks are set near
// both ends of each line, where no contour is and no other line runs.

#include "cut/split.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace lode {

namespace {

constexpr double mark_radius = 1.5;
constexpr double mark_clearance = 0.5;
// What the marks at both ends of a line may add to a part's side.
constexpr double marks_add = 2 * (2 * mark_radius + 2 * mark_clearance);

struct Shape {
    Contour contour;
    Box box;
    bool is_mark = false;
};
using Shapes = std::vector<Shape>;
using Numbers = std::vector<std::size_t>;

struct Line {
    bool across_x = false;  // it stands upright
    double at = 0;
    friend bool operator==(const Line&, const Line&) = default;
};
// How a part is parted further, if it is: what lies before the line, and what lies beyond.
struct Parting {
    Line line;
    std::vector<Parting> halves;  // two, or none
    std::size_t parts = 1;
};

double low(const Box& box, bool across_x) {
    return across_x ? box.left : box.top;
}
double high(const Box& box, bool across_x) {
    return across_x ? box.right : box.bottom;
}

class Parter {
  public:
    Parter(const std::vector<Box>& boxes, PartSize most) : boxes_(boxes), most_(most) {}

    // None where no line parts it.
    std::optional<Parting> part(const Numbers& all, const Box& lines = no_lines) {
        const Box box = box_of(all, lines);
        const double over_x = box.width() / most_.width_mm, over_y = box.height() / most_.height_mm;
        if (over_x <= 1 && over_y <= 1) return Parting{};
        std::vector<Choice> choices;
        for (const bool across_x : {over_x >= over_y, over_x < over_y})
            for (const Line& line : lines_of(all, across_x)) choices.push_back(choice(all, lines, line));
        // The most hopeful first: patience may end.
        std::stable_sort(choices.begin(), choices.end(),
                         [](const Choice& a, const Choice& b) { return a.at_best < b.at_best; });
        std::optional<Parting> best;
        for (const Choice& choice : choices) {
            if (best && (choice.at_best >= best->parts || tries_ >= most_tries)) break;
            if (tries_ >= most_tries_in_vain) break;
            ++tries_;
            auto first = part(choice.before, choice.lines_before);
            if (!first || (best && first->parts + at_best(choice.beyond, choice.lines_beyond) >= best->parts))
                continue;
            auto second = part(choice.beyond, choice.lines_beyond);
            if (!second || (best && first->parts + second->parts >= best->parts)) continue;
            Parting parting{choice.line, {}, first->parts + second->parts};
            parting.halves.push_back(std::move(*first));
            parting.halves.push_back(std::move(*second));
            best = std::move(parting);
        }
        return best;
    }

  private:
    struct Choice {
        Line line;
        Numbers before;
        Numbers beyond;
        Box lines_before;
        Box lines_beyond;
        std::size_t at_best = 0;
    };
    [[nodiscard]] Choice choice(const Numbers& all, const Box& lines, const Line& line) const {
        Choice choice{line, {}, {}, lines, lines, 0};
        for (const std::size_t i : all)
            (high(boxes_[i], line.across_x) < line.at ? choice.before : choice.beyond).push_back(i);
        (line.across_x ? choice.lines_before.right : choice.lines_before.bottom) = line.at;
        (line.across_x ? choice.lines_beyond.left : choice.lines_beyond.top) = line.at;
        choice.at_best =
            at_best(choice.before, choice.lines_before) + at_best(choice.beyond, choice.lines_beyond);
        return choice;
    }

    // With the lines that part it from others: its marks lie on them.
    static constexpr Box no_lines{1e300, 1e300, -1e300, -1e300};
    [[nodiscard]] Box box_of(const Numbers& numbers, const Box& lines) const {
        Box box = boxes_[numbers.front()];
        for (const std::size_t i : numbers) {
            box.left = std::min(box.left, boxes_[i].left);
            box.top = std::min(box.top, boxes_[i].top);
            box.right = std::max(box.right, boxes_[i].right);
            box.bottom = std::max(box.bottom, boxes_[i].bottom);
        }
        return {std::min(box.left, lines.left), std::min(box.top, lines.top),
                std::max(box.right, lines.right), std::max(box.bottom, lines.bottom)};
    }
    // Parts of what is evenly filled.
    [[nodiscard]] std::size_t at_best(const Numbers& numbers, const Box& lines) const {
        const Box box = box_of(numbers, lines);
        const double parts =
            std::ceil(box.width() / most_.width_mm) * std::ceil(box.height() / most_.height_mm);
        return static_cast<std::size_t>(std::clamp(parts, 1.0, 1e9));
    }

    // The farthest that leaves no more than fits before it, the first and the last.
    [[nodiscard]] std::vector<Line> lines_of(const Numbers& all, bool across_x) const {
        std::vector<std::pair<double, double>> extents;
        for (const std::size_t i : all)
            extents.emplace_back(low(boxes_[i], across_x), high(boxes_[i], across_x));
        std::sort(extents.begin(), extents.end());
        const double most = across_x ? most_.width_mm : most_.height_mm;
        double reach = extents.front().second;
        std::optional<double> farthest, first, last;
        for (const auto& [from, to] : extents) {
            if (from > reach) {
                last = reach + (from - reach) / 2;
                if (!first) first = last;
                // Its marks lie on the line, which is part of what lies before it.
                if (*last - extents.front().first <= most) farthest = last;
            }
            reach = std::max(reach, to);
        }
        std::vector<Line> lines;
        for (const auto& at : {farthest, first, last})
            if (at && std::find(lines.begin(), lines.end(), Line{across_x, *at}) == lines.end())
                lines.push_back({across_x, *at});
        return lines;
    }

    static constexpr int most_tries = 400;
    static constexpr int most_tries_in_vain = 4'000;  // while no parting was found
    const std::vector<Box>& boxes_;
    PartSize most_;
    int tries_ = 0;
};

// The half of a diamond about this point, on the line, that lies before or beyond the line.
Shape half_mark(Point at, bool across_x, bool beyond) {
    constexpr double r = mark_radius;
    const Point tips[4] = {{at.x, at.y - r}, {at.x + r, at.y}, {at.x, at.y + r}, {at.x - r, at.y}};
    // Tips run clockwise; a half takes three of them.
    const std::size_t first = across_x ? (beyond ? 0 : 2) : (beyond ? 1 : 3);
    Contour contour;
    contour.start = tips[first];
    for (std::size_t i = 1; i <= 3; ++i)
        contour.segments.push_back(Segment::line(i == 3 ? tips[first] : tips[(first + i) % 4]));
    return {contour, bounds(Path{{contour}}), true};
}

class Marker {
  public:
    Marker(const Shapes& all, const Parting& parting) : taken_(all) {
        list_lines(parting);
        part(all, parting);
    }
    std::vector<Shapes> parts() && { return std::move(parts_); }

  private:
    void list_lines(const Parting& parting) {
        if (parting.halves.empty()) return;
        lines_.push_back(parting.line);
        for (const Parting& half : parting.halves) list_lines(half);
    }

    void part(Shapes shapes, const Parting& parting) {
        if (parting.halves.empty()) {
            parts_.push_back(std::move(shapes));
            return;
        }
        const Line& line = parting.line;
        const bool across_x = line.across_x;
        Shapes before, beyond;
        for (Shape& shape : shapes)
            (high(shape.box, across_x) < line.at ? before : beyond).push_back(std::move(shape));
        // Where both halves are, so that no mark makes one of them much larger; or anywhere along either.
        const auto [from, to] = extent(before, !across_x);
        const auto [from_beyond, to_beyond] = extent(beyond, !across_x);
        double first = std::max(from, from_beyond), last = std::min(to, to_beyond);
        if (first > last) std::swap(first, last);
        const double middle = first + (last - first) / 2;
        first -= mark_radius + mark_clearance;
        last += mark_radius + mark_clearance;
        add_mark(before, beyond, line, first, middle);
        add_mark(before, beyond, line, last, middle);
        part(std::move(before), parting.halves[0]);
        part(std::move(beyond), parting.halves[1]);
    }

    static std::pair<double, double> extent(const Shapes& shapes, bool along_x) {
        std::pair<double, double> extent{1e300, -1e300};
        for (const Shape& shape : shapes) {
            extent.first = std::min(extent.first, low(shape.box, along_x));
            extent.second = std::max(extent.second, high(shape.box, along_x));
        }
        return extent;
    }

    // At the first free place on the line, from one end to its middle.
    void add_mark(Shapes& before, Shapes& beyond, const Line& line, double from, double to) {
        const int steps = static_cast<int>(std::min(std::fabs(to - from), 10'000.0));
        for (int step = 0; step <= steps; ++step) {
            const double along = from + (to > from ? step : -step);
            const Point at = line.across_x ? Point{line.at, along} : Point{along, line.at};
            if (!is_free(at, line)) continue;
            for (const bool is_beyond : {false, true}) {
                const Shape mark = half_mark(at, line.across_x, is_beyond);
                (is_beyond ? beyond : before).push_back(mark);
                taken_.push_back(mark);
            }
            return;
        }
    }

    [[nodiscard]] bool is_free(Point at, const Line& own) const {
        constexpr double reach = mark_radius + mark_clearance;
        const bool crossed = std::any_of(lines_.begin(), lines_.end(), [&](const Line& line) {
            return line != own && std::fabs((line.across_x ? at.x : at.y) - line.at) < reach;
        });
        return !crossed && std::none_of(taken_.begin(), taken_.end(), [&](const Shape& shape) {
            return shape.box.left < at.x + reach && shape.box.right > at.x - reach &&
                   shape.box.top < at.y + reach && shape.box.bottom > at.y - reach;
        });
    }

    Shapes taken_;  // with the marks so far
    std::vector<Line> lines_;
    std::vector<Shapes> parts_;
};

}  // namespace

std::vector<SplitPart> split(std::size_t number, const ToCut& piece, const std::vector<PartSize>& sizes) {
    Shapes all;
    std::vector<Box> boxes;
    Numbers numbers;
    for (const Contour& contour : piece.path.contours) {
        all.push_back({contour, bounds(Path{{contour}}), false});
        boxes.push_back(all.back().box);
        numbers.push_back(numbers.size());
    }
    std::optional<Parting> parting;
    for (const PartSize& size : sizes) {
        const PartSize unmarked{size.width_mm - marks_add, size.height_mm - marks_add};
        const bool holds_each = std::all_of(boxes.begin(), boxes.end(), [&](const Box& box) {
            return box.width() <= unmarked.width_mm && box.height() <= unmarked.height_mm;
        });
        if (!holds_each) continue;
        auto other = Parter(boxes, unmarked).part(numbers);
        if (other && (!parting || other->parts < parting->parts)) parting = std::move(other);
    }
    // A piece of one part is one that its marks' room alone would make too large: it has none.
    if (!parting || parting->parts < 2 || parting->parts > max_pieces_planned) return {};
    const std::vector<Shapes> fewest = Marker(all, *parting).parts();
    std::vector<SplitPart> result;
    for (const Shapes& shapes : fewest) {
        SplitPart part{number,
                       piece.name + ", part " + std::to_string(result.size() + 1) + " of " +
                           std::to_string(fewest.size()),
                       {},
                       {}};
        for (const Shape& shape : shapes)
            (shape.is_mark ? part.marks : part.path).contours.push_back(shape.contour);
        result.push_back(std::move(part));
    }
    return result;
}

}  // namespace lode
