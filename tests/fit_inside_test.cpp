// The largest boxes in outlines, against closed forms and against a search at random.

#include "art/fit_inside.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <letterlode/blank.hpp>
#include <random>

using namespace lode;

namespace {

Path polygon(const std::vector<Point>& points) {
    Contour contour{points[0], {}};
    for (std::size_t i = 1; i <= points.size(); ++i)
        contour.segments.push_back(Segment::line(points[i % points.size()]));
    if (signed_area(contour) < 0) contour = reversed(contour);
    return {{contour}};
}

Box centred(double width, double height) {
    return {-width / 2, -height / 2, width / 2, height / 2};
}

Box placed(const Box& box, const Fit& fit) {
    return {fit.at.x + fit.scale * box.left, fit.at.y + fit.scale * box.top, fit.at.x + fit.scale * box.right,
            fit.at.y + fit.scale * box.bottom};
}

Fit largest(const Path& region, const std::vector<Box>& boxes) {
    const auto fit = largest_fit(region, boxes);
    REQUIRE(fit);
    for (const Box& box : boxes) CHECK(holds(region, placed(box, *fit)));
    return *fit;
}

// Plain judges of a polygon: by the parity of a ray, and by cutting each edge down to the box.
bool plainly_inside(const std::vector<Point>& polygon, Point p) {
    bool in = false;
    for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
        const Point a = polygon[i], b = polygon[j];
        if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) in = !in;
    }
    return in;
}
bool plainly_holds(const std::vector<Point>& polygon, const Box& box) {
    if (!plainly_inside(polygon, box.centre())) return false;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const Point a = polygon[i], b = polygon[(i + 1) % polygon.size()];
        double from = 0, to = 1;
        const auto cut = [&](double start, double end, double low, double high) {
            const double along = end - start;
            if (along == 0) {
                if (start <= low || start >= high) to = -1;
                return;
            }
            const double t0 = (low - start) / along, t1 = (high - start) / along;
            from = std::max(from, std::min(t0, t1));
            to = std::min(to, std::max(t0, t1));
        };
        cut(a.x, b.x, box.left, box.right);
        cut(a.y, b.y, box.top, box.bottom);
        if (from + 1e-9 < to) return false;
    }
    return true;
}

}  // namespace

TEST_CASE("a box in a rectangle, an ellipse, a hexagon and a triangle is as large as geometry has it") {
    for (const Box& box : {centred(1, 1), centred(15, 12), centred(40, 5), centred(3, 20)}) {
        const double w = box.width(), h = box.height();
        CAPTURE(w, h);
        const Fit in_rectangle = largest(shaped_blank("rectangle", {203.2, 254}).outline, {box});
        CHECK(in_rectangle.scale == Approx(std::min(203.2 / w, 254 / h)).epsilon(1e-12));
        CHECK(in_rectangle.at == Point{101.6, 127});

        for (const BlankSize size : {BlankSize{200, 200}, BlankSize{300, 120}, BlankSize{90, 260}}) {
            const double a = size.width_mm / 2, b = size.height_mm / 2;
            const double scale = 1 / std::sqrt(w * w / (4 * a * a) + h * h / (4 * b * b));
            const Fit fit = largest(shaped_blank("oval", size).outline, {box});
            CHECK(std::abs(fit.scale - scale) * std::max(w, h) < 0.01);
            CHECK(fit.at == Point{a, b});
        }
        // Legs of 160 and 100 along the axes: the free corner lies on the third side.
        const Fit corner = largest(polygon({{0, 0}, {160, 0}, {0, 100}}), {box});
        CHECK(std::abs(corner.scale - 1 / (w / 160 + h / 100)) * std::max(w, h) < 0.01);
    }
    const Fit square = largest(shaped_blank("circle", {200, 200}).outline, {centred(1, 1)});
    CHECK(std::abs(square.scale - 100 * std::sqrt(2.0)) < 0.01);
    // Regular, two corners at the sides, 100 from the middle: (3 - root 3) times that.
    const Fit in_hexagon =
        largest(shaped_blank("hexagon", {200, 100 * std::sqrt(3.0)}).outline, {centred(1, 1)});
    CHECK(std::abs(in_hexagon.scale - (3 - std::sqrt(3.0)) * 100) < 0.01);
    CHECK(in_hexagon.at.x == 100);
}

TEST_CASE("a symmetric thing stands on the axis of a symmetric outline") {
    const std::vector<Box> heading_over_grid{centred(15, 12), {-5, -9, 5, -6.75}};
    for (const char* const shape : {"rectangle", "rounded", "oval", "heart", "star", "hexagon"})
        for (const double margin : {0.0, 11.0, 25.0}) {
            CAPTURE(shape, margin);
            const Path room = room_inside(shaped_blank(shape, {203.2, 254}).outline, margin);
            CHECK(largest(room, {centred(15, 12)}).at.x == Approx(101.6).epsilon(1e-12));
            CHECK(largest(room, heading_over_grid).at.x == Approx(101.6).epsilon(1e-12));
        }
}

TEST_CASE("a long room is not paved, and its middle is taken") {
    const Fit fit = largest(polygon({{0, 0}, {4000, 0}, {4000, 30}, {0, 30}}), {centred(1, 1)});
    CHECK(fit.at == Point{2000, 15});
    CHECK(fit.scale == 30);
    // A hole in the middle: the nearest place beside it.
    Path room = polygon({{0, 0}, {100, 0}, {100, 20}, {0, 20}});
    room.contours.push_back(reversed(polygon({{45, 0}, {55, 0}, {55, 20}, {45, 20}}).contours[0]));
    const Fit beside = largest(room, {centred(1, 1)});
    CHECK(beside.scale == Approx(20).margin(0.005));
    CHECK(std::abs(beside.at.x - 50) == Approx(15).margin(0.01));
}

TEST_CASE("no search at random finds larger boxes") {
    std::mt19937 random(20260);
    std::uniform_real_distribution<double> unit(0, 1);
    for (int trial = 0; trial < 60; ++trial) {
        CAPTURE(trial);
        std::vector<Point> points;
        const int corners = 3 + static_cast<int>(unit(random) * 14);
        for (int i = 0; i < corners; ++i) {
            const double angle = 2 * 3.14159265358979 * (i + 0.8 * unit(random)) / corners;
            const double radius = 30 + 120 * unit(random);
            points.push_back({150 + radius * std::cos(angle), 150 + radius * std::sin(angle)});
        }
        std::vector<Box> boxes{centred(1 + 15 * unit(random), 1 + 15 * unit(random))};
        if (trial % 2 == 1) {  // a second one above the first, with a gap
            const double bottom = boxes[0].top - 2 * unit(random);
            const double middle = 6 * unit(random) - 3;
            boxes.push_back(
                {middle - 1 - 4 * unit(random), bottom - 3, middle + 1 + 4 * unit(random), bottom});
        }
        const Path region = polygon(points);
        const auto fit = largest_fit(region, boxes);
        if (!fit) continue;
        const auto held = [&](double scale, Point at) {
            return std::all_of(boxes.begin(), boxes.end(), [&](const Box& box) {
                return plainly_holds(points, placed(box, {scale, at}));
            });
        };
        for (const Box& box : boxes) {
            const Box there = placed(box, *fit);
            CHECK(plainly_holds(
                points, {there.left + 1e-6, there.top + 1e-6, there.right - 1e-6, there.bottom - 1e-6}));
        }
        double side = 0;
        for (const Box& box : boxes) side = std::max({side, -box.top, box.right, -box.left, box.bottom});
        const double better = fit->scale + 0.01 / side;
        int found = 0;
        for (int i = 0; i < 4'000; ++i) {
            // Half of the tries anywhere, half near to what was found.
            const double reach = i % 2 == 0 ? 150 : 5;
            const Point about = i % 2 == 0 ? Point{150, 150} : fit->at;
            found += held(
                better, {about.x + reach * (2 * unit(random) - 1), about.y + reach * (2 * unit(random) - 1)});
        }
        CHECK(found == 0);
    }
}

TEST_CASE("boxes beside their reference point are fitted as the same boxes about it") {
    const Path heart = room_inside(shaped_blank("heart", {200, 200}).outline, 10);
    const Fit about = largest(heart, {centred(12, 8)});
    const Fit beside = largest(heart, {{20, 30, 32, 38}});
    CHECK(beside.scale == Approx(about.scale).epsilon(1e-9));
    CHECK(beside.at.x + 26 * beside.scale == Approx(about.at.x));
    CHECK(beside.at.y + 34 * beside.scale == Approx(about.at.y));
}

TEST_CASE("what cannot be fitted is not") {
    const Path region = polygon({{0, 0}, {10, 0}, {10, 10}});
    CHECK(!largest_fit({}, std::vector<Box>{centred(1, 1)}));
    CHECK(!largest_fit(region, {}));
    CHECK(!largest_fit(region, std::vector<Box>{centred(0, 1)}));
    CHECK(!cells_inside({}, 10));
    CHECK(!cells_inside(region, 0));
    CHECK(!cells_inside(region, 10'000));
    CHECK(!holds(region, {0, 5, 1, 6}));
    CHECK(holds(region, {9, 1, 10, 9}));
    CHECK(!holds(region, {9, 1, 10.001, 9}));
}

TEST_CASE("room is left by margins of outline, holes and what is kept clear") {
    // FACTS of rounding: a rectangle shrunk stays one; what is kept clear grows round.
    const Path outline = shaped_blank("rectangle", {100, 60}).outline;
    CHECK(signed_area(room_inside(outline, 5)) == Approx(90 * 50).epsilon(1e-9));
    const Path disc = capsule({50, 30}, {50, 30}, 3);
    constexpr double pi = 3.14159265358979323846;
    CHECK(signed_area(room_inside(outline, 5, disc)) == Approx(90 * 50 - pi * 64).epsilon(1e-4));
    Path holed = outline;
    holed.contours.push_back(reversed(disc.contours[0]));
    CHECK(signed_area(room_inside(holed, 5)) == Approx(90 * 50 - pi * 64).epsilon(1e-4));
    CHECK(room_inside(outline, 31).empty());
}

TEST_CASE("cells follow an outline, and lie inside it") {
    for (const char* const shape : {"rectangle", "rounded", "oval", "heart", "star", "hexagon"})
        for (const std::size_t wanted : {std::size_t{60}, std::size_t{200}}) {
            CAPTURE(shape, wanted);
            const Path room = room_inside(shaped_blank(shape, {203.2, 254}).outline, 11);
            const auto fit = cells_inside(room, wanted);
            REQUIRE(fit);
            CHECK(fit->mask.open_count() >= wanted);
            const Size size = fit->mask.size();
            int not_held = 0, not_mirrored = 0, gaps = 0;
            for (int row = 0; row < size.rows; ++row) {
                int runs = 0;
                for (int column = 0; column < size.columns; ++column) {
                    const bool open = fit->mask.open({row, column});
                    not_mirrored += open != fit->mask.open({row, size.columns - 1 - column});
                    runs += open && !fit->mask.open({row, column - 1});
                    const double x = fit->corner.x + column * fit->cell, y = fit->corner.y + row * fit->cell;
                    if (open)
                        not_held +=
                            !holds(room, {x + 1e-5, y + 1e-5, x + fit->cell - 1e-5, y + fit->cell - 1e-5});
                }
                gaps += runs > 1;
            }
            CHECK(not_held == 0);
            CHECK(not_mirrored == 0);
            CHECK(fit->corner.x + size.columns * fit->cell / 2 == Approx(101.6));
            if (shape != std::string("heart") && shape != std::string("star")) CHECK(gaps == 0);
        }
}

TEST_CASE("cells leave alone what is kept clear, and fill a rectangle that they divide") {
    const Path region = polygon({{0, 0}, {150, 0}, {150, 120}, {0, 120}});
    const auto all = cells_inside(region, 15 * 12);
    REQUIRE(all);
    CHECK(all->cell == Approx(10).epsilon(1e-3));
    CHECK(all->mask.open_count() == 180);
    const Box heading{0, 0, 150, 30};
    const auto below = cells_inside(region, 15 * 9, {heading});
    REQUIRE(below);
    CHECK(below->cell == Approx(10).epsilon(0.002));
    CHECK(below->corner.y > 30 - 1e-5);
}
