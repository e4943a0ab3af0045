// Blanks by shape and size, and lengths as people write them.

#include <letterlode/blank.hpp>

#include <catch2/catch.hpp>
#include <cmath>

using namespace lode;

namespace {

Point on(Point from, const Segment& s, double t) {
    if (!s.curved) return {from.x + t * (s.to.x - from.x), from.y + t * (s.to.y - from.y)};
    const double u = 1 - t;
    const double a = u * u * u, b = 3 * u * u * t, c = 3 * u * t * t, d = t * t * t;
    return {a * from.x + b * s.control1.x + c * s.control2.x + d * s.to.x,
            a * from.y + b * s.control1.y + c * s.control2.y + d * s.to.y};
}

double perimeter(const Path& path, int parts) {
    double sum = 0;
    for (const Contour& contour : path.contours) {
        Point from = contour.start;
        for (const Segment& s : contour.segments) {
            Point before = from;
            for (int i = 1; i <= parts; ++i) {
                const Point here = on(from, s, static_cast<double>(i) / parts);
                sum += std::hypot(here.x - before.x, here.y - before.y);
                before = here;
            }
            from = s.to;
        }
    }
    return sum;
}

Blank read(const char* text) {
    const auto blank = read_blank(text);
    INFO(text << (blank ? "" : ": " + blank.refusal().message));
    REQUIRE(blank);
    return *blank;
}

constexpr double pi = 3.14159265358979323846;

}  // namespace

TEST_CASE("a size alone is a rectangle, and each side may have its own unit") {
    const Blank blank = read("8x10in");
    CHECK(blank.is_rectangle());
    CHECK(signed_area(blank.outline) == Approx(203.2 * 254));
    CHECK(read("rectangle 8x10in").outline == blank.outline);
    CHECK(read("8inx200mm") == BlankSize{8 * 25.4, 200});
    CHECK(read("20 cm x 576 pt").height_mm == Approx(203.2));
}

TEST_CASE("every shape fills its box from 0,0 and mirrors itself to the last bit") {
    for (const char* const shape : {"rectangle", "rounded", "oval", "heart", "star", "hexagon"})
        for (const BlankSize size : {BlankSize{203.2, 254}, BlankSize{300, 100}, BlankSize{77.7, 77.7}}) {
            CAPTURE(shape, size.width_mm);
            const Blank blank = shaped_blank(shape, size);
            CHECK(blank == size);
            CHECK(blank.is_rectangle() == (blank.shape == "rectangle"));
            REQUIRE(blank.outline.contours.size() == 1);
            const Contour& contour = blank.outline.contours[0];
            CHECK(contour.segments.back().to == contour.start);
            CHECK(signed_area(contour) > 0);
            const Box box = bounds(blank.outline);
            CHECK(std::abs(box.left) < 1e-9);
            CHECK(std::abs(box.top) < 1e-9);
            CHECK(box.right == Approx(size.width_mm).epsilon(1e-12));
            CHECK(box.bottom == Approx(size.height_mm).epsilon(1e-12));
            const Contour back = mirrored(blank.outline, size.width_mm).contours[0];
            std::size_t matches = 0;
            for (const Segment& s : back.segments)
                for (const Segment& other : contour.segments)
                    if (s.to.y == other.to.y && std::abs(s.to.x - other.to.x) < 1e-12) {
                        ++matches;
                        break;
                    }
            CHECK(matches == back.segments.size());
        }
}

TEST_CASE("the shapes have the areas and lengths that geometry gives them") {
    // Closed forms; heart and pentagram were computed by an independent program.
    const Blank circle = read("circle 200mm");
    CHECK(circle == BlankSize{200, 200});
    CHECK(signed_area(circle.outline) == Approx(pi * 100 * 100).epsilon(1e-5));
    CHECK(perimeter(circle.outline, 200) == Approx(pi * 200).epsilon(1e-5));
    CHECK(signed_area(read("oval 300x100mm").outline) == Approx(pi * 150 * 50).epsilon(1e-5));
    CHECK(signed_area(read("rounded 100x60mm").outline) == Approx(100 * 60 - (4 - pi) * 6 * 6).epsilon(1e-6));

    // 32 units across, at 10 mm a unit.
    const Blank heart = read("heart 320mm");
    CHECK(signed_area(heart.outline) / 100 == Approx(180 * pi).epsilon(1e-6));
    CHECK(perimeter(heart.outline, 200) / 10 == Approx(102.167552).epsilon(1e-6));

    const double across = 2 * std::sin(72 * pi / 180);
    const Blank star = read("star 200mm");
    const double unit = 200 / across;
    CHECK(signed_area(star.outline) / (unit * unit) == Approx(1.122569941449).epsilon(1e-11));
    CHECK(perimeter(star.outline, 1) / unit == Approx(7.265425280054).epsilon(1e-11));

    const Blank hexagon = read("hexagon 200mm");
    CHECK(signed_area(hexagon.outline) == Approx(1.5 * std::sqrt(3.0) * 100 * 100));
    CHECK(perimeter(hexagon.outline, 1) == Approx(600));
}

TEST_CASE("the heart's pieces lie on the heart's curve") {
    const Blank heart = shaped_blank("heart", {320, 280});
    const auto curve = [](double t) {
        const double s = std::sin(t);
        return Point{16 * s * s * s,
                     -(13 * std::cos(t) - 5 * std::cos(2 * t) - 2 * std::cos(3 * t) - std::cos(4 * t))};
    };
    double top = 0, bottom = 0;
    for (int i = 0; i <= 200'000; ++i) {
        const double y = curve(pi * i / 200'000).y;
        top = std::min(top, y);
        bottom = std::max(bottom, y);
    }
    const Contour& contour = heart.outline.contours[0];
    REQUIRE(contour.segments.size() == 128);
    double worst = 0;
    Point from = contour.start;
    for (std::size_t i = 0; i < contour.segments.size(); ++i) {
        for (int part = 0; part < 8; ++part) {
            const Point here = on(from, contour.segments[i], part / 8.0);
            const Point there = curve(2 * pi * (static_cast<double>(i) + part / 8.0) / 128);
            worst = std::max(worst, std::abs((here.x - 160) / 10 - there.x));
            worst = std::max(worst, std::abs(here.y * (bottom - top) / 280 + top - there.y));
        }
        from = contour.segments[i].to;
    }
    CHECK(worst < 2e-5);
}

TEST_CASE("a shape stands before its size, with a blank or a colon") {
    CHECK(read("heart:8x8in").outline == read("heart 8x8in").outline);
    CHECK(read("heart: 8 x 8 in").outline == read("heart 8x8in").outline);
    CHECK(read("heart 8x8in") == BlankSize{203.2, 203.2});
    CHECK(read("heart 8in").height_mm < 203.2);
    CHECK(read("hexagon 8in").height_mm == Approx(203.2 * std::sqrt(3.0) / 2));
    CHECK(read("star 8in").height_mm == Approx(203.2 * 0.9510565163));  // sine of 72 degrees, from a table
    CHECK(read("circle 8x8in") == BlankSize{203.2, 203.2});
}

TEST_CASE("what is no blank is refused, and the shapes are named") {
    for (const char* const text :
         {"heart",         "heart 8x8", "heart x8in",   "circle 8x9in", "oval 8in",          "rectangle 8in",
          "8in",           "rounded",   "kidney 8x8in", "heart 8x8in8", "heart 8x8in heart", "heart 1x1mm",
          "circle 9000mm", "heart8inx", "8inx",         "8inx10",       "inx10in",           "hearts 8x8in",
          "star -8in",     "star 8mmm", "::8x8in"}) {
        CAPTURE(text);
        const auto blank = read_blank(text);
        REQUIRE(!blank);
        CHECK(blank.refusal().reason == Refusal::Reason::unusable);
        REQUIRE(blank.refusal().advice.size() == 1);
        CHECK(blank.refusal().advice[0].find("heart") != std::string::npos);
    }
    CHECK(read_blank("circle 8x9in").refusal().message.find("oval") != std::string::npos);
    CHECK_THROWS_AS(shaped_blank("kidney", {10, 10}), std::invalid_argument);
    CHECK_THROWS_AS(shaped_blank("oval", {0, 10}), std::invalid_argument);
}

TEST_CASE("lengths are read in four units, within their bounds") {
    CHECK(read_length("6mm", 1, 10).value() == 6);
    CHECK(read_length("0.25in", 1, 10).value() == Approx(6.35));
    CHECK(read_length(" 1 cm ", 1, 10).value() == 10);
    CHECK(read_length("12pt", 1, 10).value() == Approx(25.4 / 6));
    for (const char* const text : {"", "6", "mm", "-6mm", "+6mm", "6e0mm", "6mmx", "6 mm mm", "6m", "11mm",
                                   "0.5mm", "6,5mm", "nanmm", "6mm\n", "0x6mm"}) {
        CAPTURE(text);
        const auto length = read_length(text, 1, 10);
        REQUIRE(!length);
        CHECK(length.refusal().message.find("1 mm (0.039 in) to 10 mm (0.394 in)") != std::string::npos);
        CHECK(length.refusal().advice.at(0).find("0.25in") != std::string::npos);
    }
}

TEST_CASE("lengths are written in both units") {
    CHECK(both_units(203.2) == "203.2 mm (8 in)");
    CHECK(both_units(6) == "6 mm (0.236 in)");
    CHECK(both_units(BlankSize{203.2, 254}) == "203.2 x 254 mm (8 x 10 in)");
}
