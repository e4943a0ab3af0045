// Artwork as C callers meet it; the C++ API is the judge of what they are handed.

#include "support/c_art_handles.hpp"

using namespace lode::test::c_api;

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
