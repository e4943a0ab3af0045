// What film holds: findings, measures and the least change that mends them.

#include <catch2/catch.hpp>

#include <letterlode/cut.hpp>

#include <atomic>
#include <thread>
#include <utility>

#include "panels.hpp"

using namespace lode;
using namespace panels;

namespace {

// Fifteen columns on 8 x 10 in: what an ordinary sans is too thin for (common practice; DejaVu Sans B has a
// stroke of 0.081 cap heights, computed by an independent program).
Puzzle fifteen() {
    std::vector<std::string> rows;
    for (int row = 0; row < 15; ++row) {
        std::string line;
        for (int column = 0; column < 15; ++column)
            line += static_cast<char>('A' + (row * 7 + column * 3) % 26);
        rows.push_back(line);
    }
    return of_rows(rows);
}

ArtworkOptions in_font(const std::string& font) {
    ArtworkOptions wanted = options(Surface::first, "");
    wanted.font = font;
    return wanted;
}

const LayerMeasures& of_layer(const Measures& measures, const std::string& name) {
    for (const LayerMeasures& one : measures.layers)
        if (one.layer == name) return one;
    throw std::runtime_error("no layer " + name);
}

}  // namespace

TEST_CASE("an ordinary sans is too thin at fifteen columns on 8 x 10 in, and the finding says where") {
    const auto held = draw_and_measure(fifteen(), in_font("DejaVu Sans")).value();
    REQUIRE_FALSE(held.measures.holds());
    const double cap = held.artwork.cap_height_mm;
    bool b_is_named = false;
    for (const ThinFinding& finding : held.measures.thin) {
        if (finding.kind != ThinFinding::Kind::stroke || finding.piece.substr(0, 2) != "B ") continue;
        // The first of its places is the narrowest.
        if (!std::exchange(b_is_named, true)) CHECK(finding.width_mm == Approx(0.081 * cap).margin(0.01));
        CHECK(finding.alike > 1);
        CHECK(has(finding_text(finding), "The stroke of B at row "));
        CHECK(has(finding_text(finding), " in)"));
    }
    CHECK(b_is_named);
    const auto ways = ways_out(held);
    REQUIRE(ways.size() >= 3);
    CHECK(has(ways[0], "--embolden"));
}

TEST_CASE("the constructed alphabet holds there, and no change is made to it") {
    const auto held = draw_to_hold(fifteen(), in_font("")).value();
    CHECK(held.measures.holds());
    CHECK(held.changed.empty());
    CHECK(*of_layer(held.measures, "letters").narrowest_stroke_mm >= usual_least_stroke_mm);
    CHECK(*of_layer(held.measures, "letters").narrowest_gap_mm >= usual_least_gap_mm);
    CHECK(held.artwork.font == "constructed alphabet");
}

TEST_CASE("what is too thin is made wider by what is missing, and by no more") {
    const ArtworkOptions wanted = in_font("DejaVu Sans");
    const auto thin = draw_and_measure(fifteen(), wanted).value();
    double worst = 0;
    for (const ThinFinding& finding : thin.measures.thin)
        if (finding.kind == ThinFinding::Kind::stroke)
            worst = std::max(worst, wanted.least_stroke_mm - finding.width_mm);
    const auto held = draw_to_hold(fifteen(), wanted).value();
    REQUIRE(held.measures.holds());
    REQUIRE(held.changed.size() == 1);
    CHECK(has(held.changed[0], "wider"));
    CHECK(held.options.embolden_mm > 0);
    CHECK(held.options.embolden_mm < worst + 0.05);
    // A hundredth of a millimetre less does not hold.
    ArtworkOptions less = wanted;
    less.embolden_mm = held.options.embolden_mm - 0.011;
    CHECK_FALSE(draw_and_measure(fifteen(), less).value().measures.holds());
    CHECK(*of_layer(held.measures, "letters").narrowest_stroke_mm >= wanted.least_stroke_mm);
    CHECK(*of_layer(held.measures, "letters").narrowest_stroke_mm < wanted.least_stroke_mm + 0.05);
}

TEST_CASE("where wider strokes would close gaps, the constructed alphabet takes over") {
    ArtworkOptions wanted = in_font("DejaVu Sans");
    wanted.least_stroke_mm = 1.3;
    wanted.least_gap_mm = 1.2;
    const auto held = draw_to_hold(fifteen(), wanted).value();
    REQUIRE(held.measures.holds());
    REQUIRE(held.changed.size() == 1);
    CHECK(has(held.changed[0], "constructed"));
    CHECK(held.artwork.font == "constructed alphabet");
}

TEST_CASE("what nothing mends comes back as it was, with its findings") {
    ArtworkOptions wanted = in_font("DejaVu Sans");
    wanted.least_stroke_mm = 4;
    const auto held = draw_to_hold(fifteen(), wanted).value();
    CHECK_FALSE(held.measures.holds());
    CHECK(held.changed.empty());
    CHECK(held.artwork.font == draw(fifteen(), wanted).value().font);
    CHECK(held.options.embolden_mm == 0);
}

TEST_CASE("pieces, counters, lengths and areas are those of the shapes") {
    // A capsule's outline and area have closed forms: a straight part of four cells between half circles.
    const Puzzle puzzle = of_rows({"OIIIO"}, {{"OIIIO", 0, 0, Direction::right}});
    const auto held = draw_and_measure(puzzle, in_font("DejaVu Sans:bold")).value();
    const LayerMeasures& bands = of_layer(held.measures, "bands");
    const double r = held.artwork.band_radius_mm;
    const double straight = 4 * held.artwork.cell_mm;
    constexpr double pi = 3.14159265358979;
    CHECK(bands.pieces == 1);
    CHECK(bands.counters == 0);
    CHECK(bands.cut_mm == Approx(2 * straight + 2 * pi * r).epsilon(1e-5));
    CHECK(bands.area_mm2 == Approx(2 * r * straight + pi * r * r).epsilon(1e-5));
    CHECK(*bands.narrowest_stroke_mm == Approx(2 * r).epsilon(1e-4));
    const LayerMeasures& letters = of_layer(held.measures, "letters");
    CHECK(letters.pieces == 5);
    CHECK(letters.counters == 2);
    // The dot of an i and two of Ö are pieces of their own.
    const auto dotted = draw_and_measure(of_cells({{"i", "Ö", "l"}}), in_font("DejaVu Sans:bold")).value();
    CHECK(of_layer(dotted.measures, "letters").pieces == 2 + 3 + 1);
    CHECK(of_layer(dotted.measures, "letters").counters == 1);
}

TEST_CASE("neighbours of one layer that come too near are told, by their distance") {
    ArtworkOptions wanted = in_font("DejaVu Sans:bold");
    wanted.least_gap_mm = 100;
    const auto held = draw_and_measure(of_rows({"HH"}), wanted).value();
    const Layer& letters = layer(held.artwork, "letters");
    const double apart = bounds(letters.pieces[1].path).left - bounds(letters.pieces[0].path).right;
    bool told = false;
    for (const ThinFinding& finding : held.measures.thin) {
        if (finding.kind != ThinFinding::Kind::between_pieces) continue;
        told = true;
        CHECK(finding.width_mm == Approx(apart).epsilon(1e-4));
        CHECK(has(finding_text(finding), "Between H at row 1, column 1 and H at row 1, column 2"));
    }
    CHECK(told == (apart < 100));
    CHECK(told);
}

namespace {

// Counts reports, and at one of them has another thread cancel.
struct Canceller {
    std::uint64_t at;
    std::atomic<bool> flag{false};
    std::uint64_t reports = 0;
    [[nodiscard]] CutControl control() {
        return {[this](std::uint64_t done, std::uint64_t all) {
                    CHECK(done <= all);
                    if (++reports == at) std::thread([this] { flag = true; }).join();
                },
                &flag};
    }
};

}  // namespace

TEST_CASE("drawing to hold stops before the next piece once another thread cancels, in any of its drawings") {
    const ArtworkOptions wanted = in_font("DejaVu Sans");
    Canceller never{0};
    REQUIRE(draw_to_hold(fifteen(), wanted, never.control()).value().measures.holds());
    const std::uint64_t all = never.reports;
    const std::uint64_t pieces = 225;
    REQUIRE(all > 5 * pieces);
    for (const std::uint64_t at : {std::uint64_t{1}, pieces / 2, pieces + 1, all / 2, all}) {
        Canceller canceller{at};
        const auto held = draw_to_hold(fifteen(), wanted, canceller.control());
        CAPTURE(at);
        REQUIRE_FALSE(held);
        CHECK(held.refusal().reason == Refusal::Reason::unfinished);
        CHECK(has(held.refusal().message, "interrupted"));
        CHECK(canceller.reports == at);
    }
    Canceller one{100};
    CHECK_FALSE(draw_and_measure(fifteen(), wanted, one.control()));
    CHECK(one.reports == 100);
}
