// Cutting plans, judged on their outlines (support/plan_judge), on rooms cut apart, and on closed forms.

#include <letterlode/plan.hpp>

#include <atomic>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <thread>

#include "art/outline_polygons.hpp"
#include "random/random.hpp"
#include "support/plan_judge.hpp"

using namespace lode;
using namespace lode::test;

namespace {

constexpr Colour red{0xc0, 0x20, 0x20}, blue{0x20, 0x50, 0xc0}, green{0x20, 0x90, 0x40};
constexpr Colour eight_colours[] = {red,       blue,          green,         {1, 2, 3},
                                    {9, 9, 9}, {200, 180, 0}, {120, 0, 120}, {0, 120, 120}};

Path rectangle(Point corner, double width, double height) {
    return Path{{Contour{
        corner,
        {Segment::line({corner.x + width, corner.y}), Segment::line({corner.x + width, corner.y + height}),
         Segment::line({corner.x, corner.y + height}), Segment::line(corner)}}}};
}

ToCut square_piece(Colour colour, double width, double height, const std::string& name = "bed edging") {
    return {name, "bands", colour, rectangle({20, 30}, width, height)};
}

// Bands over words of four to nine letters in all directions.
std::vector<ToCut> bands(int count, std::size_t colours, double cell, std::uint64_t seed) {
    Random random(seed);
    static constexpr int across[] = {1, 1, 0, -1, -1, -1, 0, 1}, down[] = {0, 1, 1, 1, 0, -1, -1, -1};
    std::vector<ToCut> pieces;
    for (int i = 0; i < count; ++i) {
        const int length = 3 + static_cast<int>(random.below(6));
        const std::uint32_t direction = random.below(8);
        const Point from{static_cast<double>(random.below(300)), static_cast<double>(random.below(300))};
        const Point to{from.x + across[direction] * length * cell, from.y + down[direction] * length * cell};
        pieces.push_back({"band " + std::to_string(i + 1), "bands",
                          eight_colours[random.below(static_cast<std::uint32_t>(colours))],
                          capsule(from, to, cell * 0.38)});
    }
    return pieces;
}

PlanOptions foot_square(double edge = 3) {
    PlanOptions options;
    options.bed = {304.8, 304.8, edge};
    return options;
}

Plan sound_plan(const std::vector<ToCut>& pieces, const PlanOptions& options) {
    auto outcome = plan(pieces, options);
    if (!outcome) FAIL(outcome.refusal().message);
    const auto faults = faults_of(pieces, options, *outcome);
    CAPTURE(faults);
    REQUIRE(faults.empty());
    return std::move(*outcome);
}

std::size_t films(const Plan& plan) {
    std::size_t sum = 0;
    for (const Load& load : plan.loads) sum += load.films.size();
    return sum;
}

}  // namespace

TEST_CASE("Turning by eighths is clockwise to the eye and keeps areas and lengths") {
    const Path path = rectangle({0, 0}, 30, 10);
    const Box quarter = bounds(turned(path, 2));
    // (30, 0), to the right, comes to lie below the origin.
    REQUIRE(quarter.left == Approx(-10));
    REQUIRE(quarter.right == Approx(0).margin(1e-12));
    REQUIRE(quarter.bottom == Approx(30));
    const Box eighth = bounds(turned(path, 1));
    REQUIRE(eighth.width() == Approx(40 * std::sqrt(0.5)));
    for (int eighths = -8; eighths <= 16; ++eighths)
        REQUIRE(signed_area(turned(path, eighths)) == Approx(300));
    REQUIRE(turned(path, 9) == turned(path, 1));
}

TEST_CASE("Forty words in eight colours go into one load, a rectangle of film a colour") {
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        const auto pieces = bands(40, 8, 14, seed);
        const Plan result = sound_plan(pieces, foot_square());
        CAPTURE(seed);
        REQUIRE(result.loads.size() == 1);
        REQUIRE(result.proved);
        REQUIRE(films(result) == 8);
    }
}

TEST_CASE("Plans of all kinds keep what they promise") {
    Random random(3);
    for (std::uint64_t seed = 1; seed <= 24; ++seed) {
        const int count = 1 + static_cast<int>(random.below(60));
        const auto pieces = bands(count, 1 + random.below(8), 8 + random.below(18), seed);
        PlanOptions options = foot_square(random.below(10));
        options.gap_mm = random.below(15);
        options.film_margin_mm = random.below(8);
        options.may_turn = random.below(4) > 0;
        options.effort = random.below(3) == 0 ? random.below(2'000) : 5'000'000;
        if (random.below(3) == 0) options.bed.height_mm = 0;
        CAPTURE(seed, count, options.gap_mm, options.film_margin_mm, options.may_turn, options.effort);
        sound_plan(pieces, options);
    }
}

TEST_CASE("The same pieces give the same plan") {
    const auto pieces = bands(30, 5, 18, 7);
    const Plan one = sound_plan(pieces, foot_square()), other = sound_plan(pieces, foot_square());
    REQUIRE(one.loads.size() == other.loads.size());
    for (std::size_t load = 0; load < one.loads.size(); ++load)
        REQUIRE(picture_of(pieces, foot_square(), one, load) ==
                picture_of(pieces, foot_square(), other, load));
}

TEST_CASE("Up to a dozen pieces are planned in as few loads as can be, and that is proved") {
    for (const double cell : {20.0, 24.0, 30.0})
        for (std::uint64_t seed = 1; seed <= 4; ++seed)
            for (const std::size_t colours : {1u, 3u}) {
                const auto pieces = bands(8 + static_cast<int>(seed), colours, cell, seed);
                CAPTURE(cell, seed, colours);
                REQUIRE(sound_plan(pieces, foot_square()).proved);
            }
}

TEST_CASE("Film between colours is reckoned with in the proof") {
    // Within 100 mm less the margins of 5 there are 90: of one colour two pieces of 43.5 lie 3 apart, of two
    // colours they would lie 10 apart.
    PlanOptions options;
    options.bed = {100, 100, 0};
    const ToCut tall = square_piece(red, 43.5, 90);
    ToCut other = tall;
    REQUIRE(sound_plan({tall, other}, options).loads.size() == 1);
    other.colour = blue;
    const Plan result = sound_plan({tall, other}, options);
    REQUIRE(result.loads.size() == 2);
    REQUIRE(result.least_loads == 2);
    REQUIRE(result.proved);
    other.path = rectangle({0, 0}, 36.5, 90);
    REQUIRE(sound_plan({tall, other}, options).loads.size() == 1);
}

TEST_CASE("A diagonal band is turned so that its box is thin") {
    std::vector<ToCut> pieces;
    for (int i = 0; i < 10; ++i) pieces.push_back({"band", "bands", red, capsule({0, 0}, {150, 150}, 10)});
    const Plan result = sound_plan(pieces, foot_square());
    REQUIRE(result.loads.size() == 1);
    for (const PlacedPiece& piece : result.loads[0].pieces) REQUIRE(piece.eighths % 2 == 1);
    PlanOptions options = foot_square();
    options.may_turn = false;
    REQUIRE(sound_plan(pieces, options).loads.size() == 10);
}

TEST_CASE("A blank cut apart goes back onto as many beds") {
    // Cut from side to side at whole millimetres, no gap, no margin: no plan has fewer loads, by area.
    for (const std::size_t sheets : {1u, 2u, 3u}) {
        Random random(sheets);
        std::vector<ToCut> pieces;
        for (std::size_t sheet = 0; sheet < sheets; ++sheet) {
            std::vector<Box> parts{{0, 0, 300, 300}};
            while (parts.size() < 9) {
                const Box part = parts[random.below(static_cast<std::uint32_t>(parts.size()))];
                const bool across = part.width() >= part.height();
                const double side = across ? part.width() : part.height();
                if (side < 60) continue;
                const double cut =
                    std::floor(side / 5) + 1 + random.below(static_cast<std::uint32_t>(side * 3 / 5));
                Box one = part, other = part;
                (across ? one.right : one.bottom) = (across ? part.left : part.top) + cut;
                (across ? other.left : other.top) += cut;
                std::erase_if(parts, [&](const Box& p) { return p.left == part.left && p.top == part.top; });
                parts.insert(parts.end(), {one, other});
            }
            for (const Box& part : parts)
                pieces.push_back(
                    {"tile", "border", green, rectangle({part.left, part.top}, part.width(), part.height())});
        }
        random.shuffle(pieces);
        PlanOptions options;
        options.bed = {300, 300, 0};
        options.gap_mm = options.film_margin_mm = 0;
        const Plan result = sound_plan(pieces, options);
        CAPTURE(sheets);
        REQUIRE(result.loads.size() == sheets);
        REQUIRE(result.proved);
    }
}

TEST_CASE("Film comes from the maker's stock, and no more than there is") {
    PlanOptions options = foot_square();
    options.films = {{red, 152.4, 228.6, 1}, {red, 60, 60, 2}};
    std::vector<ToCut> pieces{square_piece(red, 140, 150), square_piece(red, 50, 50),
                              square_piece(red, 40, 40), square_piece(blue, 200, 90)};
    const Plan result = sound_plan(pieces, options);
    REQUIRE(result.loads.size() == 1);
    for (const FilmRectangle& film : result.loads[0].films)
        REQUIRE(film.stock.has_value() == (film.colour == red));

    options.films = {{red, 200, 0, 1}};  // a roll
    REQUIRE(sound_plan(pieces, options).loads.size() == 1);
}

TEST_CASE("A roll, and a sheet larger than the bed, serve as many loads as they hold") {
    PlanOptions options;
    options.bed = {120, 120, 0};
    const std::vector<ToCut> beds(6, square_piece(red, 100, 100));
    options.films = {{red, 115, 0, 1}};
    CHECK(sound_plan(beds, options).loads.size() == 6);
    options.films = {{red, 240, 360, 1}};  // two by three films as large as the bed
    CHECK(sound_plan(beds, options).loads.size() == 6);
    options.films = {{red, 360, 240, 1}};
    CHECK(sound_plan(beds, options).loads.size() == 6);
    options.films = {{red, 240, 240, 1}};
    CHECK_FALSE(plan(beds, options));
}

TEST_CASE("Whatever film there is, it is never cut twice") {
    Random random(8);
    int planned = 0;
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        const auto pieces = bands(1 + static_cast<int>(random.below(25)), 3, 10, seed);
        PlanOptions options = foot_square();
        options.effort = 2'000'000;
        for (int sheet = 0; sheet < 6; ++sheet)
            options.films.push_back({eight_colours[random.below(2)], 60.0 + random.below(250),
                                     random.below(5) == 0 ? 0.0 : 60.0 + random.below(250),
                                     1 + static_cast<int>(random.below(2))});
        CAPTURE(seed);
        const auto outcome = plan(pieces, options);
        if (!outcome) {
            REQUIRE(outcome.refusal().reason != Refusal::Reason::unusable);
            continue;
        }
        ++planned;
        const auto faults = faults_of(pieces, options, *outcome);
        CAPTURE(faults);
        REQUIRE(faults.empty());
    }
    REQUIRE(planned > 10);
}

TEST_CASE("Film that cannot do is refused, naming piece, colour and sizes") {
    PlanOptions options = foot_square();
    options.films = {{red, 152.4, 228.6, 1}};
    const auto too_small = plan(std::vector{square_piece(red, 180, 160, "marrow")}, options);
    REQUIRE_FALSE(too_small);
    REQUIRE(too_small.refusal().reason == Refusal::Reason::impossible);
    for (const char* part :
         {"marrow", "#c02020", "180 x 160 mm (7.09 x 6.3 in)", "152.4 x 228.6 mm (6 x 9 in)"})
        REQUIRE_THAT(too_small.refusal().message, Catch::Contains(part));
    REQUIRE_FALSE(too_small.refusal().advice.empty());

    const auto too_little = plan(std::vector<ToCut>(3, square_piece(red, 140, 150)), options);
    REQUIRE_FALSE(too_little);
    REQUIRE(too_little.refusal().reason == Refusal::Reason::impossible);
    REQUIRE_THAT(too_little.refusal().message, Catch::Contains("630 cm2"));

    options.films[0].count = 0;
    const auto none = plan(std::vector{square_piece(red, 10, 10)}, options);
    REQUIRE_FALSE(none);
    REQUIRE(none.refusal().reason == Refusal::Reason::impossible);
}

TEST_CASE("A layer that fits stays whole, and one that does not is split between its letters") {
    // Letters of 12 mm with counters, in cells of 20 mm.
    ToCut layer{"letters", "letters", green, {}};
    for (int row = 0; row < 20; ++row)
        for (int column = 0; column < 26; ++column) {
            const Path ring = rectangle({column * 20.0, row * 20.0}, 12, 12);
            layer.path.contours.push_back(ring.contours[0]);
            layer.path.contours.push_back(
                reversed(rectangle({column * 20.0 + 4, row * 20.0 + 4}, 4, 4).contours[0]));
        }
    PlanOptions options = foot_square();
    const Plan result = sound_plan({layer}, options);
    // 512 x 392 mm onto less than 295 x 295: two by two.
    REQUIRE(result.parts.size() == 4);
    // The smaller ones may share a load.
    REQUIRE(result.loads.size() <= 4);
    REQUIRE(result.notes.size() >= 1);
    double area = 0;
    Path marks;
    for (const SplitPart& part : result.parts) {
        area += signed_area(part.path);
        REQUIRE_FALSE(part.marks.empty());
        for (const Contour& contour : part.marks.contours) {
            REQUIRE(signed_area(contour) == Approx(1.5 * 1.5));
            marks.contours.push_back(contour);
        }
    }
    REQUIRE(area == Approx(20 * 26 * (144 - 16)));
    // Halves meet in whole diamonds, which touch no letter.
    const auto joined = outline_polygons(marks, 1'000);
    REQUIRE(covered_area(joined) == Approx(1e6 * 2.25 * static_cast<double>(marks.contours.size())));
    REQUIRE(marks.contours.size() % 2 == 0);
    REQUIRE(shared_area(joined, outline_polygons(layer.path, 1'000)) == 0);
    ClipperLib::Clipper together;
    together.AddPaths(joined, ClipperLib::ptSubject, true);
    ClipperLib::Paths diamonds;
    together.Execute(ClipperLib::ctUnion, diamonds, ClipperLib::pftNonZero, ClipperLib::pftNonZero);
    REQUIRE(diamonds.size() == marks.contours.size() / 2);

    options.bed = {540, 420, 3};
    const Plan whole = sound_plan({layer}, options);
    REQUIRE(whole.parts.empty());
    REQUIRE(whole.loads.size() == 1);
    options.bed.height_mm = 0;
    REQUIRE(sound_plan({layer}, options).loads[0].length_mm == Approx(392 + 2 * 5 + 2 * 3).margin(0.01));
}

TEST_CASE("A piece larger than the bed that nothing parts is refused") {
    const auto refused = plan(std::vector{square_piece(blue, 400, 320, "signpost")}, foot_square());
    REQUIRE_FALSE(refused);
    REQUIRE(refused.refusal().reason == Refusal::Reason::impossible);
    for (const char* part : {"signpost", "#2050c0", "400 x 320 mm (15.75 x 12.6 in)", "288.8 x 288.8 mm"})
        REQUIRE_THAT(refused.refusal().message, Catch::Contains(part));
}

TEST_CASE("A roll's load is no longer than its pieces ask for") {
    PlanOptions options;
    options.bed = {300, 0, 0};
    options.gap_mm = options.film_margin_mm = 0;
    // Eight tiles of 150 x 100 cover 300 x 400 without waste.
    const std::vector<ToCut> tiles(8, square_piece(red, 150, 100));
    const Plan result = sound_plan(tiles, options);
    REQUIRE(result.loads.size() == 1);
    REQUIRE(result.loads[0].length_mm == Approx(400));
}

TEST_CASE("What is no bed, no film or no piece is refused as unusable") {
    const double nothing = std::numeric_limits<double>::quiet_NaN(),
                 endless = std::numeric_limits<double>::infinity();
    const std::vector one{square_piece(red, 10, 10)};
    std::vector<PlanOptions> bad(13, foot_square());
    bad[0].bed.width_mm = 0;
    bad[1].bed.width_mm = 1e9;
    bad[2].bed.height_mm = nothing;
    bad[3].bed.edge_mm = 152.4;
    bad[4].bed.edge_mm = -1;
    bad[5].gap_mm = nothing;
    bad[6].film_margin_mm = -2;
    bad[7].films = {{red, 0, 10, 1}};
    bad[8].films = {{red, 10, endless, 1}};
    bad[9].films = {{red, 10, 10, -1}};
    bad[10].bed.edge_mm = 1e12;
    bad[11].bed = {300, 0, 3, 0};
    bad[12].bed.height_mm = -5;
    for (std::size_t i = 0; i < bad.size(); ++i) {
        const auto refused = plan(one, bad[i]);
        CAPTURE(i);
        REQUIRE_FALSE(refused);
        REQUIRE(refused.refusal().reason == Refusal::Reason::unusable);
        REQUIRE_FALSE(refused.refusal().message.empty());
    }
    const auto refusal_of = [](ToCut piece) {
        return plan(std::vector{std::move(piece)}, foot_square()).refusal();
    };
    const Refusal empty = refusal_of({"trellis", "bands", red, {}});
    REQUIRE(empty.reason == Refusal::Reason::unusable);
    REQUIRE_THAT(empty.message, Catch::Contains("trellis"));
    REQUIRE(refusal_of({"point", "bands", red, Path{{Contour{{1, 1}, {}}}}}).reason ==
            Refusal::Reason::unusable);
    REQUIRE(refusal_of({"far", "bands", red, rectangle({nothing, 0}, 1, 1)}).reason ==
            Refusal::Reason::unusable);
    REQUIRE(refusal_of({"vast", "bands", red, rectangle({0, 0}, 1e200, 1)}).reason ==
            Refusal::Reason::unusable);
    REQUIRE_FALSE(plan(std::vector<ToCut>(10'001, one[0]), foot_square()));
    // A margin of film that leaves nothing.
    PlanOptions wide = foot_square();
    wide.film_margin_mm = 200;
    REQUIRE(plan(one, wide).refusal().reason == Refusal::Reason::impossible);
    REQUIRE(plan(std::vector<ToCut>{}, foot_square()).value().loads.empty());
}

TEST_CASE("Thousands of pieces are planned within little of the area bound") {
    auto pieces = bands(4'000, 5, 10, 1);
    PlanOptions options = foot_square();
    options.effort = 20'000'000;
    auto result = plan(pieces, options);
    REQUIRE(result);
    CAPTURE(result->loads.size(), result->least_loads);
    REQUIRE(result->loads.size() * 10 <= result->least_loads * 11);
    REQUIRE(faults_of(pieces, options, *result).empty());
}

TEST_CASE("A plan stops within one report of its steps once another thread cancels") {
    // Too much for two loads by their areas, and not for the search's patience.
    const auto pieces = bands(70, 8, 26, 5);
    const PlanOptions options = foot_square();
    std::uint64_t reports = 0, last = 0;
    const CutControl counted{[&](std::uint64_t done, std::uint64_t all) {
                                 ++reports;
                                 REQUIRE(done > last);
                                 REQUIRE(all == options.effort);
                                 last = done;
                             },
                             nullptr};
    REQUIRE(plan(pieces, options, counted));
    REQUIRE(reports > 20);
    for (const std::uint64_t at : {std::uint64_t{1}, reports / 3, reports}) {
        std::atomic<bool> flag{false};
        std::uint64_t seen = 0;
        const CutControl control{[&](std::uint64_t, std::uint64_t) {
                                     if (++seen == at) std::thread([&] { flag = true; }).join();
                                 },
                                 &flag};
        const auto outcome = plan(pieces, options, control);
        CAPTURE(at);
        REQUIRE_FALSE(outcome);
        REQUIRE(outcome.refusal().reason == Refusal::Reason::unfinished);
        REQUIRE(seen == at);
    }
}

TEST_CASE("What fits the bed but no film of its colour is split as far as the film asks for") {
    // Twelve letters in a row of 240 mm, on sheets that take six of them with their marks, but no seven.
    ToCut row{"letters", "letters", red, {}, true};
    for (int i = 0; i < 12; ++i) {
        const Path letter = rectangle({20.0 * i, 0}, 12, 14);
        row.path.contours.push_back(letter.contours.front());
    }
    PlanOptions options = foot_square();
    options.films = {{red, 150, 60, 2}};
    const Plan result = sound_plan({row}, options);
    REQUIRE(result.parts.size() == 2);
    REQUIRE_THAT(result.notes.front(), Catch::Contains("larger than the film of its colour"));
    options.films[0].width_mm = 260;
    REQUIRE(sound_plan({row}, options).parts.empty());
    // No line parts one letter.
    options.films = {{red, 20, 20, 50}};
    const auto refused = plan(std::vector{row}, options);
    REQUIRE_FALSE(refused);
    REQUIRE_THAT(refused.refusal().message, Catch::Contains("no film of that colour holds it"));
}
