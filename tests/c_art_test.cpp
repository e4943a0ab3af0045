// Artwork, cutting and print as C callers meet them; the C++ API is the judge of what they are handed.

#include <algorithm>
#include <functional>

#include "support/c_art_handles.hpp"
#include "support/scratch_folder.hpp"

using namespace lode::test::c_api;

namespace {

std::string drawing_of(const lode_artwork* artwork, const char* format) {
    return bytes_from(
        [&](auto out, auto error) { return lode_artwork_drawing(out, artwork, format, error); });
}

std::string cut_json_of(const lode_artwork* artwork, const lode_plan* plan = nullptr,
                        const lode_cut_options* options = nullptr) {
    return bytes_from(
        [&](auto out, auto error) { return lode_cut_json(out, artwork, plan, options, error); });
}

ArtHeld<lode_cut_options> new_cut_options() {
    lode_cut_options* options = nullptr;
    REQUIRE(lode_cut_options_create(&options, nullptr) == LODE_OK);
    return ArtHeld<lode_cut_options>(options);
}

ArtHeld<lode_files> files_cut(const lode_artwork* artwork, const lode_plan* plan,
                              const lode_cut_options* options) {
    lode_files* files = nullptr;
    Out<lode_refusal> refusal;
    Out<lode_error> error;
    REQUIRE(lode_cut_files(&files, refusal, artwork, plan, options, nullptr, error) == LODE_OK);
    return ArtHeld<lode_files>(files);
}

void check_same(const lode_files* files, const std::vector<lode::NamedFile>& judge) {
    REQUIRE(lode_files_count(files) == judge.size());
    for (std::size_t at = 0; at < judge.size(); ++at) {
        INFO(judge[at].path);
        CHECK(std::string(lode_files_path(files, at)) == judge[at].path);
        const std::string_view bytes(static_cast<const char*>(lode_files_data(files, at)),
                                     lode_files_size(files, at));
        CHECK((bytes == judge[at].bytes));
    }
}

ArtHeld<lode_plan> planned(const lode_artwork* artwork, const lode_cut_options* options) {
    lode_plan* plan = nullptr;
    Out<lode_refusal> refusal;
    REQUIRE(lode_plan_loads(&plan, refusal, artwork, options, nullptr, nullptr) == LODE_OK);
    return ArtHeld<lode_plan>(plan);
}

ArtHeld<lode_worksheets> worksheets_of(const lode_puzzle* puzzle) {
    lode_worksheets* worksheets = nullptr;
    REQUIRE(lode_worksheets_create(&worksheets, nullptr) == LODE_OK);
    REQUIRE(lode_worksheets_add(worksheets, puzzle, "Herb bed", nullptr, nullptr) == LODE_OK);
    REQUIRE(lode_worksheets_add(worksheets, puzzle, "Herb bed", "B", nullptr) == LODE_OK);
    return ArtHeld<lode_worksheets>(worksheets);
}

std::vector<lode::Worksheet> worksheets_in_cpp() {
    return {{herbs_in_cpp(), "Herb bed", ""}, {herbs_in_cpp(), "Herb bed", "B"}};
}

// A setter of C and the same in C++.
template <class Handle, class Options>
struct Setting {
    const char* name;
    std::function<std::int32_t(Handle*)> in_c;
    std::function<void(Options&)> in_cpp;
};

}  // namespace

TEST_CASE("every setter of artwork does what the C++ option does, and something", "[c]") {
    using Setting = Setting<lode_artwork_options, lode::ArtworkOptions>;
    using C = lode_artwork_options;
    using Cpp = lode::ArtworkOptions;
    const std::vector<Setting> settings{
        {"blank", [](C* c) { return lode_artwork_options_set_blank(c, "oval 180x150mm", nullptr); },
         [](Cpp& o) { o.blank = lode::read_blank("oval 180x150mm").value(); }},
        {"blank",
         [](C* c) {
             return lode_artwork_options_set_blank_svg(
                 c,
                 "<svg xmlns='http://www.w3.org/2000/svg' width='200mm' height='160mm' viewBox='0 0 200 160'>"
                 "<rect width='200' height='160' rx='20'/></svg>",
                 "sign.svg", nullptr);
         },
         [](Cpp& o) {
             o.blank = lode::svg_outline(
                           "<svg xmlns='http://www.w3.org/2000/svg' width='200mm' "
                           "height='160mm' viewBox='0 0 200 160'>"
                           "<rect width='200' height='160' rx='20'/></svg>",
                           "sign.svg")
                           .value();
         }},
        {"surface", [](C* c) { return lode_artwork_options_set_surface(c, "first", nullptr); },
         [](Cpp& o) { o.surface = lode::Surface::first; }},
        {"margin", [](C* c) { return lode_artwork_options_set_margin(c, 9.5, nullptr); },
         [](Cpp& o) { o.margin_mm = 9.5; }},
        {"rebate", [](C* c) { return lode_artwork_options_set_rebate(c, 3, nullptr); },
         [](Cpp& o) { o.rebate_mm = 3; }},
        {"hole", [](C* c) { return lode_artwork_options_add_hole(c, 30, 20, 8, nullptr); },
         [](Cpp& o) {
             o.holes.push_back({{30, 20}, 8});
         }},
        {"hole", [](C* c) { return lode_artwork_options_add_hole(c, 60, 50, 8, nullptr); },
         [](Cpp& o) {
             o.holes.push_back({{60, 50}, 8});
         }},
        {"font", [](C* c) { return lode_artwork_options_set_font(c, "DejaVu Sans:bold", nullptr); },
         [](Cpp& o) { o.font = "DejaVu Sans:bold"; }},
        {"heading", [](C* c) { return lode_artwork_options_set_heading(c, "Wrenbarrow\nHerbs", nullptr); },
         [](Cpp& o) { o.heading = "Wrenbarrow\nHerbs"; }},
        {"heading-font",
         [](C* c) { return lode_artwork_options_set_heading_font(c, "DejaVu Serif", nullptr); },
         [](Cpp& o) { o.heading_font = "DejaVu Serif"; }},
        {"heading-area", [](C* c) { return lode_artwork_options_set_heading_area(c, 22, nullptr); },
         [](Cpp& o) { o.heading_area_mm = 22; }},
        {"foot", [](C* c) { return lode_artwork_options_set_foot(c, "Spring", nullptr); },
         [](Cpp& o) { o.foot = "Spring"; }},
        {"word-list", [](C* c) { return lode_artwork_options_set_word_list(c, 7, nullptr); },
         [](Cpp& o) { o.word_list = true; }},
        {"band", [](C* c) { return lode_artwork_options_set_band(c, "brush", nullptr); },
         [](Cpp& o) { o.band = lode::BandKind::brush; }},
        {"colour bands",
         [](C* c) { return lode_artwork_options_set_colour(c, "bands", "gold,#2e8b57", nullptr); },
         [](Cpp& o) {
             o.band_colours = {{0xff, 0xd7, 0x00}, {0x2e, 0x8b, 0x57}};
         }},
        {"colour letters",
         [](C* c) { return lode_artwork_options_set_colour(c, "letters", "#112233", nullptr); },
         [](Cpp& o) {
             o.letters = {0x11, 0x22, 0x33};
         }},
        {"colour heading",
         [](C* c) { return lode_artwork_options_set_colour(c, "heading", "#445566", nullptr); },
         [](Cpp& o) {
             o.heading_colour = {0x44, 0x55, 0x66};
         }},
        {"colour text", [](C* c) { return lode_artwork_options_set_colour(c, "text", "#778899", nullptr); },
         [](Cpp& o) {
             o.text_colour = {0x77, 0x88, 0x99};
         }},
        {"inlay", [](C* c) { return lode_artwork_options_set_inlay(c, "all", nullptr); },
         [](Cpp& o) { o.inlay = lode::Inlay::all; }},
        {"border", [](C* c) { return lode_artwork_options_set_border(c, "double", nullptr); },
         [](Cpp& o) { o.border = lode::BorderStyle::double_line; }},
        {"border-line", [](C* c) { return lode_artwork_options_set_border_line(c, 0.9, nullptr); },
         [](Cpp& o) { o.border_line_mm = 0.9; }},
        {"colour border",
         [](C* c) { return lode_artwork_options_set_colour(c, "border", "#aabbcc", nullptr); },
         [](Cpp& o) {
             o.border_colour = {0xaa, 0xbb, 0xcc};
         }},
        {"ornament", [](C* c) { return lode_artwork_options_set_ornament(c, "leaf", nullptr); },
         [](Cpp& o) { o.ornament = lode::Ornament::leaf; }},
        {"least-stroke", [](C* c) { return lode_artwork_options_set_least_stroke(c, 2.5, nullptr); },
         [](Cpp& o) { o.least_stroke_mm = 2.5; }},
        {"least-gap", [](C* c) { return lode_artwork_options_set_least_gap(c, 2.25, nullptr); },
         [](Cpp& o) { o.least_gap_mm = 2.25; }},
        {"embolden", [](C* c) { return lode_artwork_options_set_embolden(c, 0.05, nullptr); },
         [](Cpp& o) { o.embolden_mm = 0.05; }},
        {"registration", [](C* c) { return lode_artwork_options_set_registration(c, 1, nullptr); },
         [](Cpp& o) { o.registration = true; }},
    };
    const auto puzzle = herb_puzzle();
    const lode::Puzzle judge_puzzle = herbs_in_cpp();
    // A heading, a foot, a border and an ornament, so that each of their options has something to change.
    const auto base = panel_options();
    lode::ArtworkOptions judge_base = panel_options_in_cpp();
    REQUIRE(lode_artwork_options_set_heading(base.get(), "FIG", nullptr) == LODE_OK);
    REQUIRE(lode_artwork_options_set_foot(base.get(), "PEA", nullptr) == LODE_OK);
    REQUIRE(lode_artwork_options_set_border(base.get(), "line", nullptr) == LODE_OK);
    judge_base.heading = "FIG";
    judge_base.foot = "PEA";
    judge_base.border = lode::BorderStyle::line;
    const auto of = [&](const lode_artwork_options* options, bool with_measures) {
        const auto artwork = drawn_alone(puzzle.get(), options);
        return drawing_of(artwork.get(), "svg") +
               (with_measures ? cut_json_of(drawn(puzzle.get(), options).get()) : "");
    };
    for (const Setting& setting : settings) {
        INFO(setting.name);
        const bool measured = std::string_view(setting.name).starts_with("least-");
        ArtOut<lode_artwork_options> options;
        REQUIRE(lode_artwork_options_copy(options, base.get(), nullptr) == LODE_OK);
        REQUIRE(setting.in_c(options.get()) == LODE_OK);
        lode::ArtworkOptions judge = judge_base;
        setting.in_cpp(judge);
        const std::string all = of(options.get(), measured);
        const auto artwork = lode::draw(judge_puzzle, judge).value();
        const std::string judge_all =
            lode::to_svg(lode::artwork_drawing(artwork)) +
            (measured ? lode::to_json(lode::draw_and_measure(judge_puzzle, judge).value()) : "");
        CHECK((all == judge_all));
        CHECK((all != of(base.get(), measured)));
    }
}

TEST_CASE("border and ornament can be taken back", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto options = panel_options();
    const auto svg = [&] { return drawing_of(drawn_alone(puzzle.get(), options.get()).get(), "svg"); };
    const std::string plain = svg();
    REQUIRE(lode_artwork_options_set_border(options.get(), "dotted", nullptr) == LODE_OK);
    REQUIRE(lode_artwork_options_set_ornament(options.get(), "leaf", nullptr) == LODE_OK);
    CHECK((svg() != plain));
    REQUIRE(lode_artwork_options_set_border(options.get(), "none", nullptr) == LODE_OK);
    REQUIRE(lode_artwork_options_set_ornament(options.get(), "none", nullptr) == LODE_OK);
    CHECK((svg() == plain));
}

TEST_CASE("artwork tells its measures, layers and notes, and draws in every format", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto options = panel_options();
    REQUIRE(lode_artwork_options_set_heading(options.get(), "Herbs", nullptr) == LODE_OK);
    REQUIRE(lode_artwork_options_set_foot(options.get(), "Spring", nullptr) == LODE_OK);
    auto judge_options = panel_options_in_cpp();
    judge_options.heading = "Herbs";
    judge_options.foot = "Spring";
    const auto judge = lode::draw(herbs_in_cpp(), judge_options).value();
    const auto held = drawn_alone(puzzle.get(), options.get());
    const auto* const artwork = held.get();
    CHECK(lode_artwork_is_measured(artwork) == 0);
    CHECK(lode_artwork_width_mm(artwork) == 120);
    CHECK(lode_artwork_height_mm(artwork) == 100);
    CHECK(lode_artwork_cell_mm(artwork) == judge.cell_mm);
    CHECK(lode_artwork_cap_height_mm(artwork) == judge.cap_height_mm);
    CHECK(lode_artwork_heading_cap_mm(artwork) == judge.heading_cap_mm);
    CHECK(lode_artwork_text_cap_mm(artwork) == judge.text_cap_mm);
    CHECK(judge.text_cap_mm > 0);
    double x = 0, y = 0;
    REQUIRE(lode_artwork_grid_corner(&x, &y, artwork, nullptr) == LODE_OK);
    CHECK(lode::Point{x, y} == judge.grid_corner);
    CHECK(lode_artwork_font(artwork) == judge.font);
    CHECK(lode_artwork_heading_font(artwork) == judge.heading_font);
    REQUIRE(lode_artwork_layer_count(artwork) == judge.layers.size());
    for (std::size_t layer = 0; layer < judge.layers.size(); ++layer) {
        CHECK(lode_artwork_layer_name(artwork, layer) == judge.layers[layer].name);
        CHECK(lode_artwork_layer_colour(artwork, layer) == lode::to_text(judge.layers[layer].colour));
        CHECK(lode_artwork_layer_pieces(artwork, layer) == judge.layers[layer].pieces.size());
        const auto layer_in = [&](const char* format) {
            return bytes_from(
                [&](auto out, auto error) { return lode_artwork_layer(out, artwork, layer, format, error); });
        };
        const lode::Drawing drawing = lode::layer_drawing(judge, layer);
        CHECK((layer_in("svg") == lode::to_svg(drawing)));
        CHECK((layer_in("pdf") == lode::to_pdf(drawing)));
        CHECK((layer_in("dxf") == lode::to_dxf(drawing)));
    }
    CHECK((drawing_of(artwork, "pdf") == lode::to_pdf(lode::artwork_drawing(judge))));
    CHECK((drawing_of(artwork, "dxf") == lode::to_dxf(lode::artwork_drawing(judge))));
    CHECK((bytes_from([&](auto out, auto error) { return lode_artwork_preview(out, artwork, 300, error); }) ==
           lode::preview_png(judge, 300)));
    REQUIRE(lode_artwork_note_count(artwork) == judge.notes.size());
    for (std::size_t note = 0; note < judge.notes.size(); ++note)
        CHECK(lode_artwork_note(artwork, note) == judge.notes[note]);
}

TEST_CASE("what film does not hold is told place by place, and can be mended", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto options = panel_options();
    auto judge_options = panel_options_in_cpp();
    REQUIRE(lode_artwork_options_set_font(options.get(), "DejaVu Sans", nullptr) == LODE_OK);
    judge_options.font = "DejaVu Sans";
    REQUIRE(lode_artwork_options_set_least_stroke(options.get(), 2, nullptr) == LODE_OK);
    judge_options.least_stroke_mm = 2;
    const auto judge = lode::draw_and_measure(herbs_in_cpp(), judge_options).value();
    const auto held = drawn(puzzle.get(), options.get());
    const auto* const artwork = held.get();
    const auto& thin = judge.measures.thin;
    REQUIRE_FALSE(thin.empty());
    CHECK(lode_artwork_is_measured(artwork) == 1);
    REQUIRE(lode_artwork_finding_count(artwork) == thin.size());
    for (std::size_t at = 0; at < thin.size(); ++at) {
        CHECK(lode_artwork_finding(artwork, at) == lode::finding_text(thin[at]));
        CHECK(lode_artwork_finding_kind(artwork, at) == lode::name(thin[at].kind));
        CHECK(lode_artwork_finding_layer(artwork, at) == thin[at].layer);
        CHECK(lode_artwork_finding_piece(artwork, at) == thin[at].piece);
        CHECK(lode_artwork_finding_other(artwork, at) == thin[at].other);
        CHECK(lode_artwork_finding_width_mm(artwork, at) == thin[at].width_mm);
        CHECK(lode_artwork_finding_alike(artwork, at) == thin[at].alike);
        double x = 0, y = 0;
        REQUIRE(lode_artwork_finding_place(&x, &y, artwork, at, nullptr) == LODE_OK);
        CHECK(lode::Point{x, y} == thin[at].at);
    }
    const auto ways = lode::ways_out(judge);
    REQUIRE(lode_artwork_way_out_count(artwork) == ways.size());
    for (std::size_t at = 0; at < ways.size(); ++at) CHECK(lode_artwork_way_out(artwork, at) == ways[at]);
    CHECK(lode_artwork_change_count(artwork) == 0);

    const auto mended_judge = lode::draw_to_hold(herbs_in_cpp(), judge_options).value();
    ArtOut<lode_artwork> mended;
    Out<lode_refusal> refusal;
    REQUIRE(lode_draw_to_hold(mended, refusal, puzzle.get(), options.get(), nullptr, nullptr) == LODE_OK);
    CHECK(lode_artwork_finding_count(mended.get()) == 0);
    CHECK(lode_artwork_way_out_count(mended.get()) == 0);
    REQUIRE(lode_artwork_change_count(mended.get()) == mended_judge.changed.size());
    REQUIRE_FALSE(mended_judge.changed.empty());
    CHECK(lode_artwork_change(mended.get(), 0) == mended_judge.changed[0]);
    CHECK((cut_json_of(mended.get()) == lode::to_json(mended_judge)));
}

TEST_CASE("a recipe is fitted to its blank", "[c]") {
    const auto recipe = recipe_of(herbs, 5, 3);
    REQUIRE(lode_recipe_set_grid_auto(recipe.get(), 1, nullptr) == LODE_OK);
    const auto options = panel_options();
    REQUIRE(lode_artwork_options_set_blank(options.get(), "circle 150mm", nullptr) == LODE_OK);
    auto judge_options = panel_options_in_cpp();
    judge_options.blank = lode::read_blank("circle 150mm").value();
    lode::Recipe judge;
    judge.words = lode::read_word_lines(herbs, "garden.txt").value();
    Out<lode_recipe> on_blank;
    Out<lode_refusal> refusal;
    REQUIRE(lode_recipe_on_blank(on_blank, refusal, recipe.get(), options.get(), nullptr, nullptr) ==
            LODE_OK);
    CHECK(json_of(on_blank.get()) == lode::to_json(lode::recipe_on_blank(judge, judge_options).value()));
    CHECK(contains(json_of(on_blank.get()), "\"mask\""));
}

TEST_CASE("a puzzle is rated as it hangs on a wall", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto options = panel_options();
    auto judge_options = panel_options_in_cpp();
    const auto judge_puzzle = herbs_in_cpp();
    for (const std::string font : {"", "DejaVu Serif"})
        for (const double viewing : {0., 1'500.}) {
            REQUIRE(lode_artwork_options_set_font(options.get(), font.c_str(), nullptr) == LODE_OK);
            judge_options.font = font;
            const auto artwork = drawn_alone(puzzle.get(), options.get());
            lode::RatingRules rules;
            const auto judge_artwork = lode::draw(judge_puzzle, judge_options).value();
            rules.seen = lode::letters_seen(judge_puzzle, judge_artwork, judge_options, viewing).value();
            if (!font.empty()) rules.looks = lode::letter_looks(judge_puzzle.grid.alphabet, font).value();
            Out<lode_rating> rating;
            REQUIRE(lode_rate_artwork(rating, artwork.get(), viewing, nullptr) == LODE_OK);
            const char* json = nullptr;
            REQUIRE(lode_rating_json(&json, rating.get(), nullptr) == LODE_OK);
            CHECK(json == lode::to_json(lode::rate(judge_puzzle, rules).value()));
            CHECK(contains(json, "letter height as seen") == (viewing > 0));
        }
}

TEST_CASE("every setter of cutting does what the C++ option does, and something", "[c]") {
    using Setting = Setting<lode_cut_options, lode::CutOptions>;
    using C = lode_cut_options;
    using Cpp = lode::CutOptions;
    const std::vector<Setting> settings{
        {"bed", [](C* c) { return lode_cut_options_set_bed(c, 100, 0, nullptr); },
         [](Cpp& o) {
             o.plan.emplace();
             o.plan->bed.width_mm = 100;
         }},
        {"gap", [](C* c) { return lode_cut_options_set_gap(c, 20, nullptr); },
         [](Cpp& o) { o.plan->gap_mm = 20; }},
        {"longest-load", [](C* c) { return lode_cut_options_set_longest_load(c, 110, nullptr); },
         [](Cpp& o) { o.plan->bed.longest_mm = 110; }},
        {"bed", [](C* c) { return lode_cut_options_set_bed(c, 100, 125, nullptr); },
         [](Cpp& o) { o.plan->bed.width_mm = 100, o.plan->bed.height_mm = 125; }},
        {"bed-edge", [](C* c) { return lode_cut_options_set_bed_edge(c, 1, nullptr); },
         [](Cpp& o) { o.plan->bed.edge_mm = 1; }},
        {"film", [](C* c) { return lode_cut_options_add_film(c, "#f0bf72", 97, 200, 3, nullptr); },
         [](Cpp& o) {
             o.plan->films.push_back({{0xf0, 0xbf, 0x72}, 97, 200, 3});
         }},
        {"film-margin", [](C* c) { return lode_cut_options_set_film_margin(c, 2, nullptr); },
         [](Cpp& o) { o.plan->film_margin_mm = 2; }},
        {"may-turn", [](C* c) { return lode_cut_options_set_may_turn(c, 0, nullptr); },
         [](Cpp& o) { o.plan->may_turn = false; }},
        {"speed", [](C* c) { return lode_cut_options_set_speed(c, 30, nullptr); },
         [](Cpp& o) { o.speed_mm_s = 30; }},
        {"weeding-lines", [](C* c) { return lode_cut_options_set_weeding_lines(c, 1, nullptr); },
         [](Cpp& o) { o.weeding_lines = true; }},
    };
    const auto puzzle = herb_puzzle();
    const auto artwork = drawn(puzzle.get(), panel_options().get());
    const auto judge_puzzle = herbs_in_cpp();
    const auto held = lode::draw_and_measure(judge_puzzle, panel_options_in_cpp()).value();
    const auto options = new_cut_options();
    lode::CutOptions judge;
    std::string before;
    for (const Setting& setting : settings) {
        INFO(setting.name);
        REQUIRE(setting.in_c(options.get()) == LODE_OK);
        setting.in_cpp(judge);
        const auto plan = planned(artwork.get(), options.get());
        const auto judge_plan = lode::plan_loads(held.artwork, *judge.plan).value();
        judge.planned = &judge_plan;
        std::string all = cut_json_of(artwork.get(), plan.get(), options.get());
        std::string judge_all = lode::to_json(held, judge);
        for (std::size_t load = 0; load < judge_plan.plan.loads.size(); ++load) {
            all += bytes_from(
                [&](auto out, auto error) { return lode_plan_load(out, plan.get(), load, "svg", error); });
            judge_all += lode::to_svg(
                lode::load_drawing(held.artwork, judge_plan, *judge.plan, load, judge.weeding_lines));
        }
        judge.planned = nullptr;
        CHECK((all == judge_all));
        CHECK((all != before));
        before = all;
    }
    // What is written beside the loads; without these it is not.
    REQUIRE(lode_cut_options_set_preview(options.get(), 64, nullptr) == LODE_OK);
    REQUIRE(lode_cut_options_set_dxf(options.get(), 1, nullptr) == LODE_OK);
    REQUIRE(lode_cut_options_set_guide(options.get(), 1, nullptr) == LODE_OK);
    REQUIRE(lode_cut_options_set_paper(options.get(), "letter", nullptr) == LODE_OK);
    judge.preview_px = 64;
    judge.dxf = judge.guide = true;
    judge.paper = lode::Paper::letter;
    check_same(files_cut(artwork.get(), nullptr, options.get()).get(),
               lode::cut_files(judge_puzzle, held, judge).value());
}

TEST_CASE("a plan is told, drawn and written as the C++ API does", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto artwork = drawn(puzzle.get(), panel_options().get());
    const auto judge_puzzle = herbs_in_cpp();
    const auto held = lode::draw_and_measure(judge_puzzle, panel_options_in_cpp()).value();
    const auto options = new_cut_options();
    REQUIRE(lode_cut_options_set_bed(options.get(), 110, 0, nullptr) == LODE_OK);
    REQUIRE(lode_cut_options_set_preview(options.get(), 64, nullptr) == LODE_OK);
    lode::CutOptions judge;
    judge.preview_px = 64;
    judge.plan.emplace();
    judge.plan->bed.width_mm = 110;
    const auto judge_plan = lode::plan_loads(held.artwork, *judge.plan).value();
    const auto plan = planned(artwork.get(), options.get());
    REQUIRE(lode_plan_load_count(plan.get()) == judge_plan.plan.loads.size());
    CHECK(lode_plan_least_loads(plan.get()) == judge_plan.plan.least_loads);
    CHECK(lode_plan_is_proved(plan.get()) == (judge_plan.plan.proved ? 1 : 0));
    CHECK(lode_plan_bands_are_loose(plan.get()) == (judge_plan.bands_are_loose ? 1 : 0));
    CHECK(lode_plan_left_out_marks(plan.get()) == (judge_plan.left_out_marks ? 1 : 0));
    REQUIRE(lode_plan_note_count(plan.get()) == judge_plan.plan.notes.size());
    for (std::size_t note = 0; note < judge_plan.plan.notes.size(); ++note)
        CHECK(lode_plan_note(plan.get(), note) == judge_plan.plan.notes[note]);
    for (std::size_t load = 0; load < judge_plan.plan.loads.size(); ++load) {
        CHECK(lode_plan_load_length_mm(plan.get(), load) == judge_plan.plan.loads[load].length_mm);
        CHECK((bytes_from([&](auto out, auto error) {
                   return lode_plan_load(out, plan.get(), load, "svg", error);
               }) == lode::to_svg(lode::load_drawing(held.artwork, judge_plan, *judge.plan, load, false))));
    }
    judge.planned = &judge_plan;
    CHECK((cut_json_of(artwork.get(), plan.get()) == lode::to_json(held, judge)));
    // The plan's own bed counts, whatever the options say.
    REQUIRE(lode_cut_options_set_bed(options.get(), 5'000, 5'000, nullptr) == LODE_OK);
    const auto files = files_cut(artwork.get(), plan.get(), options.get());
    check_same(files.get(), lode::cut_files(judge_puzzle, held, judge).value());
}

TEST_CASE("results outlive what they were made from", "[c]") {
    auto puzzle = herb_puzzle();
    auto options = panel_options();
    auto artwork = drawn(puzzle.get(), options.get());
    const auto cutting = new_cut_options();
    REQUIRE(lode_cut_options_set_bed(cutting.get(), 300, 300, nullptr) == LODE_OK);
    const auto plan = planned(artwork.get(), cutting.get());
    const auto worksheets = worksheets_of(puzzle.get());
    const std::string json = cut_json_of(artwork.get(), plan.get());
    puzzle.reset();
    options.reset();
    CHECK((cut_json_of(artwork.get(), plan.get()) == json));
    ArtOut<lode_pages> pages;
    CHECK(lode_print(pages, worksheets.get(), nullptr, nullptr) == LODE_OK);
    artwork.reset();
    CHECK_FALSE(bytes_from([&](auto out, auto error) {
                    return lode_plan_load(out, plan.get(), 0, "dxf", error);
                }).empty());
}

TEST_CASE("every setter of print does what the C++ option does, and something", "[c]") {
    using Setting = Setting<lode_print_options, lode::PrintOptions>;
    using C = lode_print_options;
    using Cpp = lode::PrintOptions;
    const std::vector<Setting> settings{
        {"page", [](C* c) { return lode_print_options_set_page(c, "letter", nullptr); },
         [](Cpp& o) { o.page = lode::Paper::letter; }},
        {"landscape", [](C* c) { return lode_print_options_set_landscape(c, 1, nullptr); },
         [](Cpp& o) { o.landscape = true; }},
        {"margin", [](C* c) { return lode_print_options_set_margin(c, 20, nullptr); },
         [](Cpp& o) { o.margin_mm = 20; }},
        {"font", [](C* c) { return lode_print_options_set_font(c, "DejaVu Serif", nullptr); },
         [](Cpp& o) { o.font = "DejaVu Serif"; }},
        {"list", [](C* c) { return lode_print_options_set_list(c, "given", nullptr); },
         [](Cpp& o) { o.order = lode::ListOrder::given; }},
        {"grid-lines", [](C* c) { return lode_print_options_set_grid_lines(c, "full", nullptr); },
         [](Cpp& o) { o.grid_lines = lode::GridLines::full; }},
        {"name-line", [](C* c) { return lode_print_options_set_name_line(c, "Name", nullptr); },
         [](Cpp& o) { o.name_line = "Name"; }},
        {"date-line", [](C* c) { return lode_print_options_set_date_line(c, "Date", nullptr); },
         [](Cpp& o) { o.date_line = "Date"; }},
        {"large-print", [](C* c) { return lode_print_options_set_large_print(c, 1, nullptr); },
         [](Cpp& o) { o.large_print = true; }},
        {"colours", [](C* c) { return lode_print_options_set_colours(c, "gold,#1f5fbf", nullptr); },
         [](Cpp& o) {
             o.colours = {{0xff, 0xd7, 0x00}, {0x1f, 0x5f, 0xbf}};
         }},
        {"colours", [](C* c) { return lode_print_options_set_colours(c, "own", nullptr); },
         [](Cpp& o) { o.colours.assign(lode::key_colours.begin(), lode::key_colours.end()); }},
        {"colours", [](C* c) { return lode_print_options_set_colours(c, "", nullptr); },
         [](Cpp& o) { o.colours.clear(); }},
        {"key", [](C* c) { return lode_print_options_set_key(c, "lines", nullptr); },
         [](Cpp& o) { o.key_marks = lode::KeyMarks::lines; }},
        {"key", [](C* c) { return lode_print_options_set_key(c, "none", nullptr); },
         [](Cpp& o) { o.key = false; }},
        {"booklet", [](C* c) { return lode_print_options_set_booklet(c, "Our garden", nullptr); },
         [](Cpp& o) { o.contents = "Our garden"; }},
        {"date", [](C* c) { return lode_print_options_set_date(c, 86'400, nullptr); },
         [](Cpp& o) { o.date = 86'400; }},
    };
    const auto puzzle = herb_puzzle();
    const auto worksheets = worksheets_of(puzzle.get());
    CHECK(lode_worksheets_count(worksheets.get()) == 2);
    const auto judge_worksheets = worksheets_in_cpp();
    lode_print_options* created = nullptr;
    REQUIRE(lode_print_options_create(&created, nullptr) == LODE_OK);
    const ArtHeld<lode_print_options> options(created);
    lode::PrintOptions judge;
    std::string before;
    for (const Setting& setting : settings) {
        INFO(setting.name);
        REQUIRE(setting.in_c(options.get()) == LODE_OK);
        setting.in_cpp(judge);
        ArtOut<lode_pages> pages;
        REQUIRE(lode_print(pages, worksheets.get(), options.get(), nullptr) == LODE_OK);
        const auto printed = lode::print_worksheets(judge_worksheets, judge).value();
        const std::string pdf = bytes_of(lode_pages_pdf(pages.get()));
        CHECK((pdf == printed.pdf));
        CHECK((pdf != before));
        before = pdf;
        CHECK(lode_pages_count(pages.get()) == printed.pages);
        CHECK(lode_pages_letter_pt(pages.get()) == printed.letter_pt);
        CHECK(lode_pages_list_pt(pages.get()) == printed.list_pt);
        CHECK(lode_pages_is_large_enough(pages.get()) == (printed.is_large_enough ? 1 : 0));
        REQUIRE(lode_pages_note_count(pages.get()) == printed.notes.size());
        for (std::size_t note = 0; note < printed.notes.size(); ++note)
            CHECK(lode_pages_note(pages.get(), note) == printed.notes[note]);
        const char* json = nullptr;
        REQUIRE(lode_pages_json(&json, pages.get(), nullptr) == LODE_OK);
        CHECK(json == lode::to_json(printed, judge_worksheets));
    }
    const auto text = bytes_from([&](auto out, auto error) {
        return lode_worksheets_text(out, worksheets.get(), options.get(), error);
    });
    CHECK(text == lode::worksheet_text(judge_worksheets[0], judge) + "\f" +
                      lode::worksheet_text(judge_worksheets[1], judge));
    const auto page = bytes_from([&](auto out, auto error) {
        return lode_worksheets_solve_page(out, worksheets.get(), 1, options.get(), error);
    });
    CHECK((page == lode::solve_page(judge_worksheets[1], judge)));
}

TEST_CASE("an option's names are those that its setter takes", "[c]") {
    const auto names = [](const char* option) {
        std::vector<std::string> all;
        for (std::size_t at = 0; at < lode_choice_count(option); ++at)
            all.emplace_back(lode_choice(option, at));
        return all;
    };
    CHECK(names("surface") == std::vector<std::string>{"first", "second"});
    CHECK(names("key") == std::vector<std::string>{"rings", "lines", "greyed", "none"});
    const auto options = panel_options();
    const auto cutting = new_cut_options();
    lode_print_options* created = nullptr;
    REQUIRE(lode_print_options_create(&created, nullptr) == LODE_OK);
    const ArtHeld<lode_print_options> printing(created);
    const auto artwork = drawn(herb_puzzle().get(), options.get());
    const std::vector<std::pair<const char*, std::function<std::int32_t(const char*)>>> setters{
        {"surface", [&](auto n) { return lode_artwork_options_set_surface(options.get(), n, nullptr); }},
        {"band", [&](auto n) { return lode_artwork_options_set_band(options.get(), n, nullptr); }},
        {"inlay", [&](auto n) { return lode_artwork_options_set_inlay(options.get(), n, nullptr); }},
        {"border", [&](auto n) { return lode_artwork_options_set_border(options.get(), n, nullptr); }},
        {"ornament", [&](auto n) { return lode_artwork_options_set_ornament(options.get(), n, nullptr); }},
        {"colour",
         [&](auto n) { return lode_artwork_options_set_colour(options.get(), n, "gold", nullptr); }},
        {"format",
         [&](auto n) {
             ArtOut<lode_bytes> bytes;
             return lode_artwork_layer(bytes, artwork.get(), 0, n, nullptr);
         }},
        {"paper", [&](auto n) { return lode_cut_options_set_paper(cutting.get(), n, nullptr); }},
        {"page", [&](auto n) { return lode_print_options_set_page(printing.get(), n, nullptr); }},
        {"list", [&](auto n) { return lode_print_options_set_list(printing.get(), n, nullptr); }},
        {"grid-lines", [&](auto n) { return lode_print_options_set_grid_lines(printing.get(), n, nullptr); }},
        {"key", [&](auto n) { return lode_print_options_set_key(printing.get(), n, nullptr); }},
    };
    for (const auto& [option, set] : setters) {
        INFO(option);
        const auto all = names(option);
        CHECK(all.size() >= 2);
        for (const auto& name : all) {
            CHECK(set(name.c_str()) == LODE_OK);
            CHECK(std::count(all.begin(), all.end(), name) == 1);
        }
        CHECK(set("no such name") == LODE_UNUSABLE);
        CHECK(lode_choice(option, all.size()) == nullptr);
    }
    CHECK(lode_choice_count("no such option") == 0);
    CHECK(lode_choice("no such option", 0) == nullptr);
}

TEST_CASE("lengths are read as a person writes them", "[c]") {
    double mm = -1, width = -1, height = -1;
    REQUIRE(lode_read_length(&mm, "0.5in", nullptr) == LODE_OK);
    CHECK(mm == 12.7);
    REQUIRE(lode_read_distance(&mm, "1.5m", nullptr) == LODE_OK);
    CHECK(mm == 1'500);
    REQUIRE(lode_read_area(&width, &height, "12x10in", nullptr) == LODE_OK);
    CHECK(width == Approx(304.8));
    CHECK(height == Approx(254));
    REQUIRE(lode_read_area(&width, &height, "305mm", nullptr) == LODE_OK);
    CHECK(width == 305);
    CHECK(height == 0);
    for (const char* none : {"", "12", "nanmm", "infin", "-3mm", "1e9999mm", "12 inches", "\xff"}) {
        INFO(none);
        CHECK(lode_read_length(&mm, none, nullptr) == LODE_UNUSABLE);
        CHECK(mm == 0);
        CHECK(lode_read_distance(&mm, none, nullptr) == LODE_UNUSABLE);
        CHECK(lode_read_area(&width, &height, none, nullptr) == LODE_UNUSABLE);
        CHECK(width == 0);
        CHECK(height == 0);
        mm = width = height = 9;
    }
}

TEST_CASE("files are written whole, and nothing is replaced unasked", "[c]") {
    const lode::test::ScratchFolder scratch;
    const auto puzzle = herb_puzzle();
    const auto worksheets = worksheets_of(puzzle.get());
    ArtOut<lode_pages> pages;
    REQUIRE(lode_print(pages, worksheets.get(), nullptr, nullptr) == LODE_OK);
    const lode_bytes* pdf = lode_pages_pdf(pages.get());
    const std::string file = scratch / "herbs.pdf";
    REQUIRE(lode_bytes_write(pdf, file.c_str(), 0, nullptr) == LODE_OK);
    CHECK((scratch.all().at("herbs.pdf") == bytes_of(pdf)));
    const auto again = failure_of([&](Error error) { return lode_bytes_write(pdf, file.c_str(), 0, error); });
    CHECK(again.status == LODE_UNUSABLE);
    CHECK(again.source == file);
    CHECK(contains(again.message, "exists already"));
    CHECK_FALSE(again.advice.empty());
    CHECK(lode_bytes_write(pdf, file.c_str(), 1, nullptr) == LODE_OK);

    ArtOut<lode_files> created;
    REQUIRE(lode_files_create(created, nullptr) == LODE_OK);
    lode_files* const files = created.get();
    REQUIRE(lode_files_add(files, "pages/herbs.pdf", lode_bytes_data(pdf), lode_bytes_size(pdf), nullptr) ==
            LODE_OK);
    REQUIRE(lode_files_add(files, "empty.txt", nullptr, 0, nullptr) == LODE_OK);
    const std::string folder = scratch / "panel";
    REQUIRE(lode_files_write(files, folder.c_str(), 0, nullptr) == LODE_OK);
    auto all = scratch.all();
    CHECK((all.at("panel/pages/herbs.pdf") == bytes_of(pdf)));
    CHECK(all.at("panel/empty.txt").empty());
    const auto there =
        failure_of([&](Error error) { return lode_files_write(files, folder.c_str(), 0, error); });
    CHECK(there.status == LODE_UNUSABLE);
    CHECK(there.source == folder);
    REQUIRE(lode_files_add(files, "puzzle.json", "{}", 2, nullptr) == LODE_OK);
    REQUIRE(lode_files_write(files, folder.c_str(), 1, nullptr) == LODE_OK);
    all = scratch.all();
    CHECK(all.at("panel/puzzle.json") == "{}");
    CHECK(all.size() == 6);  // nothing is left beside them

    // A folder that is none.
    const auto disk = failure_of(
        [&](Error error) { return lode_bytes_write(pdf, (file + "/below.pdf").c_str(), 0, error); });
    CHECK(disk.status == LODE_DISK_FAULT);
    CHECK(contains(disk.message, "herbs.pdf"));
    CHECK(lode_files_write(files, (file + "/below").c_str(), 0, nullptr) == LODE_DISK_FAULT);
    CHECK(scratch.all().size() == 6);
}
