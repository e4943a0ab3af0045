// Outlines read from SVG documents: path data against points worked out beside it, coordinate systems, what
// is drawn, and what is refused.

#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <letterlode/blank.hpp>
#include <random>
#include <sstream>

#include "art/svg_path_data.hpp"
#include "art/svg_text.hpp"
#include "support/scratch_folder.hpp"

using namespace lode;

namespace {

constexpr double pi = 3.14159265358979323846;

Path path_of(const std::string& data) {
    const PathData read = read_path_data(data, 1'000);
    INFO(data);
    REQUIRE(!read.fault);
    Path path;
    for (const Subpath& subpath : read.subpaths) path.contours.push_back(subpath.contour);
    return path;
}

std::string page(const std::string& inside,
                 const std::string& attributes = "width=\"200mm\" height=\"100mm\" viewBox=\"0 0 200 100\"") {
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" " +
           attributes + ">\n" + inside + "\n</svg>\n";
}

Blank outline(const std::string& svg) {
    const auto blank = svg_outline(svg, "signs/oak.svg");
    INFO(svg.substr(0, 1'000));
    INFO((blank ? "" : blank.refusal().message));
    REQUIRE(blank);
    CHECK(blank->shape == "oak.svg");
    CHECK(std::abs(bounds(blank->outline).left) < 1e-9);
    CHECK(std::abs(bounds(blank->outline).top) < 1e-9);
    CHECK(signed_area(blank->outline.contours.at(0)) > 0);
    for (std::size_t i = 1; i < blank->outline.contours.size(); ++i)
        CHECK(signed_area(blank->outline.contours[i]) < 0);
    return *blank;
}

std::string fault(const std::string& svg) {
    const auto blank = svg_outline(svg, "oak.svg");
    INFO(svg.substr(0, 1'000));
    REQUIRE(!blank);
    CHECK(blank.refusal().reason == Refusal::Reason::unusable);
    CHECK(blank.refusal().source == "oak.svg");
    CHECK(blank.refusal().line >= 1);
    CHECK(blank.refusal().message.starts_with("oak.svg, line "));
    return blank.refusal().message;
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

void check_size(const Blank& blank, double width, double height) {
    CHECK(blank.width_mm == Approx(width).margin(1e-9));
    CHECK(blank.height_mm == Approx(height).margin(1e-9));
}

}  // namespace

TEST_CASE("numbers of path data are read in their shortest forms") {
    CHECK(path_of("M10 20L30 40z") == path_of("M10,20 30,40Z"));
    CHECK(path_of("M.5.5-3e2-4L1e1-.5") == path_of("M 0.5 0.5 L -300 -4 L 10 -0.5"));
    CHECK(path_of("M0 0a25,25 -30 0110,20") == path_of("M0 0 A 25 25 -30 0 1 10 20"));
    CHECK(path_of("m1 2 3 4h5v6z m1 1l1 0 0 1z") == path_of("M1 2L4 6H9V12Z M2 3L3 3L3 4Z"));
    CHECK(path_of("M0 0L1 1zL5 0L5 5z") == path_of("M0 0L1 1L0 0zM0 0L5 0L5 5z"));
    CHECK(path_of("M0 0c1 1 2 1 3 0s2-1 3 0") == path_of("M0 0C1 1 2 1 3 0C4 -1 5 -1 6 0"));
    CHECK(path_of("M0 0S1 1 2 0") == path_of("M0 0C0 0 1 1 2 0"));
    CHECK(path_of("M0 0q3 3 6 0t6 0t6 0") == path_of("M0 0Q3 3 6 0Q9 -3 12 0Q15 3 18 0"));
    CHECK(path_of("M0 0T6 0") == path_of("M0 0Q0 0 6 0"));
    CHECK(path_of("M0 0C1 1 2 1 3 0T9 0") == path_of("M0 0C1 1 2 1 3 0Q3 0 9 0"));
    CHECK(path_of(" \n\t M0 0 , 5 5 ") == path_of("M0 0 5 5"));
    CHECK(path_of("").empty());
    CHECK(path_of("M5 5z").empty());
}

TEST_CASE("what is no path data is found at its byte") {
    const std::pair<const char*, std::size_t> cases[] = {{"L0 0", 0},         {"M0", 2},
                                                         {"M0 0 L", 6},       {"M0 0 x", 5},
                                                         {"M0 0 L1 nan", 8},  {"M0 0 L1 1e999", 8},
                                                         {"M 1 2 3", 7},      {"M0 0a1 1 0 2 1 1 1", 11},
                                                         {"M0 0 L1e13 1", 6}, {"M0 0 Linf 1", 6},
                                                         {"M0 0,,1 1", 4}};
    for (const auto& [data, place] : cases) {
        CAPTURE(data);
        const PathData read = read_path_data(data, 100);
        REQUIRE(read.fault);
        CHECK(*read.fault == place);
    }
    CHECK(read_path_data("M0 0 1 1 2 2 3 3", 2).fault);
    CHECK(!read_path_data("M0 0 1 1 2 2 3 3", 3).fault);
}

TEST_CASE("path data at random has the bounds of points worked out beside it") {
    std::mt19937 random(4711);
    std::uniform_real_distribution<double> unit(0, 1);
    const auto around = [&](double reach) { return reach * (2 * unit(random) - 1); };
    for (int trial = 0; trial < 150; ++trial) {
        std::ostringstream data;
        data.precision(17);
        Point pen{around(100), around(100)};
        data << 'M' << pen.x << ' ' << pen.y;
        Box box{pen.x, pen.y, pen.x, pen.y};
        const auto pass = [&](Point p) {
            box = {std::min(box.left, p.x), std::min(box.top, p.y), std::max(box.right, p.x),
                   std::max(box.bottom, p.y)};
        };
        constexpr int samples = 4'000;
        for (int command = 0; command < 5; ++command) {
            const Point a{around(100), around(100)}, b{around(100), around(100)},
                to{around(100), around(100)};
            const double kind = unit(random);
            if (kind < 0.2) {
                data << 'L' << to.x << ' ' << to.y;
                pen = to;
                pass(pen);
            } else if (kind < 0.6) {
                const bool cubic = kind < 0.4;
                if (cubic)
                    data << 'C' << a.x << ' ' << a.y << ' ' << b.x << ' ' << b.y << ' ' << to.x << ' '
                         << to.y;
                else
                    data << 'Q' << a.x << ' ' << a.y << ' ' << to.x << ' ' << to.y;
                for (int i = 1; i <= samples; ++i) {
                    const double t = static_cast<double>(i) / samples, u = 1 - t;
                    if (cubic)
                        pass(
                            {u * u * u * pen.x + 3 * u * u * t * a.x + 3 * u * t * t * b.x + t * t * t * to.x,
                             u * u * u * pen.y + 3 * u * u * t * a.y + 3 * u * t * t * b.y +
                                 t * t * t * to.y});
                    else
                        pass({u * u * pen.x + 2 * u * t * a.x + t * t * to.x,
                              u * u * pen.y + 2 * u * t * a.y + t * t * to.y});
                }
                pen = to;
            } else {
                // An ellipse by its parameter, from where the pen stands.
                const double rx = 5 + 60 * unit(random), ry = 5 + 60 * unit(random), degrees = around(360);
                const double start = around(pi), by = around(2 * pi * 0.98);
                const double c = std::cos(degrees * pi / 180), s = std::sin(degrees * pi / 180);
                const auto at = [&](double angle) {
                    const double x = rx * std::cos(angle), y = ry * std::sin(angle);
                    return Point{c * x - s * y, s * x + c * y};
                };
                const Point from = pen, offset = at(start);
                for (int i = 1; i <= samples; ++i) {
                    const Point p = at(start + by * i / samples);
                    pen = {from.x + p.x - offset.x, from.y + p.y - offset.y};
                    pass(pen);
                }
                data << 'A' << rx << ' ' << ry << ' ' << degrees << (std::abs(by) > pi ? " 1" : " 0")
                     << (by > 0 ? '1' : '0') << pen.x << ' ' << pen.y;
            }
        }
        CAPTURE(data.str());
        const Box found = bounds(path_of(data.str()));
        CHECK(found.left == Approx(box.left).margin(1e-3));
        CHECK(found.top == Approx(box.top).margin(1e-3));
        CHECK(found.right == Approx(box.right).margin(1e-3));
        CHECK(found.bottom == Approx(box.bottom).margin(1e-3));
    }
}

TEST_CASE("arcs that cannot be are mended as the standard says") {
    CHECK(path_of("M0 0A0 5 0 0 1 9 9") == path_of("M0 0L9 9"));
    CHECK(path_of("M0 0A5 5 0 0 1 0 0L9 9") == path_of("M0 0L9 9"));
    CHECK(path_of("M0 0A-5-9 7 0 1 4 4") == path_of("M0 0A5 9 7 0 1 4 4"));
    // Radii too small: a half circle over the chord.
    const Box half = bounds(path_of("M0 0A1 1 0 0 1 20 0"));
    CHECK(half.top == Approx(-10));
    CHECK(half.bottom == Approx(0).margin(1e-9));
    // A radius beyond all measure is a line.
    CHECK(std::abs(bounds(path_of("M0 0A1e11 1e11 0 0 1 20 0")).top) < 1e-6);
}

TEST_CASE("angles have the cosines and sines that the C library gives them") {
    double worst = 0;
    for (int i = -4'000; i <= 4'000; ++i) {
        const double degrees = i * 0.37;
        const AngleTurn turn = turn_of(degrees);
        const long double radians =
            static_cast<long double>(degrees) * 3.14159265358979323846264338327950288L / 180;
        worst = std::max(worst, std::abs(turn.cosine - static_cast<double>(std::cos(radians))));
        worst = std::max(worst, std::abs(turn.sine - static_cast<double>(std::sin(radians))));
    }
    CHECK(worst < 3e-16);
    CHECK(turn_of(90).cosine == 0);
    CHECK(turn_of(-90).sine == -1);
    CHECK(turn_of(540).cosine == -1);
    CHECK(turn_of(1e12 * 360).cosine == 1);
}

TEST_CASE("the page's size and view box give the true size") {
    const std::string rect = "<rect x='10' y='10' width='96' height='48'/>";
    check_size(outline(page(rect, "")), 25.4, 12.7);
    check_size(outline(page(rect, "width='200' height='100'")), 25.4, 12.7);
    check_size(outline(page(rect, "width='200mm' height='100mm' viewBox='0 0 200 100'")), 96, 48);
    check_size(outline(page(rect, "width='10in' height='5in' viewBox='0 0 200 100'")), 121.92, 60.96);
    check_size(outline(page(rect, "width='72pt' viewBox='0 0 96 96'")), 25.4, 12.7);
    // 10 pc are 160 px, so 1.6 px a unit.
    check_size(outline(page(rect, "width='10cm' height='10pc' viewBox='5 5 200 100'")), 40.64, 20.32);
    check_size(outline(page(rect, "viewBox='0 0 200 100'")), 25.4, 12.7);
    check_size(outline(page(rect, "width='100%' height='100%' viewBox='0 0 200 100'")), 25.4, 12.7);
    // Both sides shrink or grow to fit, unless the document says how not.
    check_size(outline(page(rect, "width='200mm' height='200mm' viewBox='0 0 200 100'")), 96, 48);
    check_size(
        outline(page(rect, "width='200mm' height='200mm' viewBox='0 0 200 100' preserveAspectRatio='none'")),
        96, 96);
    check_size(outline(page(rect,
                            "width='200mm' height='200mm' viewBox='0 0 200 100' "
                            "preserveAspectRatio='xMinYMin slice'")),
               192, 96);
}

TEST_CASE("basic shapes of a drawing have the areas that geometry gives them") {
    const auto area = [](const std::string& inside) { return signed_area(outline(page(inside)).outline); };
    CHECK(area("<circle cx='50' cy='50' r='40'/>") == Approx(pi * 1600).epsilon(1e-5));
    CHECK(area("<ellipse cx='50' cy='50' rx='40' ry='20'/>") == Approx(pi * 800).epsilon(1e-5));
    // 100 x 60 with corners of 10: 5914.1592653590, computed by an independent program.
    CHECK(area("<rect width='100' height='60' rx='10'/>") == Approx(5914.1592653590).epsilon(1e-6));
    CHECK(area("<rect width='100' height='60' ry='10'/>") == Approx(5914.1592653590).epsilon(1e-6));
    CHECK(area("<rect width='100' height='60' rx='90' ry='70'/>") == Approx(pi * 1500).epsilon(1e-5));
    CHECK(area("<polygon points='0,0 100,0 100,60'/>") == Approx(3000));
    CHECK(area("<polyline points='0 0 100 0 100 60'/>") == Approx(3000));
    CHECK(area("<path d='M0 0H100V60z'/>") == Approx(3000));
    CHECK(area("<rect width='50%' height='50%'/>") == Approx(5000));
    // The cubic (0,0)(0,1)(1,1)(1,0) covers 0.6 of its square.
    CHECK(area("<path d='M0 0C0 100 100 100 100 0z'/>") == Approx(6000));
}

TEST_CASE("transforms are applied from the inside out") {
    const auto sized = [](const std::string& inside) { return outline(page(inside)); };
    const std::string rect = "<rect width='40' height='20'/>";
    check_size(sized("<g transform='rotate(90)'>" + rect + "</g>"), 20, 40);
    check_size(
        sized("<g transform='scale(2)'><g transform='translate(5 5) scale(1 .75)'>" + rect + "</g></g>"), 80,
        30);
    check_size(sized("<rect width='40' height='20' transform='matrix(0 1 1 0 3 4)'/>"), 20, 40);
    check_size(sized("<rect width='40' height='20' transform='skewX(45)'/>"), 60, 20);
    check_size(sized("<rect width='40' height='20' transform='skewY(-45),scale(-1)'/>"), 40, 60);
    check_size(sized("<rect width='40' height='20' transform='rotate(30 100 50)'/>"),
               40 * std::cos(pi / 6) + 20 * std::sin(pi / 6), 40 * std::sin(pi / 6) + 20 * std::cos(pi / 6));
    check_size(sized("<defs><rect id='r' width='40' height='20'/></defs><use xlink:href='#r' x='9' "
                     "transform='scale(2)'/>"),
               80, 40);
    check_size(sized("<symbol id='s' viewBox='0 0 4 2'><rect width='4' height='2'/></symbol>"
                     "<use href='#s' width='60' height='30'/>"),
               60, 30);
    check_size(
        sized("<svg x='5' width='50' height='50' viewBox='0 0 4 4'><rect width='4' height='2'/></svg>"), 50,
        25);
    CHECK(has(fault(page("<rect width='40' height='20' transform='rotate(90deg)'/>")), "transform"));
    CHECK(has(fault(page("<rect width='40' height='20' transform='turn(90)'/>")), "transform"));
}

TEST_CASE("only what is drawn counts") {
    const std::string small = "<rect width='40' height='20' class='panel plain'/>";
    const auto chosen = [&](const std::string& other) { check_size(outline(page(other + small)), 40, 20); };
    chosen("<rect width='90' height='90' display='none'/>");
    chosen("<rect width='90' height='90' style='display : none'/>");
    chosen("<g visibility='hidden'><rect width='90' height='90'/></g>");
    chosen("<rect width='90' height='90' fill='none'/>");
    chosen("<g style='fill:none;stroke:none'><rect width='90' height='90'/></g>");
    chosen("<defs><rect width='90' height='90'/></defs>");
    chosen("<clipPath><rect width='90' height='90'/></clipPath><mask><rect width='90' height='90'/></mask>");
    chosen(
        "<symbol><rect width='90' height='90'/></symbol><pattern><rect width='90' height='90'/></pattern>");
    chosen(
        "<style>.page, #p { display:none } /* .plain { display:none } */</style><rect class='page' "
        "width='90' height='90'/>");
    chosen(
        "<style>rect { display:none } rect.panel { display: inline }</style><rect width='90' height='90'/>");
    chosen(
        "<style>.panel { display:inline !important } * { display: inline } .plain { display:none }</style>");
    chosen("<path fill='none' stroke='red' d='M0 0H90V90'/>");
    chosen("<x:rect xmlns:x='urn:other' width='90' height='90'/><text>panel</text>");
    chosen("<switch><rect width='30' height='10'/><rect width='90' height='90'/></switch>");
    check_size(outline(page("<rect width='90' height='90' fill='none' stroke='red'/>" + small)), 90, 90);
    check_size(
        outline(page("<g visibility='hidden'><rect width='90' height='90' visibility='visible'/></g>")), 90,
        90);
    CHECK(has(fault(page("<rect width='90' height='90' clip-path='url(#c)'/>" + small)), "clips"));
    CHECK(has(fault(page("<rect width='90' height='90' style='transform:scale(2)'/>" + small)), "transform"));
    CHECK(has(fault(page("<style>g > rect { display:none }</style>" + small)), "g > rect"));
    CHECK(has(fault(page("<style>@media print { rect { display:none } }</style>" + small)), "@media"));
}

TEST_CASE("holes are what the filling leaves free") {
    const auto contours = [](const std::string& attributes, const std::string& data) {
        return outline(page("<path " + attributes + " d='" + data + "'/>")).outline.contours.size();
    };
    const std::string outer = "M0 0H90V90H0z", same_way = "M10 10H30V30H10z", other_way = "M40 10V30H60V10z";
    CHECK(contours("", outer + same_way) == 1);
    CHECK(contours("", outer + other_way) == 2);
    CHECK(contours("fill-rule='evenodd'", outer + same_way + other_way) == 3);
    CHECK(contours("fill='none' stroke='black'", outer + same_way + other_way) == 3);
    // Islands in a hole are other pieces, as is what lies beside.
    CHECK(contours("fill-rule='evenodd'", outer + same_way + "M15 15H25V25H15z") == 2);
    CHECK(contours("fill-rule='evenodd'", outer + "M100 0h20v20h-20z") == 1);
    CHECK(signed_area(outline(page("<path d='" + outer + other_way + "'/>")).outline) == Approx(8100 - 400));
}

TEST_CASE("outlines that cross themselves are refused, and what only touches is not") {
    for (const char* const data : {"M0 0L90 90H0L60 0z", "M0 0H90V90H30V-20H20z",
                                   "M0 0H90V90H0z M80 40H99V60H80z", "M0 0C120 90 -30 90 90 0L90 -20H0z",
                                   "M0 0H90V90H45V45H60V60H45V90H0z", "M0 0H90V90H0z M0 0V20H20z"}) {
        CAPTURE(data);
        CHECK(has(fault(page("<path fill-rule='evenodd' d='" + std::string(data) + "'/>")), "crosses"));
    }
    // A slit, and a hole that meets the outline in a point.
    CHECK(outline(page("<path d='M0 0H90V40L60 40H90V90H0z'/>")).height_mm == Approx(90));
    CHECK(outline(page("<path d='M0 0H90V90H0z M0 0L20 30H40z'/>")).outline.contours.size() == 2);
    for (const char* const shape : {"heart", "star", "oval", "rounded"}) {
        // Shapes of this program, written by hand and read again.
        const Blank drawn = shaped_blank(shape, {80, 70});
        std::ostringstream data;
        data.precision(8);
        const Contour& contour = drawn.outline.contours[0];
        data << 'M' << contour.start.x << ' ' << contour.start.y;
        for (const Segment& s : contour.segments)
            if (s.curved)
                data << 'C' << s.control1.x << ' ' << s.control1.y << ' ' << s.control2.x << ' '
                     << s.control2.y << ' ' << s.to.x << ' ' << s.to.y;
            else
                data << 'L' << s.to.x << ' ' << s.to.y;
        const Blank read = outline(page("<path d='" + data.str() + "z'/>"));
        CHECK(signed_area(read.outline) == Approx(signed_area(drawn.outline)).epsilon(1e-7));
    }
}

TEST_CASE("what would run or fetch is refused and named") {
    const std::string rect = "<rect width='40' height='20'/>";
    const std::pair<std::string, std::string> cases[] = {
        {page("<script>1</script>" + rect), "script"},
        {page("<rect width='40' height='20' onclick='x()'/>"), "onclick"},
        {page("<a href=' java\nscript:x()'>" + rect + "</a>"), "script"},
        {page("<image href='https://example.org/a.png'/>" + rect), "example.org"},
        {page("<use xlink:href='other.svg#a'/>" + rect), "other.svg"},
        {page("<rect width='40' height='20' fill='url( \"paint.svg#a\" )'/>"), "paint.svg"},
        {page("<style>@import 'a.css';</style>" + rect), "imports"},
        {page("<style>rect { fill: url(//host/x) }</style>" + rect), "//host/x"},
        {"<?xml-stylesheet href='a.css'?>" + page(rect), "style sheet"},
        {"<!DOCTYPE svg [<!ENTITY a 'b'>]>" + page(rect), "entities"}};
    for (const auto& [svg, named] : cases) {
        CAPTURE(named);
        CHECK(has(fault(svg), named));
    }
    CHECK(outline("<?xml version='1.0' encoding='UTF-8'?>\n<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" "
                  "\"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd\">\n" +
                  page("<rect width='40' height='20' fill='url(#paint)'/>"))
              .width_mm == Approx(40));
    CHECK(has(fault("\n\n" + page("<script/>" + rect)), "line 4"));
}

TEST_CASE("what is no outline is refused") {
    CHECK(has(fault(""), "is no XML"));
    CHECK(has(fault("<svg"), "is no XML"));
    CHECK(has(fault("<html/>"), "is no SVG"));
    CHECK(has(fault("<svg xmlns='urn:other'><rect width='99' height='99'/></svg>"), "is no SVG"));
    CHECK(has(fault(page("")), "no closed outline"));
    CHECK(has(fault(page("<path d='M0 0L50 50' stroke='red' fill='none'/>")), "no closed outline"));
    CHECK(has(fault(page("<rect width='9' height='90'/>")), "9 x 90 mm"));
    CHECK(has(fault(page("<rect width='6000' height='90'/>")), "6000"));
    CHECK(has(fault(page("<rect width='1em' height='90'/>")), "1em"));
    CHECK(has(fault(page("<path d='M0 0L9 9Q1'/>")), "byte"));
    CHECK(has(fault(page("<polygon points='0 0 1 1 2'/>")), "points"));
    for (const char* const number : {"1e308", "-1e308", "1e999", "nan", "inf", "1e11"}) {
        CAPTURE(number);
        CHECK(!svg_outline(page("<rect width='" + std::string(number) + "' height='90'/>"), "x"));
        CHECK(!svg_outline(page("<path d='M0 0H" + std::string(number) + "V90z'/>"), "x"));
        CHECK(!svg_outline(page("<g transform='scale(1e12)'><g transform='scale(" + std::string(number) +
                                ")'><rect width='40' height='20'/></g></g>"),
                           "x"));
        CHECK(!svg_outline(page("<rect width='40' height='20'/>",
                                "width='" + std::string(number) + "' height='9' viewBox='0 0 1e-9 1e-9'"),
                           "x"));
    }
}

TEST_CASE("documents made to keep a reader busy are given up") {
    std::string deep;
    for (int i = 0; i < 100'000; ++i) deep += "<g>";
    CHECK(!svg_outline(page(deep), "x"));
    for (int i = 0; i < 100'000; ++i) deep += "</g>";
    CHECK(has(fault(page(deep)), "nested"));
    // Each level uses the one before ten times.
    std::string bomb = "<defs><rect id='u0' width='40' height='20'/>";
    for (int i = 1; i < 15; ++i) {
        bomb += "<g id='u" + std::to_string(i) + "'>";
        for (int j = 0; j < 10; ++j) bomb += "<use href='#u" + std::to_string(i - 1) + "'/>";
        bomb += "</g>";
    }
    CHECK(has(fault(page(bomb + "</defs><use href='#u14'/>")), "draws more"));
    CHECK(has(fault(page("<defs><g id='u0'/>" + bomb.substr(bomb.find("<g id='u1'")) +
                         "</defs><use href='#u14'/>")),
              "draws more elements"));
    CHECK(has(fault(page("<g id='a'><use href='#b'/></g><g id='b'><use href='#a'/></g>")), "without end"));
    CHECK(has(fault(page("<use id='a' href='#a'/>")), "without end"));
    CHECK(has(fault(std::string(max_outline_bytes + 1, ' ')), "larger than"));
    std::string lines = "<path d='M0 0";
    for (int i = 0; i < 200'001; ++i) lines += "h1";
    CHECK(!svg_outline(page(lines + "'/>"), "x"));
    std::string tags;
    for (int i = 0; i < 1'000'001; ++i) tags += "<g/>";
    CHECK(has(fault(page(tags)), "more elements"));
    // A comb, and lines that all cross each other.
    std::mt19937 random(7);
    std::string comb = "M0 0", star = "M0 0";
    for (int i = 0; i < 60'000; ++i) {
        comb +=
            " " + std::to_string(i / 600.0) + (i % 2 ? " 0." : " 80.") + std::to_string(random() % 100'000);
        star += (i % 2 ? " 90 " : " 0 ") + std::to_string(static_cast<double>(random() % 90'000) / 1'000);
    }
    CHECK(!svg_outline(page("<path d='" + comb + "V-10z'/>"), "x"));
    CHECK(!svg_outline(page("<path d='" + star + "z'/>"), "x"));
}

TEST_CASE("a blank may be the outline in a file, at a size of its proportions") {
    const auto none = read_blank("no-such-folder/oak.svg");
    REQUIRE(!none);
    CHECK(has(none.refusal().message, "no-such-folder/oak.svg"));
    const test::ScratchFolder folder;
    const std::string name = folder / "an outline.svg";
    std::ofstream(name) << page("<ellipse cx='50' cy='40' rx='40' ry='20'/>");
    const auto plain = read_blank(name);
    const auto scaled = read_blank(name + " 200x100mm"), wide = read_blank(name + ":8in");
    const auto distorted = read_blank(name + " 200x103mm"), large = read_blank(name + " 8000mm");
    REQUIRE(plain);
    check_size(*plain, 80, 40);
    CHECK(!plain->is_rectangle());
    REQUIRE(scaled);
    check_size(*scaled, 200, 100);
    CHECK(bounds(scaled->outline).right == Approx(200));
    REQUIRE(wide);
    check_size(*wide, 203.2, 101.6);
    REQUIRE(!distorted);
    CHECK(has(distorted.refusal().message, "80 x 40 mm"));
    CHECK(!large);
}
