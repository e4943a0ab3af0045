// From an artwork to its loads: layers whole or bands apart, witnesses, weeding lines.

#include <catch2/catch.hpp>

#include <letterlode/cut.hpp>

#include "cut/weeding.hpp"
#include "panels.hpp"

using namespace lode;
using namespace panels;

namespace {

PlanOptions bed(double width, double height) {
    PlanOptions plan;
    plan.bed = {width, height, 0};
    return plan;
}

double area_of(const Drawing& drawing, const std::string& group) {
    double area = 0;
    for (const DrawnGroup& one : drawing.groups)
        if (one.name == group)
            for (const Piece& piece : one.pieces) area += signed_area(piece.path);
    return area;
}

bool inside(const Box& inner, const Box& outer) {
    constexpr double hair = 1e-6;
    return inner.left >= outer.left - hair && inner.right <= outer.right + hair &&
           inner.top >= outer.top - hair && inner.bottom <= outer.bottom + hair;
}

}  // namespace

TEST_CASE("every load together holds each layer's film, and each piece lies on film of its colour") {
    for (const Surface surface : {Surface::first, Surface::second}) {
        const Artwork artwork = drawn(garden(), options(surface));
        for (const PlanOptions& wanted : {bed(304.8, 304.8), bed(250, 150), bed(610, 0)}) {
            const auto plan = plan_loads(artwork, wanted).value();
            REQUIRE(plan.witnesses.size() == plan.plan.loads.size());
            for (const Layer& one : artwork.layers) {
                double whole = 0;
                for (const Piece& piece : one.pieces) whole += signed_area(piece.path);
                double cut = 0;
                for (std::size_t i = 0; i < plan.plan.loads.size(); ++i)
                    cut += area_of(load_drawing(artwork, plan, wanted, i, false), one.name);
                for (const SplitPart& part : plan.plan.parts)
                    if (plan.pieces[part.piece].layer == one.name) cut -= signed_area(part.marks);
                CHECK(cut == Approx(whole).epsilon(1e-6));
            }
            for (const Load& load : plan.plan.loads)
                for (const PlacedPiece& where : load.pieces) {
                    const Box box = bounds(placed(plan.pieces, plan.plan, where));
                    CHECK(std::any_of(load.films.begin(), load.films.end(), [&](const FilmRectangle& film) {
                        return film.colour == plan.pieces[where.piece].colour && inside(box, film.box);
                    }));
                }
        }
    }
}

TEST_CASE(
    "layers stay as they lie where that takes one load, and bands are taken apart where it saves some") {
    ArtworkOptions many = options();
    many.band_colours = {{200, 0, 0}, {0, 200, 0}, {0, 0, 200}, {200, 200, 0}, {0, 200, 200}, {200, 0, 200}};
    const Artwork artwork = drawn(garden(), many);
    const auto wide = plan_loads(artwork, bed(1'500, 1'000)).value();
    CHECK_FALSE(wide.bands_are_loose);
    CHECK(wide.plan.loads.size() == 1);
    CHECK(wide.pieces.size() == artwork.layers.size());
    const auto usual = plan_loads(artwork, bed(230, 280)).value();
    CHECK(usual.bands_are_loose);
    CHECK(usual.plan.loads.size() <= 3);
    CHECK(usual.pieces.size() > artwork.layers.size());
}

TEST_CASE("a witness reads right in loads for the front and is mirrored for the back, clear of all pieces") {
    std::vector<double> middles;
    for (const Surface surface : {Surface::first, Surface::second}) {
        const Artwork artwork = drawn(garden(), options(surface));
        const PlanOptions wanted = bed(304.8, 304.8);
        const auto plan = plan_loads(artwork, wanted).value();
        for (std::size_t i = 0; i < plan.plan.loads.size(); ++i) {
            REQUIRE(plan.witnesses[i]);
            const Path& letter = plan.witnesses[i]->path;
            const Box box = bounds(letter);
            CHECK(std::any_of(plan.plan.loads[i].films.begin(), plan.plan.loads[i].films.end(),
                              [&](const FilmRectangle& film) {
                                  return film.colour == plan.witnesses[i]->colour && inside(box, film.box);
                              }));
            for (const PlacedPiece& where : plan.plan.loads[i].pieces)
                for (const Contour& contour : placed(plan.pieces, plan.plan, where).contours) {
                    const Box other = bounds({{contour}});
                    const bool apart = other.right <= box.left - 1 || other.left >= box.right + 1 ||
                                       other.bottom <= box.top - 1 || other.top >= box.bottom + 1;
                    CHECK(apart);
                }
            // The bowl and leg of an R lie right of its stem: more of its film is there, or left of it in a
            // mirror.
            double moment = 0;
            for (const Contour& contour : letter.contours)
                for (const Segment& s : contour.segments) moment += s.to.x - box.centre().x;
            middles.push_back(moment);
        }
    }
    REQUIRE(middles.size() == 2);
    CHECK(middles[0] * middles[1] < 0);
}

TEST_CASE("a layer larger than the bed is split, and no letter with it") {
    const Artwork artwork = drawn(garden(), options());
    const PlanOptions wanted = bed(120, 150);
    const auto plan = plan_loads(artwork, wanted).value();
    REQUIRE_FALSE(plan.plan.parts.empty());
    std::size_t contours = 0;
    for (const Piece& piece : layer(artwork, "letters").pieces) contours += piece.path.contours.size();
    std::size_t in_parts = 0;
    for (const SplitPart& part : plan.plan.parts)
        if (plan.pieces[part.piece].layer == "letters") in_parts += part.path.contours.size();
    CHECK(in_parts == contours);
    for (const Load& load : plan.plan.loads)
        for (const PlacedPiece& where : load.pieces)
            CHECK(inside(bounds(placed(plan.pieces, plan.plan, where)), {0, 0, 120, 150}));
}

TEST_CASE("registration marks stand in the same places of every layer, outside of the blank") {
    for (const Surface surface : {Surface::first, Surface::second}) {
        ArtworkOptions wanted = options(surface);
        wanted.registration = true;
        const Artwork artwork = drawn(garden(), wanted);
        std::vector<Path> first;
        for (std::size_t i = 0; i < artwork.layers.size(); ++i) {
            const Drawing drawing = layer_drawing(artwork, i);
            CHECK(drawing.width_mm == Approx(artwork.blank.width_mm + 2 * artwork.overhang_mm));
            std::vector<Path> marks;
            for (const Piece& piece : drawing.groups.front().pieces)
                if (has(piece.name, "registration")) marks.push_back(piece.path);
            CHECK(marks.size() == 4);
            if (i == 0) first = marks;
            CHECK(marks == first);
        }
        for (const Piece& mark : artwork.registration) {
            const Box box = bounds(mark.path);
            const bool outside = box.right <= 0 || box.left >= artwork.blank.width_mm;
            CHECK(outside);
            CHECK(box.left >= -artwork.overhang_mm);
        }
        // The square tells how a layer is turned: upper left for the viewer, so on the right where it is
        // mirrored.
        const Box square = bounds(first.front());
        CHECK((square.left > artwork.blank.width_mm) == (surface == Surface::second));
    }
}

TEST_CASE("weeding lines frame what is cut and cross between rows, and touch nothing") {
    const std::vector<Piece> rows{{"a", capsule({10, 10}, {50, 10}, 3)},
                                  {"b", capsule({10, 20}, {30, 20}, 3)},
                                  {"c", capsule({40, 22}, {50, 22}, 3)},
                                  {"d", capsule({10, 25.5}, {20, 25.5}, 2)}};
    const auto lines = weeding_lines(rows, 2);
    // Between a and the rest there is room; c reaches over the gap between b and d.
    REQUIRE(lines.size() == 5);
    CHECK(lines[4].from.y == Approx(15));
    CHECK(lines[4].from.x == Approx(5));
    CHECK(lines[4].to.x == Approx(55));
    CHECK(weeding_lines({}, 2).empty());
}

TEST_CASE("film that holds no letter is refused at once, and film that holds few in bounded work") {
    const Artwork artwork = drawn(garden(), options());
    for (const double side : {18.0, 25.4, 30.0, 40.0}) {
        PlanOptions wanted = bed(120, 150);
        wanted.films = {{artwork.layers[place_of(artwork, "letters")].colour, side, side, 1}};
        const auto plan = plan_loads(artwork, wanted);
        CHECK_FALSE(plan);
        if (!plan) CHECK(plan.refusal().reason != Refusal::Reason::unusable);
    }
}
