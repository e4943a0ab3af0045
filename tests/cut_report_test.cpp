// What is cut, told to another program: each figure is held against the artwork that it is about.

#include <letterlode/cut.hpp>

#include <catch2/catch.hpp>
#include <map>
#include <nlohmann/json.hpp>

#include "panels.hpp"

using namespace lode;
using Json = nlohmann::ordered_json;

namespace {

HeldArtwork held(const ArtworkOptions& options) {
    return draw_and_measure(panels::garden(), options).value();
}

CutOptions on_a_bed(const Bed& bed) {
    CutOptions cutting;
    cutting.plan = PlanOptions{};
    cutting.plan->bed = bed;
    return cutting;
}

double area(const Json& film) {
    return film["width_mm"].get<double>() * film["height_mm"].get<double>();
}

}  // namespace

TEST_CASE("a report tells sizes in millimetres and inches, and the layers as they were measured") {
    const HeldArtwork artwork = held(panels::options(Surface::second));
    const Json report = Json::parse(to_json(artwork));
    CHECK(report["format"] == "letterlode-cut");
    CHECK(report["version"] == 1);
    CHECK(report["surface"] == "second");
    CHECK(report["holds"] == true);
    CHECK(report["findings"].empty());
    CHECK_FALSE(report.contains("plan"));
    CHECK_FALSE(report.contains("seconds"));
    const Blank& blank = artwork.artwork.blank;
    CHECK(report["blank"]["width_mm"].get<double>() == Approx(blank.width_mm));
    for (const char* const box : {"blank", "artwork"})
        for (const std::string side : {"width", "height"})
            CHECK(report[box][side + "_in"].get<double>() * 25.4 ==
                  Approx(report[box][side + "_mm"].get<double>()).margin(0.001));
    CHECK(report["artwork"]["left_mm"] > 0);
    CHECK(report["artwork"]["width_mm"] < report["blank"]["width_mm"]);
    CHECK(report["cell_mm"].get<double>() == Approx(artwork.artwork.cell_mm).margin(0.001));
    double cut_mm = 0;
    REQUIRE(report["layers"].size() == artwork.artwork.layers.size());
    for (std::size_t i = 0; i < artwork.artwork.layers.size(); ++i) {
        const Json& layer = report["layers"][i];
        CHECK(layer["name"] == artwork.artwork.layers[i].name);
        CHECK(layer["colour"] == to_text(artwork.artwork.layers[i].colour));
        CHECK(layer["pieces"] == artwork.measures.layers[i].pieces);
        cut_mm += layer["cut_mm"].get<double>();
    }
    CHECK(report["cut_mm"].get<double>() == Approx(cut_mm).margin(1));
}

TEST_CASE("a finding of a report names the cell of its letter, and is never as wide as was asked") {
    ArtworkOptions options = panels::options(Surface::first);
    options.font = fallback_font;
    options.least_stroke_mm = 6;
    options.least_gap_mm = 6;
    const HeldArtwork artwork = held(options);
    const Json report = Json::parse(to_json(artwork));
    CHECK(report["holds"] == false);
    CHECK_FALSE(report["ways_out"].empty());
    REQUIRE(report["findings"].size() == artwork.measures.thin.size());
    std::size_t with_cells = 0;
    for (const Json& finding : report["findings"]) {
        CHECK(finding["width_mm"] < finding["asked_mm"]);
        CHECK(finding.contains("other") == (finding["kind"] == "between-pieces"));
        const bool is_letter = finding["layer"] == "letters";
        REQUIRE(finding.contains("row") == is_letter);
        if (!is_letter) continue;
        ++with_cells;
        const auto ends = [](const Json& piece) {
            return " at row " + piece["row"].dump() + ", column " + piece["column"].dump();
        };
        CHECK(finding["piece"].get<std::string>().ends_with(ends(finding)));
        if (finding.contains("other"))
            CHECK(finding["other"]["piece"].get<std::string>().ends_with(ends(finding["other"])));
    }
    CHECK(with_cells > 10);
    CHECK(with_cells < report["findings"].size());
}

TEST_CASE("what is all but as wide as was asked does not read as wide enough") {
    HeldArtwork artwork = held(panels::options(Surface::first));
    artwork.measures.least_stroke_mm = 1;
    ThinFinding finding;
    finding.layer = "letters";
    finding.piece = "A at row 1, column 1";
    finding.width_mm = 0.99985;
    artwork.measures.thin.push_back(finding);
    CHECK(Json::parse(to_json(artwork))["findings"][0]["width_mm"] == 0.999);
}

TEST_CASE("a report tells of each load its film and its pieces, and of each colour how much film") {
    const HeldArtwork artwork = held(panels::options(Surface::second));
    CutOptions cutting = on_a_bed({200, 150, 5});
    const Colour letters = artwork.artwork.layers[1].colour;
    cutting.plan->films = {{letters, 150, 0, 1}};
    cutting.speed_mm_s = 25;
    const CutPlan plan = plan_loads(artwork.artwork, *cutting.plan).value();
    cutting.planned = &plan;
    const Json report = Json::parse(to_json(artwork, cutting));
    CHECK(report["seconds"].get<double>() == Approx(report["cut_mm"].get<double>() / 25).margin(0.1));
    const Json& told = report["plan"];
    CHECK(told["bed"]["width_mm"] == 200);
    CHECK(told["proved"] == plan.plan.proved);
    CHECK(told["least_loads"] == plan.plan.least_loads);
    REQUIRE(plan.plan.loads.size() > 1);
    REQUIRE(told["loads"].size() == plan.plan.loads.size());
    std::map<std::string, double> areas;
    std::size_t pieces = 0;
    for (const Json& load : told["loads"]) {
        pieces += load["pieces"].size();
        for (const Json& film : load["films"]) {
            areas[film["colour"]] += area(film);
            CHECK(film["left_mm"] >= 5);
            CHECK(film["left_mm"].get<double>() + film["width_mm"].get<double>() <= 195.001);
            CHECK(film.contains("from") == (film["colour"] == to_text(letters)));
            if (film.contains("from")) CHECK_FALSE(film["from"].contains("height_mm"));
        }
        // Each piece lies on one of its load's films.
        for (const Json& piece : load["pieces"])
            CHECK(std::any_of(load["films"].begin(), load["films"].end(), [&](const Json& film) {
                const auto within = [&](const char* from, const char* size) {
                    const double at = piece[from].get<double>() - film[from].get<double>();
                    return at >= -0.002 && at + piece[size].get<double>() <= film[size].get<double>() + 0.002;
                };
                return within("left_mm", "width_mm") && within("top_mm", "height_mm");
            }));
    }
    CHECK(pieces >= artwork.artwork.layers.size());
    for (const Json& film : told["film"])
        CHECK(film["area_mm2"].get<double>() == Approx(areas.at(film["colour"])).epsilon(0.0001));
    CHECK(told["film"].size() == areas.size());
}

TEST_CASE("files are the same from loads that were planned before, which must come with their options") {
    const Puzzle puzzle = panels::garden();
    const HeldArtwork artwork = held(panels::options(Surface::first));
    CutOptions cutting = on_a_bed({304.8, 304.8, 0});
    const auto own = cut_files(puzzle, artwork, cutting).value();
    const CutPlan plan = plan_loads(artwork.artwork, *cutting.plan).value();
    cutting.planned = &plan;
    const auto given = cut_files(puzzle, artwork, cutting).value();
    REQUIRE(own.size() == given.size());
    for (std::size_t i = 0; i < own.size(); ++i) CHECK(own[i].bytes == given[i].bytes);
    cutting.plan.reset();
    CHECK_THROWS_AS(cut_files(puzzle, artwork, cutting), std::invalid_argument);
    CHECK_THROWS_AS(to_json(artwork, cutting), std::invalid_argument);
}
