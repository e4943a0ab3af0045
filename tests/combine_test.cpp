// What is joined, cut and grown, against closed forms and against itself: areas, distances, orientation.
// oracles/geos_test.cpp holds the same operations to another library's.

#include "art/combine.hpp"

#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "art/cubic.hpp"
#include "art/font.hpp"
#include "art/outline_polygons.hpp"
#include "support/shapes.hpp"

using namespace lode;
using namespace lode::test;

namespace {

constexpr double pi = 3.14159265358979323846;

// That nothing of a path overlaps: its rings' signed areas add up to what they cover.
void check_at_rest(const Path& path) {
    constexpr double scale = 1 << 12;
    const auto polygons = outline_polygons(path, scale, 64);
    double sum = 0;
    for (const auto& polygon : polygons) sum += ClipperLib::Area(polygon);
    CHECK(sum == Approx(covered_area(polygons)).epsilon(1e-5));
}

double perimeter(const Path& path) {
    double sum = 0;
    for (const auto& ring : rings(path, 400))
        for (std::size_t i = 1; i < ring.size(); ++i) sum += length(ring[i] - ring[i - 1]);
    return sum;
}

double distance(const std::vector<std::vector<Point>>& boundary, Point p) {
    double least = std::numeric_limits<double>::max();
    for (const auto& ring : boundary)
        for (std::size_t i = 1; i < ring.size(); ++i) {
            const Point along = ring[i] - ring[i - 1];
            const double way = std::clamp(dot(p - ring[i - 1], along) / dot(along, along), 0.0, 1.0);
            least = std::min(least, length(p - (ring[i - 1] + way * along)));
        }
    return least;
}

Font dejavu() {
    auto font = Font::open(find_font("DejaVu Sans").value());
    REQUIRE(font);
    return *std::move(font);
}

}  // namespace

TEST_CASE("rectangles are joined, cut and shared to the last bit") {
    const Path one = rectangle(0, 0, 10, 10);
    const Path other = rectangle(5, 5, 15, 15);
    CHECK(signed_area(united(std::array{one, other})) == 175);
    CHECK(united(std::array{one, other}).contours.size() == 1);
    CHECK(signed_area(cut_out(one, other)) == 75);
    CHECK(signed_area(shared(one, other)) == 25);
    // Beside each other along a whole side, along a part of one, and in a corner.
    CHECK(united(std::array{one, rectangle(10, 0, 20, 10)}).contours.size() == 1);
    CHECK(united(std::array{one, rectangle(10, 3, 20, 7)}).contours.size() == 1);
    CHECK(united(std::array{one, rectangle(10, 10, 20, 20)}).contours.size() == 2);
    CHECK(shared(one, rectangle(10, 0, 20, 10)).empty());
    CHECK(cut_out(one, one).empty());
    CHECK(cut_out(one, Path{}) == one);
    CHECK(united(Path{}).empty());
}

TEST_CASE("outer contours turn out positive and holes negative, whatever went in") {
    const Path frame = cut_out(rectangle(0, 0, 10, 10), rectangle(2, 2, 8, 8));
    REQUIRE(frame.contours.size() == 2);
    CHECK(signed_area(frame.contours[0]) == 100);
    CHECK(signed_area(frame.contours[1]) == -36);
    Path turned = frame;
    for (Contour& contour : turned.contours) contour = reversed(contour);
    CHECK(signed_area(united(turned)) == 64);
    CHECK(united(std::array{rectangle(0, 0, 10, 10), Path{{reversed(rectangle(5, 0, 15, 10).contours[0])}}})
              .contours.size() == 1);
    // Of one orientation, the inner contour is filled and vanishes.
    Path filled = frame;
    filled.contours[1] = reversed(filled.contours[1]);
    CHECK(united(filled) == rectangle(0, 0, 10, 10));
}

TEST_CASE("what nothing meets comes back bit for bit") {
    Path path = capsule({0.1, 0.7}, {20.3, 7.9}, 4.3);
    path.contours.push_back(reversed(capsule({3, 1}, {9, 4}, 0.7).contours[0]));
    path.contours.push_back(rectangle(40, 0.1, 41.3, 7).contours[0]);
    CHECK(united(path) == path);
    CHECK(cut_out(path, rectangle(100, 100, 120, 120)) == path);
    Path turned = path;
    for (Contour& contour : turned.contours) contour = reversed(contour);
    CHECK(signed_area(united(turned)) == Approx(signed_area(path)).epsilon(1e-15));
}

TEST_CASE("contours that enclose nothing, or stand open, do no harm") {
    Path path = rectangle(0, 0, 10, 10);
    path.contours.push_back({{3, 3}, {}});
    path.contours.push_back({{3, 3}, {Segment::line({30, 3}), Segment::line({3, 3})}});
    path.contours.push_back({{5, 5}, {Segment::cubic({9, 9}, {1, 1}, {5, 5})}});
    CHECK(signed_area(united(path)) == Approx(100).epsilon(1e-12));
    const Path open{{{{0, 0}, {Segment::line({4, 0}), Segment::line({4, 4})}}}};
    CHECK(signed_area(united(open)) == 8);
    CHECK_THROWS_AS(united(rectangle(0, 0, std::nan(""), 1)), std::invalid_argument);
    CHECK_THROWS_AS(united(rectangle(0, 0, 1e300, 1)), std::invalid_argument);
    CHECK_THROWS_AS(grown(path, std::nan("")), std::invalid_argument);
}

TEST_CASE("two circles share a lens of the area that geometry says") {
    // Radius r, centres d apart: 2 r^2 acos(d / 2r) - d / 2 sqrt(4 r^2 - d^2). append_arc stands out by
    // 4.3e-6 r.
    const Path one = capsule({0, 0}, {0, 0}, 10);
    const Path other = capsule({12, 0}, {12, 0}, 10);
    const double lens = 200 * std::acos(0.6) - 6 * std::sqrt(400.0 - 144);
    CHECK(signed_area(shared(one, other)) == Approx(lens).epsilon(1e-5));
    CHECK(signed_area(united(std::array{one, other})) == Approx(200 * pi - lens).epsilon(1e-5));
    CHECK(signed_area(cut_out(one, other)) + signed_area(shared(one, other)) ==
          Approx(signed_area(one)).epsilon(1e-14));
}

TEST_CASE("parts are outer contours with their own holes") {
    // A ring, an island in it with a hole of its own, and a thing beside.
    Path path = cut_out(rectangle(0, 0, 40, 40), rectangle(5, 5, 35, 35));
    const Path island = cut_out(rectangle(10, 10, 30, 30), capsule({20, 20}, {20, 20}, 4));
    path = united(std::array{path, island, rectangle(50, 0, 60, 10)});
    const auto parts = parts_of(path);
    REQUIRE(parts.size() == 3);
    CHECK(signed_area(parts[0]) == 700);
    CHECK(signed_area(parts[1]) == Approx(400 - 16 * pi).epsilon(1e-5));
    CHECK(parts[2].contours.size() == 1);
}

TEST_CASE("a cut of panel size loses no area, and its halves make the whole again") {
    RandomShapes random(7);
    for (int round = 0; round < 6; ++round) {
        Path one, other;
        for (int i = 0; i < 4; ++i) {
            one.contours.push_back(random.brush({random.between(0, 200), random.between(0, 250)}, 2, 5, 200));
            other.contours.push_back(
                random.brush({random.between(0, 200), random.between(0, 250)}, 2, 5, 200));
            const Point from{random.between(0, 200), random.between(0, 250)};
            const Path band = capsule(from, {from.x + 60, from.y + 60}, 6);
            other.contours.push_back(band.contours[0]);
        }
        const Path whole = united(one);
        CHECK(10 * segments(whole) <= 12 * segments(one));
        const Path outside = cut_out(whole, other);
        const Path inside = shared(whole, other);
        CHECK(std::abs(signed_area(whole) - signed_area(outside) - signed_area(inside)) < 1e-7);
        const Path again = united(std::array{outside, inside});
        CHECK(std::abs(signed_area(again) - signed_area(whole)) < 1e-7);
        CHECK(again.contours.size() == whole.contours.size());
        check_at_rest(whole);
        check_at_rest(outside);
    }
}

TEST_CASE("scribbles are parted without loss, and stay when joined again") {
    RandomShapes random(11);
    for (int round = 0; round < 60; ++round) {
        const Path one{{random.scribble({0, 0}, 50, 7), random.scribble({20, 5}, 40, 4)}};
        const Path other{{random.scribble({10, 10}, 50, 6)}};
        const Path whole = united(one);
        const double area = signed_area(whole);
        CHECK(std::abs(area - signed_area(cut_out(one, other)) - signed_area(shared(one, other))) < 1e-5);
        CHECK(signed_area(united(whole)) == Approx(area).epsilon(1e-8));
        check_at_rest(whole);
    }
}

TEST_CASE("corners on small whole numbers, where everything coincides, are parted without loss") {
    RandomShapes random(13);
    const auto whole_numbers = [&] {
        Contour contour = random.scribble({3, 3}, 3, 6);
        const auto round = [](Point& p) { p = {std::round(p.x), std::round(p.y)}; };
        round(contour.start);
        for (Segment& s : contour.segments)
            for (Point* const p : {&s.control1, &s.control2, &s.to}) round(*p);
        return contour;
    };
    for (int i = 0; i < 100; ++i) {
        const Path one{{whole_numbers(), whole_numbers()}};
        const Path other{{whole_numbers()}};
        CHECK(std::abs(signed_area(united(one)) - signed_area(cut_out(one, other)) -
                       signed_area(shared(one, other))) < 1e-6);
    }
}

TEST_CASE("a rectangle and a stadium grow and shrink by the book") {
    // Closed forms: 100 x 60 and 2 (100 + 60) 5 + 25 pi, 2 (100 + 60) + 10 pi; 80 r + pi r^2.
    const Path panel = rectangle(0, 0, 100, 60);
    CHECK(signed_area(grown(panel, 5)) == Approx(7678.5398163397).epsilon(1e-6));
    CHECK(perimeter(grown(panel, 5)) == Approx(351.4159265359).epsilon(1e-5));
    CHECK(signed_area(grown(capsule({0, 0}, {40, 0}, 10), 5)) == Approx(1906.8583470577).epsilon(1e-5));
    CHECK(signed_area(grown(capsule({0, 0}, {40, 0}, 20), -5)) == Approx(1906.8583470577).epsilon(1e-5));
    CHECK(signed_area(grown(panel, -5)) == Approx(90 * 50).epsilon(1e-12));
    CHECK(segments(grown(panel, -5)) == 4);
    CHECK(grown(panel, -30.5).empty());
    CHECK(grown(panel, 0) == panel);
    // A hole shrinks as its frame grows, and closes.
    const Path frame = cut_out(panel, rectangle(10, 10, 90, 50));
    CHECK(signed_area(grown(frame, 5)) == Approx(7678.5398163397 - 70 * 30).epsilon(1e-6));
    CHECK(grown(frame, 21).contours.size() == 1);
}

TEST_CASE("every point of a grown letter's boundary is as far from the letter as was asked") {
    Font font = dejavu();
    const double millimetres = 10 / font.cap_height();
    const auto line = font.set_line("Ag&Ç8");
    REQUIRE(line);
    for (const SetLetter& letter : line->letters)
        for (const double by : {0.4, 1.6, -0.3}) {
            const Path path = transformed(letter.path, millimetres, {0, 0});
            const auto boundary = rings(path, 100);
            const Path result = grown(path, by);
            double worst = 0;
            for (const auto& ring : rings(result, 4))
                for (const Point p : ring)
                    worst = std::max(worst, std::abs(distance(boundary, p) - std::abs(by)));
            CAPTURE(letter.text, by);
            CHECK(worst < 0.003);
            CHECK(signed_area(result) * by > signed_area(path) * by);
            check_at_rest(result);
        }
}

TEST_CASE("no letter of Latin-1 and Latin Extended-A overlaps itself, marks included") {
    Font font = dejavu();
    std::string text;
    for (int code = 0xC0; code < 0x180; ++code) {
        text += static_cast<char>(0xC0 | code >> 6);
        text += static_cast<char>(0x80 | (code & 0x3F));
    }
    // Letters of several glyphs too: marks that follow their letter.
    text += "C\u0327e\u0328S\u0327o\u0308\u0304";
    const auto line = font.set_line(text);
    REQUIRE(line);
    CHECK(line->letters.size() >= 0xC0);
    for (const SetLetter& letter : line->letters) {
        CAPTURE(letter.text);
        check_at_rest(letter.path);
        CHECK(signed_area(united(letter.path)) == Approx(signed_area(letter.path)).epsilon(1e-6));
        CHECK(united(letter.path).contours.size() == letter.path.contours.size());
    }
    // A cedilla hangs on its letter: one piece.
    const auto cedilla = font.set_line("Ç");
    REQUIRE(cedilla);
    CHECK(parts_of(cedilla->letters.at(0).path).size() == 1);
}
