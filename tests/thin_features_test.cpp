// Thin strokes and narrow gaps: shapes whose widths are known by construction, letters against balls that
// shrink on the true curves (support/shrinking_ball.hpp), and shapes that no designer would draw.

#include "cut/thin_features.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "art/font.hpp"
#include "support/shrinking_ball.hpp"

using namespace lode;

namespace {

const double degree = std::acos(-1) / 180;

Contour polygon(const std::vector<Point>& corners) {
    Contour contour{corners.front(), {}};
    for (std::size_t i = 1; i < corners.size(); ++i) contour.segments.push_back(Segment::line(corners[i]));
    contour.segments.push_back(Segment::line(corners.front()));
    return contour;
}

Contour circle(Point centre, double radius) {
    Contour contour{{centre.x + radius, centre.y}, {}};
    append_arc(contour, centre, contour.start);
    return contour;
}

Contour box(double left, double top, double right, double bottom) {
    return polygon({{left, top}, {right, top}, {right, bottom}, {left, bottom}});
}

double stroke(const Path& path) {
    const auto found = narrowest(path).stroke;
    REQUIRE(found);
    return found->width;
}

double gap(const Path& path) {
    const auto found = narrowest(path).gap;
    REQUIRE(found);
    return found->width;
}

double distance(Point a, Point b) {
    return std::hypot(a.x - b.x, a.y - b.y);
}

// A stem 2 wide and 10 high with arms of these widths, 8 long, 1 below one another.
Path comb(const std::vector<double>& arms) {
    std::vector<Point> corners{{0, 0}};
    double y = 0;
    for (const double arm : arms) {
        corners.insert(corners.end(), {{10, y}, {10, y + arm}, {2, y + arm}, {2, y + arm + 1}});
        y += arm + 1;
    }
    corners.pop_back();
    corners.pop_back();
    corners.push_back({0, y - 1});
    return {{polygon(corners)}};
}

Path letter(Font& font, const std::string& text, double caps) {
    auto line = font.set_line(text);
    REQUIRE(line);
    REQUIRE(line->missing.empty());
    REQUIRE(line->letters.size() == 1);
    return transformed(line->letters[0].path, caps / font.cap_height(), {});
}

Font opened(const std::string& asked) {
    auto file = find_font(asked);
    REQUIRE(file);
    auto font = Font::open(*std::move(file));
    REQUIRE(font);
    return *std::move(font);
}

}  // namespace

TEST_CASE("a stadium is as narrow as its two radii, and has no gap") {
    const Path path = capsule({3, 4}, {11, 9}, 0.75);
    CHECK(stroke(path) == Approx(1.5).epsilon(1e-4));
    CHECK_FALSE(narrowest(path).gap);
    const NarrowPlace place = *narrowest(path).stroke;
    CHECK(distance(place.from, place.to) == Approx(place.width).epsilon(1e-4));
    CHECK(distance(place.middle, place.from) == Approx(place.width / 2).epsilon(1e-4));
}

TEST_CASE("a ring is as narrow as its radii differ, and its counter as wide as the hole") {
    const Path even{{circle({5, 5}, 4), reversed(circle({5, 5}, 3.25))}};
    CHECK(stroke(even) == Approx(0.75).epsilon(1e-4));
    CHECK(gap(even) == Approx(6.5).epsilon(1e-4));
    // Off the middle, it is narrowest where the hole comes nearest to the outside.
    const Path uneven{{circle({5, 5}, 4), reversed(circle({5.3, 5.4}, 3))}};
    CHECK(stroke(uneven) == Approx(0.5).epsilon(1e-4));
    CHECK(narrowest(uneven).stroke->middle.x == Approx(5 + 0.6 * 3.75).epsilon(1e-2));
    CHECK(narrowest(uneven).stroke->middle.y == Approx(5 + 0.8 * 3.75).epsilon(1e-2));
}

TEST_CASE("a disc and a triangle are as narrow as the largest disc in them") {
    CHECK(stroke({{circle({1, 1}, 2)}}) == Approx(4).epsilon(1e-4));
    // A wedge of 20 degrees: no place of it is anything but the corner. In-radius: area over half the
    // perimeter.
    const double half = 10 * std::tan(10 * degree);
    const double slant = 10 / std::cos(10 * degree);
    const Path wedge{{polygon({{0, 0}, {10, -half}, {10, half}})}};
    CHECK(stroke(wedge) == Approx(2 * 10 * half / (half + slant)).epsilon(1e-4));
}

TEST_CASE("a wedge that is cut off is measured by the disc in its blunt end") {
    const double tip = 0.4;
    const double start = tip / 2 / std::tan(10 * degree);
    const double half = (start + 10) * std::tan(10 * degree);
    const Path blunt{{polygon({{0, -tip / 2}, {10, -half}, {10, half}, {0, tip / 2}})}};
    CHECK(stroke(blunt) == Approx(tip * std::cos(10 * degree) / (1 - std::sin(10 * degree))).epsilon(1e-4));
    // Sides that diverge by more than 30 degrees are not opposite.
    const Path wide{{polygon({{0, -0.2},
                              {10, -0.2 - 10 * std::tan(16 * degree)},
                              {10, 0.2 + 10 * std::tan(16 * degree)},
                              {0, 0.2}})}};
    CHECK(stroke(wide) > 4);
}

TEST_CASE("a rounded rectangle is as narrow as its lesser side") {
    Contour contour{{1, 0}, {Segment::line({9, 0})}};
    append_arc(contour, {9, 1}, {10, 1});
    contour.segments.push_back(Segment::line({10, 2}));
    append_arc(contour, {9, 2}, {9, 3});
    contour.segments.push_back(Segment::line({1, 3}));
    append_arc(contour, {1, 2}, {0, 2});
    contour.segments.push_back(Segment::line({0, 1}));
    append_arc(contour, {1, 1}, {1, 0});
    CHECK(stroke({{contour}}) == Approx(3).epsilon(1e-4));
}

TEST_CASE("letters of bars are as narrow as their thinnest bar and their nearest bars") {
    CHECK(stroke(comb({0.9, 0.7, 0.8})) == Approx(0.7).epsilon(1e-5));
    CHECK(gap(comb({0.9, 0.7, 0.8})) == Approx(1).epsilon(1e-5));
    // An H: stems of 1.5, 3 apart, a bar of 0.6.
    const Path h{{polygon({{0, 0},
                           {1.5, 0},
                           {1.5, 4},
                           {4.5, 4},
                           {4.5, 0},
                           {6, 0},
                           {6, 10},
                           {4.5, 10},
                           {4.5, 4.6},
                           {1.5, 4.6},
                           {1.5, 10},
                           {0, 10}})}};
    CHECK(stroke(h) == Approx(0.6).epsilon(1e-5));
    CHECK(gap(h) == Approx(3).epsilon(1e-5));
    // The same H of three boxes that overlap.
    const Path boxes{{box(0, 0, 1.5, 10), box(1, 4, 5, 4.6), box(4.5, 0, 6, 10)}};
    CHECK(stroke(boxes) == Approx(0.6).epsilon(1e-5));
    CHECK(gap(boxes) == Approx(3).epsilon(1e-5));
}

TEST_CASE("an aperture and a slit are gaps, a notch that opens outward is none") {
    // A ring with a sector of it cut out: its two ends are corners opposite to one another.
    const double sine = std::sin(20 * degree);
    const double cosine = std::cos(20 * degree);
    Contour open{{5 * cosine, 5 * sine}, {}};
    append_arc(open, {}, {5 * cosine, -5 * sine});
    open.segments.push_back(Segment::line({4 * cosine, -4 * sine}));
    Contour inner{{4 * cosine, 4 * sine}, {}};
    append_arc(inner, {}, {4 * cosine, -4 * sine});
    inner.segments.push_back(Segment::line(inner.start));
    const Contour back = reversed(inner);  // its first segment is the line, turned round
    open.segments.insert(open.segments.end(), back.segments.begin() + 1, back.segments.end());
    open.segments.push_back(Segment::line(open.start));
    CHECK(gap({{open}}) == Approx(8 * sine).epsilon(1e-4));
    CHECK(stroke({{open}}) == Approx(1).epsilon(1e-4));

    // A V whose notch is 24 degrees wide, sharp or with a floor of 0.1.
    const double rise = 10 * std::tan(12 * degree);
    const Path sharp{
        {polygon({{-rise, 0}, {0, 10}, {rise, 0}, {rise + 2, 0}, {1, 14}, {-1, 14}, {-rise - 2, 0}})}};
    CHECK_FALSE(narrowest(sharp).gap);
    const Path floored{{polygon({{-rise - 0.05, 0},
                                 {-0.05, 10},
                                 {0.05, 10},
                                 {rise + 0.05, 0},
                                 {rise + 2, 0},
                                 {1, 14},
                                 {-1, 14},
                                 {-rise - 2, 0}})}};
    CHECK_FALSE(narrowest(floored).gap);
    // A slit.
    const Path slit{{polygon({{0, 0}, {4, 0}, {4, 6}, {4.3, 6}, {4.3, 0}, {9, 0}, {9, 9}, {0, 9}})}};
    CHECK(gap(slit) == Approx(0.3).epsilon(1e-5));
}

TEST_CASE("the space between a letter and its mark is a gap") {
    const Path dotted{{box(0, 3, 1, 10), circle({0.5, 1.5}, 1)}};
    CHECK(gap(dotted) == Approx(0.5).epsilon(1e-4));
    CHECK(stroke(dotted) == Approx(1).epsilon(1e-5));
}

TEST_CASE("each limb that is too narrow is told once, narrowest first") {
    const Path path = comb({0.6, 1.2, 0.4, 0.5});
    const auto strokes = narrow_strokes(path, 1, 10);
    REQUIRE(strokes.size() == 3);
    CHECK(strokes[0].width == Approx(0.4).epsilon(1e-5));
    CHECK(strokes[1].width == Approx(0.5).epsilon(1e-5));
    CHECK(strokes[2].width == Approx(0.6).epsilon(1e-5));
    CHECK(strokes[0].middle.y == Approx(0.6 + 1 + 1.2 + 1 + 0.2));
    CHECK(narrow_strokes(path, 1, 2).size() == 2);
    CHECK(narrow_strokes(path, 0.3, 10).empty());
    const auto gaps = narrow_gaps(path, 1.01, 10);
    CHECK(gaps.size() == 3);
    for (const NarrowPlace& place : gaps) CHECK(place.width == Approx(1).epsilon(1e-5));
    CHECK(narrow_gaps(path, 0.99, 10).empty());
}

TEST_CASE("capitals are as narrow as shrinking balls find them") {
    for (const std::string asked : {"DejaVu Sans", "DejaVu Serif:bold", "DejaVu Sans Mono:oblique"}) {
        Font font = opened(asked);
        for (const std::string text : {"A", "B", "K", "M", "Q", "R", "S", "É", "Ø"}) {
            CAPTURE(asked, text);
            const Path path = letter(font, text, 8);
            const Narrowest found = narrowest(path);
            const judge::Widths judged = judge::narrowest_by_balls(path, 0.025);
            REQUIRE(found.stroke);
            REQUIRE(judged.stroke);
            CHECK(std::abs(found.stroke->width - *judged.stroke) < 0.01);
            REQUIRE(found.gap.has_value() == judged.gap.has_value());
            if (found.gap) CHECK(std::abs(found.gap->width - *judged.gap) < 0.01);
        }
    }
}

TEST_CASE("a scaled and moved letter is as narrow as the scale makes it") {
    Font font = opened("DejaVu Serif:italic");
    for (const std::string text : {"B", "Q", "S", "Å", "Ğ"}) {
        CAPTURE(text);
        const Path path = letter(font, text, 8);
        const Narrowest one = narrowest(path);
        for (const double scale : {0.001, 0.37, 3.0, 1024.0}) {
            const Point shift{17.3 * scale, -4.1};
            const Narrowest other = narrowest(transformed(path, scale, shift));
            CHECK(other.stroke->width == Approx(one.stroke->width * scale).epsilon(1e-6));
            CHECK(other.gap->width == Approx(one.gap->width * scale).epsilon(1e-6));
            // Where a stroke is as narrow in many places, which is told is a matter of rounding: not so in a
            // B.
            if (text == "B")
                CHECK(other.stroke->middle.x == Approx(one.stroke->middle.x * scale + shift.x).epsilon(1e-4));
        }
        const Narrowest seen_from_behind = narrowest(mirrored(path, 100));
        CHECK(seen_from_behind.stroke->width == Approx(one.stroke->width).epsilon(1e-4));
        CHECK(seen_from_behind.gap->width == Approx(one.gap->width).epsilon(1e-4));
    }
}

TEST_CASE("nothing has no width") {
    CHECK_FALSE(narrowest({}).stroke);
    CHECK_FALSE(narrowest({}).gap);
    CHECK_FALSE(narrowest({{Contour{{1, 1}, {}}}}).stroke);
    CHECK_FALSE(narrowest({{Contour{{1, 1}, {Segment::line({1, 1})}}}}).stroke);
    CHECK_FALSE(narrowest({{polygon({{0, 0}, {5, 5}})}}).stroke);
    CHECK_FALSE(narrowest({{polygon({{0, 0}, {5, 5}, {2, 2}})}}).stroke);
    CHECK(narrow_strokes({}, 1, 9).empty());
    CHECK(near_pieces({}, 1).empty());
    CHECK(near_pieces(std::vector<Path>(3), 1).empty());
}

TEST_CASE("contours that touch, overlap, repeat or run the wrong way are one shape") {
    CHECK(stroke({{box(0, 0, 4, 2), box(4, 0, 8, 2)}}) == Approx(2).epsilon(1e-5));  // side by side
    CHECK(stroke({{box(0, 0, 4, 2), box(3, 0, 8, 2)}}) == Approx(2).epsilon(1e-5));
    CHECK(stroke({{box(0, 0, 4, 2), box(0, 0, 4, 2)}}) == Approx(2).epsilon(1e-5));
    CHECK(stroke({{reversed(box(0, 0, 4, 2))}}) == Approx(2).epsilon(1e-5));
    CHECK(stroke({{box(0, 0, 4, 2), box(1, 0.5, 2, 1.5)}}) == Approx(2).epsilon(1e-5));  // one within another
    CHECK(stroke({{box(0, 0, 2, 2), box(2, 2, 5, 5)}}) == Approx(2).epsilon(1e-5));      // at a corner
    CHECK(stroke({{circle({0, 0}, 1), circle({2, 0}, 1)}}) == Approx(2).epsilon(1e-3));  // at a point
    // A cross of two strokes that cross themselves, in one contour.
    const Path bow{{polygon({{0, 0}, {6, 6}, {6, 0}, {0, 6}})}};
    CHECK(stroke(bow) > 0);
}

TEST_CASE("whatever is drawn is measured, and no narrower than nothing") {
    std::mt19937 random(5);
    const auto number = [&](double most) { return most * static_cast<double>(random()) / 4294967296.0; };
    for (int drawing = 0; drawing < 40; ++drawing) {
        CAPTURE(drawing);
        Path path;
        const bool coarse = drawing % 2 == 0;  // points on a coarse lattice meet and overlap often
        const auto point = [&] {
            return coarse ? Point{std::floor(number(6)), std::floor(number(6))} : Point{number(6), number(6)};
        };
        for (unsigned k = 0; k < 1 + random() % 4; ++k) {
            Contour contour{point(), {}};
            for (unsigned i = 0; i < 3 + random() % 20; ++i)
                contour.segments.push_back(random() % 2 ? Segment::line(point())
                                                        : Segment::cubic(point(), point(), point()));
            path.contours.push_back(contour);
        }
        const auto strokes = narrow_strokes(path, 1, 1000);
        for (std::size_t i = 0; i < strokes.size(); ++i) {
            CHECK(strokes[i].width > 0);
            CHECK(strokes[i].width < 1);
            if (i > 0) CHECK(strokes[i].width >= strokes[i - 1].width);
        }
        const auto least = narrowest(path).stroke;
        CHECK(strokes.empty() == !(least && least->width < 1));
        if (!strokes.empty()) CHECK(strokes[0].width == least->width);
    }
}

TEST_CASE("ten thousand sides are measured") {
    // A gear: radii of 10 and 9.9 in turn. It is as wide as the circle that its inner corners leave.
    std::vector<Point> corners;
    for (int i = 0; i < 10'000; ++i) {
        const double angle = i * 0.036 * degree;
        const double radius = i % 2 ? 10 : 9.9;
        corners.push_back({radius * std::cos(angle), radius * std::sin(angle)});
    }
    CHECK(stroke({{polygon(corners)}}) == Approx(19.8).epsilon(1e-3));
}

TEST_CASE("pieces near one another are told with how near they are") {
    const std::vector<Path> pieces{{{circle({0, 0}, 1)}},
                                   {{circle({3, 4}, 3.5)}},
                                   {{box(20, 0, 21, 9)}},
                                   {{box(21.25, 3, 25, 4)}},
                                   {{circle({0, 0}, 60), reversed(circle({0, 0}, 50))}},
                                   {{circle({48, 0}, 1)}}};
    const auto near = near_pieces(pieces, 1.5);
    REQUIRE(near.size() == 3);
    CHECK((near[0].one == 2 && near[0].other == 3));
    CHECK(near[0].place.width == Approx(0.25));
    CHECK((near[1].one == 0 && near[1].other == 1));
    CHECK(near[1].place.width == Approx(0.5).epsilon(1e-4));
    CHECK(near[1].place.from.x == Approx(0.6).epsilon(1e-3));
    CHECK(near[1].place.to.y == Approx(4 - 0.8 * 3.5).epsilon(1e-3));
    CHECK((near[2].one == 4 && near[2].other == 5));
    CHECK(near[2].place.width == Approx(1).epsilon(1e-3));
    CHECK(near_pieces(pieces, 0.2).empty());
}

TEST_CASE("pieces that touch, cross or cover one another are no distance apart") {
    const auto apart = [](const Path& one, const Path& other) {
        const auto near = near_pieces(std::vector<Path>{one, other}, 1);
        REQUIRE(near.size() == 1);
        return near[0].place.width;
    };
    CHECK(apart({{box(0, 0, 2, 2)}}, {{box(2, 1, 4, 3)}}) == 0);
    CHECK(apart({{box(0, 0, 2, 2)}}, {{box(1, -1, 1.5, 3)}}) == 0);
    CHECK(apart({{box(0, 0, 20, 20)}}, {{box(9, 9, 10, 10)}}) == 0);
    CHECK(apart({{box(9, 9, 10, 10)}}, {{box(0, 0, 20, 20)}}) == 0);
    CHECK(apart({{circle({0, 0}, 1)}}, {{circle({2, 0}, 1)}}) == Approx(0).margin(1e-5));
}

TEST_CASE("a few hundred pieces are paired as every pair looked at by itself would be") {
    Font font = opened("DejaVu Serif:bold");
    std::vector<Path> pieces;
    const auto line = font.set_line("THYMEATVAWGATE");
    REQUIRE(line);
    for (int row = 0; row < 3; ++row)
        for (const SetLetter& set : line->letters)
            pieces.push_back(transformed(set.path, 8 / font.cap_height(), {row % 3 * 0.5, row * 8.4}));
    const auto near = near_pieces(pieces, 0.6);
    std::size_t alone = 0;
    for (std::size_t i = 0; i < pieces.size(); ++i)
        for (std::size_t j = i + 1; j < pieces.size(); ++j) {
            const auto pair = near_pieces(std::vector<Path>{pieces[i], pieces[j]}, 0.6);
            alone += pair.size();
            if (pair.empty()) continue;
            const auto found = std::find_if(near.begin(), near.end(),
                                            [&](const NearPieces& n) { return n.one == i && n.other == j; });
            REQUIRE(found != near.end());
            CHECK(found->place.width == pair[0].place.width);
        }
    CHECK(near.size() == alone);
    CHECK(near.size() > 20);
    // Each against points strewn over both curves.
    const auto strewn = [](const Path& path) {
        std::vector<Point> points;
        for (const Contour& contour : path.contours) {
            Point a = contour.start;
            for (const Segment& s : contour.segments) {
                for (int i = 0; i < 200; ++i) {
                    const double t = i / 200.0, u = 1 - t;
                    const auto mix = [&](double p, double q, double r, double w) {
                        return s.curved
                                   ? u * u * u * p + 3 * u * u * t * q + 3 * u * t * t * r + t * t * t * w
                                   : u * p + t * w;
                    };
                    points.push_back({mix(a.x, s.control1.x, s.control2.x, s.to.x),
                                      mix(a.y, s.control1.y, s.control2.y, s.to.y)});
                }
                a = s.to;
            }
        }
        return points;
    };
    for (std::size_t k = 0; k < near.size(); k += 10) {
        double least = 1e300;
        for (const Point p : strewn(pieces[near[k].one]))
            for (const Point q : strewn(pieces[near[k].other])) least = std::min(least, distance(p, q));
        CHECK(near[k].place.width <= least + 1e-9);
        CHECK(near[k].place.width > least - 0.01);
    }
}
