// Plates of any outline, as they hang on the wall.

#include <letterlode/art.hpp>

#include <catch2/catch.hpp>

#include "art/preview.hpp"
#include "oracles/picture.hpp"
#include "panels.hpp"

using namespace lode;
using namespace panels;

namespace {

// A plate of 200 mm without film, a pixel a millimetre on its wall of 22 mm.
judge::Picture plate(Path edge) {
    ArtworkOptions wanted = options();
    wanted.blank = rectangle(200, 200);
    Artwork artwork = drawn(garden(), wanted);
    artwork.layers.clear();
    return judge::read_png(plate_png(artwork, std::move(edge), 244));
}
int darkness(const judge::Picture& picture, double x, double y) {
    return picture.darkness(static_cast<int>(x + 22), static_cast<int>(y + 22));
}

Contour disc(Point centre, double radius) {
    return capsule(centre, centre, radius).contours[0];
}

constexpr int darkest_plate = 16;
constexpr int lightest_wall = 20;

}  // namespace

TEST_CASE("a round plate leaves the wall at its corners") {
    const judge::Picture picture = plate({{disc({100, 100}, 100)}});
    for (const Point p : {Point{100, 100}, Point{100, 4}, Point{4, 100}, Point{40, 40}, Point{160, 160}})
        CHECK(darkness(picture, p.x, p.y) <= darkest_plate);
    for (const Point p : {Point{8, 8}, Point{192, 8}, Point{8, 192}, Point{192, 192}})
        CHECK(darkness(picture, p.x, p.y) >= lightest_wall);
    // Its shadow falls to the lower right.
    CHECK(darkness(picture, 178, 178) > darkness(picture, 22, 22) + 20);
}

TEST_CASE("holes are seen through, and a small round one holds a screw") {
    const auto with = [](double radius) {
        return plate({{disc({100, 100}, 100), reversed(disc({100, 40}, radius))}});
    };
    const judge::Picture whole = plate({{disc({100, 100}, 100)}});
    const judge::Picture wide = with(25);
    CHECK(darkness(whole, 100, 40) <= darkest_plate);
    CHECK(darkness(wide, 100, 40) >= lightest_wall);
    CHECK(darkness(wide, 112, 50) >= lightest_wall);
    CHECK(darkness(wide, 100, 70) <= darkest_plate);
    // A head of metal, light above and dark below, is smaller than its hole.
    const judge::Picture hung = with(10);
    CHECK(darkness(hung, 98, 38) + 15 < darkness(hung, 102, 42));
    CHECK(darkness(hung, 100 + 7, 40 + 4) > darkness(hung, 100, 40) + 20);
    CHECK(darkness(wide, 98, 38) <= darkness(wide, 102, 42) + 15);
}

TEST_CASE("corners of a plain rectangle are rounded, and no others") {
    Contour square{{0, 0}, {}};
    for (const Point to : {Point{200, 0}, Point{200, 200}, Point{0, 200}, Point{0, 0}})
        square.segments.push_back(Segment::line(to));
    const judge::Picture plain = plate({{square}});
    const judge::Picture pierced = plate({{square, reversed(disc({100, 100}, 30))}});
    CHECK(darkness(plain, 0, 0) > darkness(pierced, 0, 0));
    CHECK(darkness(plain, 30, 30) <= darkest_plate);
    // Four fixings hold the plain one.
    CHECK(darkness(plain, 5.5, 5.5) > darkness(pierced, 5.5, 5.5) + 10);
}
