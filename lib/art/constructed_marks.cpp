#include "art/constructed_marks.hpp"

#include <algorithm>
#include <cmath>

namespace lode {

namespace {

Skeleton draw_grave(const LetterMeasures& m) {
    const double reach = 0.085 + 0.3 * m.half;
    return {{Pen(-reach, reach).line(reach, -reach).open()}, {}};
}

Skeleton draw_acute(const LetterMeasures& m) {
    const double reach = 0.085 + 0.3 * m.half;
    return {{Pen(-reach, -reach).line(reach, reach).open()}, {}};
}

Skeleton draw_double_acute(const LetterMeasures& m) {
    const double reach = 0.085 + 0.3 * m.half;
    // Between both, square to them.
    const double apart = std::sqrt(2.0) * (m.stroke + m.gap) / 2 + 0.001;
    return {{Pen(-reach - apart, -reach).line(reach - apart, reach).open(),
             Pen(-reach + apart, -reach).line(reach + apart, reach).open()},
            {}};
}

// Two slants of 45 degrees: the point is flat, and the hollow below it open.
Skeleton draw_circumflex(const LetterMeasures& m) {
    const double reach = std::max(0.18, m.half + 0.12);
    return {{Pen(-reach, -reach).line(0, 0).line(reach, -reach).high(m.half).open()}, {}};
}

Skeleton draw_caron(const LetterMeasures& m) {
    const double reach = std::max(0.18, m.half + 0.12);
    return {{Pen(-reach, reach).line(0, 0).line(reach, reach).low(-m.half).open()}, {}};
}

double dot_radius(const LetterMeasures& m) {
    return 1.06 * m.half;
}

Skeleton draw_diaeresis(const LetterMeasures& m) {
    const double radius = dot_radius(m);
    const double apart = std::max(0.15, radius + m.gap / 2 + 0.0005);
    return {{}, {{{-apart, 0}, radius}, {{apart, 0}, radius}}};
}

Skeleton draw_dot(const LetterMeasures& m) {
    return {{}, {{{0, 0}, dot_radius(m)}}};
}

Skeleton draw_ring(const LetterMeasures& m) {
    const double radius = m.half + std::max(0.055, m.gap / 2 + 0.001);
    return {{oval(-radius, radius, -radius, radius)}, {}};
}

Skeleton draw_macron(const LetterMeasures&) {
    return {{bar(0, -0.20, 0.20)}, {}};
}

// Half a ring, open above.
Skeleton draw_breve(const LetterMeasures& m) {
    const double radius = std::max(0.15, m.half + m.gap / 2 + 0.01);
    return {{Pen(-radius, 0).plumb_to_level(0, -radius).level_to_plumb(radius, 0).open()}, {}};
}

// Two arcs of a quarter and the straight stroke between them.
Skeleton draw_tilde(const LetterMeasures& m) {
    const double radius = m.half + 0.07;
    const double slant = std::sqrt(0.5) * radius;
    const double rise = 0.035;
    // From a crest on the left down to a trough on the right, both arcs of 90 degrees about their middles.
    const double crest_x = -rise - slant;
    const double crest_y = rise - slant;
    return {{Pen(crest_x - slant, crest_y + slant)
                 .arc(crest_x, crest_y, crest_x + slant, crest_y + slant, 1)
                 .line(-crest_x - slant, -crest_y - slant)
                 .arc(-crest_x, -crest_y, -crest_x + slant, -crest_y - slant, -1)
                 .open()},
            {}};
}

Skeleton draw_comma_below(const LetterMeasures& m) {
    const double length = std::max(0.10 + m.half, 1.1 * m.stroke);
    return {{Pen(0.25 * length, 0)
                 .line(-0.25 * length, -length)
                 .start(StrokeEnd::level)
                 .end(StrokeEnd::level)
                 .open()},
            {}};
}

// From the letter's foot down, and round to one side: to the right for 1, to the left for -1.
Skeleton hook(const LetterMeasures& m, int side) {
    const double low = -m.gap - m.half - m.overshoot - 0.003;
    const double turn = m.half + 0.03;
    return {{Pen(0, m.half)
                 .line(0, low + turn)
                 .plumb_to_level(side * turn, low)
                 .line(side * (turn + 0.07), low)
                 .open()},
            {}};
}
Skeleton draw_cedilla(const LetterMeasures& m) {
    return hook(m, -1);
}
Skeleton draw_ogonek(const LetterMeasures& m) {
    return hook(m, 1);
}

// Where a mark stands that is joined to the letter: below a foot if the ogonek has one, and where an e and an
// S have a stroke at the baseline in every style.
double joint(const LetterMeasures& m, std::string_view letter, const MarkShape& mark, const Box& box) {
    constexpr UChar32 ogonek = 0x0328;
    const double middle = box.centre().x;
    if (letter == "S" || letter == "s") return middle + m.half;
    if (letter == "e") return middle - m.half;
    if (mark.mark != ogonek) return middle;
    if (letter == "A") return box.right - 1.2 * m.half;
    if (letter == "a") return box.right - m.half;
    return letter == "E" ? middle + 0.1 * box.width() : middle;
}

std::vector<ArcContour> inked(const LetterMeasures& m, const Skeleton& skeleton) {
    std::vector<ArcContour> contours;
    for (const Chain& chain : skeleton.chains)
        for (ArcContour& contour : stroked(chain, m.stroke)) contours.push_back(std::move(contour));
    for (const Dot& dot : skeleton.dots) {
        const Point left{dot.centre.x - dot.radius, dot.centre.y};
        const Point right{dot.centre.x + dot.radius, dot.centre.y};
        contours.push_back(
            {{left, right, 1, dot.centre, dot.radius}, {right, left, 1, dot.centre, dot.radius}});
    }
    return outline_of_union(contours);
}

Box box_of(const LetterMeasures& m, const Skeleton& skeleton) {
    return bounds(path_of(inked(m, skeleton)));
}

// The box of a curve is a hair wider than the arc: what is meant to stand on a stem stands on it.
double rounded(double x) {
    return std::round(x * 1e5) / 1e5;
}

void append(Skeleton& skeleton, const Skeleton& other) {
    skeleton.chains.insert(skeleton.chains.end(), other.chains.begin(), other.chains.end());
    skeleton.dots.insert(skeleton.dots.end(), other.dots.begin(), other.dots.end());
}

}  // namespace

const MarkShape* mark_shape(UChar32 mark) {
    static const std::vector<MarkShape> shapes{
        {0x0300, MarkPlace::above, draw_grave},      {0x0301, MarkPlace::above, draw_acute},
        {0x0302, MarkPlace::above, draw_circumflex}, {0x0303, MarkPlace::above, draw_tilde},
        {0x0304, MarkPlace::above, draw_macron},     {0x0306, MarkPlace::above, draw_breve},
        {0x0307, MarkPlace::above, draw_dot},        {0x0308, MarkPlace::above, draw_diaeresis},
        {0x030A, MarkPlace::above, draw_ring},       {0x030B, MarkPlace::above, draw_double_acute},
        {0x030C, MarkPlace::above, draw_caron},      {0x0326, MarkPlace::below, draw_comma_below},
        {0x0327, MarkPlace::joined, draw_cedilla},   {0x0328, MarkPlace::joined, draw_ogonek},
        {0x0323, MarkPlace::below, draw_dot},
    };
    for (const MarkShape& shape : shapes)
        if (shape.mark == mark) return &shape;
    return nullptr;
}

Path outline_with_marks(const LetterMeasures& m, const LetterShape& letter,
                        const std::vector<const MarkShape*>& marks) {
    Skeleton skeleton = letter.draw(m);
    const Box box = box_of(m, skeleton);
    // Marks stand at one height above all capitals, and at one above all small letters without an ascender.
    double above =
        std::min(box.top, box.top < -m.x_height - 0.1 ? -1 - m.overshoot : -m.x_height - m.overshoot);
    double below = std::max(box.bottom, m.overshoot);
    for (const MarkShape* mark : marks) {
        Skeleton drawn = mark->draw(m);
        // The foot of an A leans: a hook that started in its middle would stand out beside it.
        if (mark->place == MarkPlace::joined && letter.letter == "A")
            drawn.chains.front().edges.front().from.y = -0.1 * m.half;
        const Box own = box_of(m, drawn);
        const double x = mark->place == MarkPlace::joined ? joint(m, letter.letter, *mark, box)
                                                          : box.centre().x - own.centre().x;
        double y = 0;
        if (mark->place == MarkPlace::above) {
            y = above - m.gap - own.bottom;
            above = y + own.top;
        } else if (mark->place == MarkPlace::below) {
            y = below + m.gap - own.top;
            below = y + own.bottom;
        }
        append(skeleton, moved(drawn, rounded(x), -y));
    }
    std::vector<ArcContour> contours = inked(m, skeleton);
    constexpr double roundness = 0.2;  // of a corner, in strokes: by eye
    for (ArcContour& contour : contours)
        contour = with_rounded_corners(contour, roundness * m.stroke, roundness * m.stroke);
    return path_of(contours);
}

}  // namespace lode
