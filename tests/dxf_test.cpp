// What a reader of DXF that this project did not write makes of our files.

#include <letterlode/art.hpp>
#include <letterlode/drawing.hpp>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <sstream>

#include "oracles/picture.hpp"
#include "panels.hpp"

using namespace lode;
using namespace panels;

namespace {

Drawing one_piece(Path path, const std::string& group = "letters") {
    return {100, 60, "A bed", "", {{group, {0x24, 0x3f, 0x3a}, {{"piece", std::move(path)}}, {}}}};
}

Path square() {
    Contour contour{{10, 10}, {}};
    for (const Point to : {Point{30, 10}, Point{30, 30}, Point{10, 30}, Point{10, 10}})
        contour.segments.push_back(Segment::line(to));
    return {{contour}};
}

// The groups of a DXF: a code and a value on two lines.
std::vector<std::pair<int, std::string>> groups_of(const std::string& dxf) {
    std::vector<std::pair<int, std::string>> groups;
    std::istringstream lines(dxf);
    for (std::string code, value; std::getline(lines, code) && std::getline(lines, value);)
        groups.emplace_back(std::stoi(code), value);
    return groups;
}

// The points of the first polyline.
std::vector<Point> first_polyline(const std::string& dxf) {
    std::vector<Point> points;
    bool inside = false;
    for (const auto& [code, value] : groups_of(dxf)) {
        if (code == 0 && inside) break;
        if (code == 0 && value == "LWPOLYLINE") inside = true;
        if (inside && code == 10) points.push_back({std::stod(value), 0});
        if (inside && code == 20) points.back().y = std::stod(value);
    }
    return points;
}

std::vector<std::string> names_of_layers(const std::string& dxf) {
    std::vector<std::string> names;
    bool layer = false;
    for (const auto& [code, value] : groups_of(dxf)) {
        if (code == 0) layer = value == "LAYER";
        if (layer && code == 2 && value != "LAYER" && value != "0") names.push_back(value);
    }
    return names;
}

}  // namespace

TEST_CASE("ezdxf reads in the DXF what stands in the SVG") {
    const judge::Folder folder;
    for (const Surface surface : {Surface::first, Surface::second}) {
        Drawing drawing = artwork_drawing(drawn(garden(), options(surface)));
        drawing.groups[1].lines = {{{0, 0}, {drawing.width_mm, 127.5}}, {{12.3456, 250}, {12.3456, 3}}};
        const std::string file(name(surface));
        (void)folder.write(file + ".dxf", to_dxf(drawing));
        (void)folder.write(file + ".svg", to_svg(drawing));
    }
    CHECK(judge::run({"/usr/bin/python3", LODE_DATA "/../tests/oracles/dxf_judge.py", folder.name("")}) == 0);
}

TEST_CASE("a square is its four corners, y up") {
    const std::vector<Point> points = first_polyline(to_dxf(one_piece(square())));
    CHECK(points == std::vector<Point>{{10, 50}, {30, 50}, {30, 30}, {10, 30}});
}

TEST_CASE("chords of an arc keep the tolerance and do not waste points") {
    for (const double radius : {0.3, 5.0, 40.0}) {
        const Point centre{50, 30};
        const std::vector<Point> points = first_polyline(to_dxf(one_piece(capsule(centre, centre, radius))));
        // A chord over an angle a leaves the circle by r (1 - cos(a / 2)).
        const auto n = static_cast<double>(points.size());
        const double fewest = 3.14159265 / std::acos(1 - std::min(0.9, dxf_tolerance_mm / radius));
        CAPTURE(radius);
        CHECK(n >= std::floor(fewest));
        CHECK(n <= 1.6 * fewest + 12);
        for (std::size_t i = 0; i < points.size(); ++i) {
            const Point next = points[(i + 1) % points.size()];
            const Point middle{(points[i].x + next.x) / 2, (points[i].y + next.y) / 2};
            CHECK(radius - std::hypot(middle.x - centre.x, middle.y - (60 - centre.y)) <=
                  dxf_tolerance_mm + 2e-4);
        }
        const auto [low, high] =
            std::minmax_element(points.begin(), points.end(), [](Point a, Point b) { return a.y < b.y; });
        CHECK(low->y == Approx(60 - centre.y - radius).margin(0.0005));
        CHECK(high->y == Approx(60 - centre.y + radius).margin(0.0005));
    }
}

TEST_CASE("contours without an area are left out") {
    Contour contour{{10, 10}, {Segment::line({20, 10}), Segment::line({10, 10})}};
    const std::string dxf = to_dxf(one_piece({{contour}}));
    CHECK(first_polyline(dxf).empty());
    CHECK(has(dxf, "EOF\n"));
}

TEST_CASE("layers have names that every reader takes, each once") {
    Drawing drawing = one_piece(square(), "letters");
    for (const char* const name : {"LETTERS", "letters", "Beete & Wege", "\xC3\xBC", "", "0"})
        drawing.groups.push_back({name, {255, 255, 255}, {{"piece", square()}}, {}});
    const std::string dxf = to_dxf(drawing);
    CHECK(names_of_layers(dxf) == std::vector<std::string>{"letters", "LETTERS-2", "letters-3",
                                                           "Beete---Wege", "--", "layer", "layer-2"});
    CHECK(std::all_of(dxf.begin(), dxf.end(), [](char c) { return c == '\n' || (c >= 32 && c < 127); }));
}

TEST_CASE("an empty drawing is a whole DXF") {
    const judge::Folder folder;
    const Drawing drawing{50, 40, "", "", {}};
    (void)folder.write("empty.dxf", to_dxf(drawing));
    (void)folder.write("empty.svg", to_svg(drawing));
    CHECK(judge::run({"/usr/bin/python3", LODE_DATA "/../tests/oracles/dxf_judge.py", folder.name("")}) == 0);
}
