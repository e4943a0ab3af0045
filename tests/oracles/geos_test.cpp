// GEOS (another library, another algorithm: overlays of polygons on doubles) judges what is joined, cut,
// shared and grown, on copies of the outlines in fine straight parts.

#include <geos_c.h>

#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <memory>
#include <vector>

#include "art/combine.hpp"
#include "art/font.hpp"
#include "support/shapes.hpp"

using namespace lode;
using namespace lode::test;

namespace {

constexpr int parts = 300;

struct Session {
    Session() : handle(GEOS_init_r()) {}
    Session(const Session&) = delete;
    Session& operator=(const Session&) = delete;
    ~Session() { GEOS_finish_r(handle); }
    GEOSContextHandle_t handle;
};
GEOSContextHandle_t geos() {
    static const Session session;
    return session.handle;
}
struct Destroy {
    void operator()(GEOSGeometry* geometry) const { GEOSGeom_destroy_r(geos(), geometry); }
};
using Geometry = std::unique_ptr<GEOSGeometry, Destroy>;

Geometry ring(const std::vector<Point>& points) {
    GEOSCoordSequence* const sequence =
        GEOSCoordSeq_create_r(geos(), static_cast<unsigned>(points.size()), 2);
    for (std::size_t i = 0; i < points.size(); ++i)
        GEOSCoordSeq_setXY_r(geos(), sequence, static_cast<unsigned>(i), points[i].x, points[i].y);
    return Geometry(GEOSGeom_createLinearRing_r(geos(), sequence));
}

// Of contours that each enclose an area of their own: their union.
Geometry filled(const Path& path) {
    std::vector<GEOSGeometry*> polygons;
    for (const auto& points : rings(path, parts))
        polygons.push_back(GEOSGeom_createPolygon_r(geos(), ring(points).release(), nullptr, 0));
    const Geometry all(GEOSGeom_createCollection_r(geos(), GEOS_GEOMETRYCOLLECTION, polygons.data(),
                                                   static_cast<unsigned>(polygons.size())));
    Geometry result(GEOSUnaryUnion_r(geos(), all.get()));
    REQUIRE(result);
    return result;
}

// Of a path by path.hpp's rules: its parts with their holes, as they are.
Geometry as_it_is(const Path& path) {
    std::vector<GEOSGeometry*> polygons;
    for (const Path& part : parts_of(path)) {
        auto all = rings(part, parts);
        std::vector<GEOSGeometry*> holes;
        for (std::size_t i = 1; i < all.size(); ++i) holes.push_back(ring(all[i]).release());
        polygons.push_back(GEOSGeom_createPolygon_r(geos(), ring(all[0]).release(), holes.data(),
                                                    static_cast<unsigned>(holes.size())));
    }
    return Geometry(GEOSGeom_createCollection_r(geos(), GEOS_MULTIPOLYGON, polygons.data(),
                                                static_cast<unsigned>(polygons.size())));
}

double area(const Geometry& geometry) {
    double result = 0;
    REQUIRE(GEOSArea_r(geos(), geometry.get(), &result) == 1);
    return result;
}

// As large as the judge says, within what straight parts lose, and nowhere else: the difference of both has
// no area to speak of.
void check_same(const Path& ours, const Geometry& theirs, double within) {
    REQUIRE(theirs);
    CHECK(std::abs(signed_area(ours) - area(theirs)) <= within);
    const Geometry judged = as_it_is(ours);
    // Flattened curves of a hole and its outer contour may cross by a hair where both touch.
    const Geometry sound(GEOSMakeValid_r(geos(), judged.get()));
    const Geometry apart(GEOSSymDifference_r(geos(), sound.get(), theirs.get()));
    REQUIRE(apart);
    CHECK(area(apart) <= within);
}

Path pebbles(RandomShapes& random, int count) {
    Path path;
    for (int i = 0; i < count; ++i)
        path.contours.push_back(random.pebble({random.between(0, 100), random.between(0, 100)},
                                              random.between(8, 30), 5 + i % 7));
    return path;
}

}  // namespace

TEST_CASE("pebbles are joined, cut and shared as GEOS has it") {
    RandomShapes random(21);
    for (int round = 0; round < 25; ++round) {
        const Path one = pebbles(random, 1 + round % 9);
        const Path other = pebbles(random, 1 + round % 5);
        const Geometry a = filled(one);
        const Geometry b = filled(other);
        CAPTURE(round);
        const double lost = 1e-5 * (area(a) + area(b));
        check_same(united(one), a, lost);
        check_same(united(std::array{one, other}), Geometry(GEOSUnion_r(geos(), a.get(), b.get())), lost);
        check_same(cut_out(one, other), Geometry(GEOSDifference_r(geos(), a.get(), b.get())), lost);
        check_same(shared(one, other), Geometry(GEOSIntersection_r(geos(), a.get(), b.get())), lost);
        CHECK(parts_of(united(one)).size() ==
              static_cast<std::size_t>(GEOSGetNumGeometries_r(geos(), a.get())));
    }
}

TEST_CASE("pebbles grow and shrink as GEOS has it") {
    RandomShapes random(22);
    for (int round = 0; round < 12; ++round) {
        const Path path = united(pebbles(random, 1 + round % 5));
        const Geometry flat = as_it_is(path);
        for (const double by : {1.0, 6.0, -0.5, -3.0}) {
            CAPTURE(round, by);
            check_same(grown(path, by), Geometry(GEOSBuffer_r(geos(), flat.get(), by, 200)),
                       1e-4 * area(flat));
        }
    }
}

TEST_CASE("letters are sound polygons to GEOS, one by one and cut from a band") {
    auto font = Font::open(find_font("DejaVu Serif").value());
    REQUIRE(font);
    const auto line = font->set_line("AÅBÇDÉGĢQØßŵžąęīħ");
    REQUIRE(line);
    const double millimetres = 10 / font->cap_height();
    for (const SetLetter& letter : line->letters) {
        CAPTURE(letter.text);
        const Path path = transformed(letter.path, millimetres, {0, 0});
        const Geometry flat = as_it_is(path);
        CHECK(GEOSisValid_r(geos(), flat.get()) == 1);
        const Box box = bounds(path);
        const Path band = capsule({box.left, -5}, {box.right, -5}, 4);
        const Geometry flat_band = as_it_is(band);
        check_same(cut_out(band, path), Geometry(GEOSDifference_r(geos(), flat_band.get(), flat.get())),
                   1e-4);
        check_same(shared(band, path), Geometry(GEOSIntersection_r(geos(), flat_band.get(), flat.get())),
                   1e-4);
    }
}
