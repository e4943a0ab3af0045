// NULL in every place of the calls for artwork, cutting and print, and places where there is nothing.

#include "support/c_art_handles.hpp"

using namespace lode::test::c_api;

TEST_CASE("NULL for any setter of artwork, cutting or print is a broken call", "[c]") {
    const auto options = panel_options();
    auto* const o = options.get();
    ArtOut<lode_artwork_options> copy;
    broken("options", [&](Error e) { return lode_artwork_options_create(nullptr, e); });
    broken("copy", [&](Error e) { return lode_artwork_options_copy(nullptr, o, e); });
    broken("options", [&](Error e) { return lode_artwork_options_copy(copy, nullptr, e); });
    broken("blank", [&](Error e) { return lode_artwork_options_set_blank(o, nullptr, e); });
    broken("svg", [&](Error e) { return lode_artwork_options_set_blank_svg(o, nullptr, "a", e); });
    broken("surface", [&](Error e) { return lode_artwork_options_set_surface(o, nullptr, e); });
    broken("font", [&](Error e) { return lode_artwork_options_set_font(o, nullptr, e); });
    broken("text", [&](Error e) { return lode_artwork_options_set_heading(o, nullptr, e); });
    broken("font", [&](Error e) { return lode_artwork_options_set_heading_font(o, nullptr, e); });
    broken("text", [&](Error e) { return lode_artwork_options_set_foot(o, nullptr, e); });
    broken("band", [&](Error e) { return lode_artwork_options_set_band(o, nullptr, e); });
    broken("inlay", [&](Error e) { return lode_artwork_options_set_inlay(o, nullptr, e); });
    broken("colour", [&](Error e) { return lode_artwork_options_set_colour(o, nullptr, "gold", e); });
    broken("colours", [&](Error e) { return lode_artwork_options_set_colour(o, "bands", nullptr, e); });
    broken("border", [&](Error e) { return lode_artwork_options_set_border(o, nullptr, e); });
    broken("ornament", [&](Error e) { return lode_artwork_options_set_ornament(o, nullptr, e); });
    for (const auto call : {lode_artwork_options_set_margin, lode_artwork_options_set_rebate,
                            lode_artwork_options_set_heading_area, lode_artwork_options_set_border_line,
                            lode_artwork_options_set_least_stroke, lode_artwork_options_set_least_gap,
                            lode_artwork_options_set_embolden})
        broken("options", [&](Error e) { return call(nullptr, 5, e); });
    for (const auto call :
         {lode_artwork_options_set_blank, lode_artwork_options_set_surface, lode_artwork_options_set_font,
          lode_artwork_options_set_heading, lode_artwork_options_set_heading_font,
          lode_artwork_options_set_foot, lode_artwork_options_set_band, lode_artwork_options_set_inlay,
          lode_artwork_options_set_border, lode_artwork_options_set_ornament})
        broken("options", [&](Error e) { return call(nullptr, "none", e); });
    for (const auto call : {lode_artwork_options_set_word_list, lode_artwork_options_set_registration})
        broken("options", [&](Error e) { return call(nullptr, 1, e); });
    broken("options", [&](Error e) { return lode_artwork_options_set_blank_svg(nullptr, "<svg/>", "", e); });
    broken("options", [&](Error e) { return lode_artwork_options_add_hole(nullptr, 1, 1, 1, e); });
    broken("options", [&](Error e) { return lode_artwork_options_set_colour(nullptr, "bands", "red", e); });

    const auto cutting = new_cut_options();
    auto* const c = cutting.get();
    ArtOut<lode_cut_options> cut_copy;
    broken("options", [&](Error e) { return lode_cut_options_create(nullptr, e); });
    broken("copy", [&](Error e) { return lode_cut_options_copy(nullptr, c, e); });
    broken("options", [&](Error e) { return lode_cut_options_copy(cut_copy, nullptr, e); });
    broken("options", [&](Error e) { return lode_cut_options_set_bed(nullptr, 300, 300, e); });
    broken("options", [&](Error e) { return lode_cut_options_add_film(nullptr, "red", 300, 300, 1, e); });
    broken("colour", [&](Error e) { return lode_cut_options_add_film(c, nullptr, 300, 300, 1, e); });
    broken("options", [&](Error e) { return lode_cut_options_set_effort(nullptr, 3, e); });
    broken("options", [&](Error e) { return lode_cut_options_set_order(nullptr, "W-101", e); });
    broken("order", [&](Error e) { return lode_cut_options_set_order(c, nullptr, e); });
    broken("options", [&](Error e) { return lode_cut_options_set_paper(nullptr, "a4", e); });
    broken("paper", [&](Error e) { return lode_cut_options_set_paper(c, nullptr, e); });
    for (const auto call :
         {lode_cut_options_set_bed_edge, lode_cut_options_set_longest_load, lode_cut_options_set_gap,
          lode_cut_options_set_film_margin, lode_cut_options_set_speed})
        broken("options", [&](Error e) { return call(nullptr, 20, e); });
    for (const auto call :
         {lode_cut_options_set_may_turn, lode_cut_options_set_weeding_lines, lode_cut_options_set_dxf,
          lode_cut_options_set_guide, lode_cut_options_set_preview})
        broken("options", [&](Error e) { return call(nullptr, 100, e); });

    const auto printing = new_print_options();
    auto* const p = printing.get();
    ArtOut<lode_print_options> print_copy;
    broken("options", [&](Error e) { return lode_print_options_create(nullptr, e); });
    broken("copy", [&](Error e) { return lode_print_options_copy(nullptr, p, e); });
    broken("options", [&](Error e) { return lode_print_options_copy(print_copy, nullptr, e); });
    broken("options", [&](Error e) { return lode_print_options_set_margin(nullptr, 10, e); });
    broken("options", [&](Error e) { return lode_print_options_set_date(nullptr, 10, e); });
    for (const auto call : {lode_print_options_set_landscape, lode_print_options_set_large_print})
        broken("options", [&](Error e) { return call(nullptr, 1, e); });
    const std::vector<
        std::pair<const char*, std::int32_t (*)(lode_print_options*, const char*, lode_error**)>>
        texts{{"page", lode_print_options_set_page},
              {"family", lode_print_options_set_font},
              {"list", lode_print_options_set_list},
              {"grid-lines", lode_print_options_set_grid_lines},
              {"name-line", lode_print_options_set_name_line},
              {"date-line", lode_print_options_set_date_line},
              {"key", lode_print_options_set_key},
              {"colours", lode_print_options_set_colours},
              {"booklet", lode_print_options_set_booklet}};
    for (const auto& [name, call] : texts) {
        broken(name, [&, call = call](Error e) { return call(p, nullptr, e); });
        broken("options", [&, call = call](Error e) { return call(nullptr, "none", e); });
    }
}

TEST_CASE("NULL for any other call of artwork, cutting or print is a broken call", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto recipe = garden_recipe();
    const auto options = panel_options();
    const auto held = drawn(puzzle.get(), options.get());
    const auto* const a = held.get();
    const auto* const o = options.get();
    const auto cutting = new_cut_options();
    REQUIRE(lode_cut_options_set_bed(cutting.get(), 200, 200, nullptr) == LODE_OK);
    const auto* const c = cutting.get();
    double n = 0;
    ArtOut<lode_bytes> bytes;
    Out<lode_refusal> refusal;

    broken("mm", [&](Error e) { return lode_read_length(nullptr, "1mm", e); });
    broken("text", [&](Error e) { return lode_read_length(&n, nullptr, e); });
    broken("mm", [&](Error e) { return lode_read_distance(nullptr, "1m", e); });
    broken("text", [&](Error e) { return lode_read_distance(&n, nullptr, e); });
    broken("width_mm", [&](Error e) { return lode_read_area(nullptr, &n, "12in", e); });
    broken("height_mm", [&](Error e) { return lode_read_area(&n, nullptr, "12in", e); });
    broken("text", [&](Error e) { return lode_read_area(&n, &n, nullptr, e); });

    ArtOut<lode_files> files;
    broken("bytes", [&](Error e) { return lode_bytes_write(nullptr, "a.pdf", 0, e); });
    broken("files", [&](Error e) { return lode_files_create(nullptr, e); });
    REQUIRE(lode_files_create(files, nullptr) == LODE_OK);
    broken("files", [&](Error e) { return lode_files_add(nullptr, "a.txt", "a", 1, e); });
    broken("path", [&](Error e) { return lode_files_add(files.get(), nullptr, "a", 1, e); });
    broken("data", [&](Error e) { return lode_files_add(files.get(), "a.txt", nullptr, 1, e); });
    broken("files", [&](Error e) { return lode_files_write(nullptr, "a", 0, e); });
    broken("folder", [&](Error e) { return lode_files_write(files.get(), nullptr, 0, e); });

    Out<lode_recipe> on_blank;
    broken("result",
           [&](Error e) { return lode_recipe_on_blank(nullptr, refusal, recipe.get(), o, nullptr, e); });
    broken("refusal",
           [&](Error e) { return lode_recipe_on_blank(on_blank, nullptr, recipe.get(), o, nullptr, e); });
    broken("recipe",
           [&](Error e) { return lode_recipe_on_blank(on_blank, refusal, nullptr, o, nullptr, e); });
    broken("options", [&](Error e) {
        return lode_recipe_on_blank(on_blank, refusal, recipe.get(), nullptr, nullptr, e);
    });
    ArtOut<lode_artwork> other;
    broken("artwork", [&](Error e) { return lode_draw(nullptr, puzzle.get(), o, e); });
    broken("puzzle", [&](Error e) { return lode_draw(other, nullptr, o, e); });
    broken("options", [&](Error e) { return lode_draw(other, puzzle.get(), nullptr, e); });
    for (const auto call : {lode_draw_and_measure, lode_draw_to_hold}) {
        broken("artwork", [&](Error e) { return call(nullptr, refusal, puzzle.get(), o, nullptr, e); });
        broken("refusal", [&](Error e) { return call(other, nullptr, puzzle.get(), o, nullptr, e); });
        broken("puzzle", [&](Error e) { return call(other, refusal, nullptr, o, nullptr, e); });
        broken("options", [&](Error e) { return call(other, refusal, puzzle.get(), nullptr, nullptr, e); });
    }
    broken("x_mm", [&](Error e) { return lode_artwork_grid_corner(nullptr, &n, a, e); });
    broken("y_mm", [&](Error e) { return lode_artwork_grid_corner(&n, nullptr, a, e); });
    broken("artwork", [&](Error e) { return lode_artwork_grid_corner(&n, &n, nullptr, e); });
    broken("x_mm", [&](Error e) { return lode_artwork_finding_place(nullptr, &n, a, 0, e); });
    broken("y_mm", [&](Error e) { return lode_artwork_finding_place(&n, nullptr, a, 0, e); });
    broken("artwork", [&](Error e) { return lode_artwork_finding_place(&n, &n, nullptr, 0, e); });
    broken("bytes", [&](Error e) { return lode_artwork_drawing(nullptr, a, "svg", e); });
    broken("artwork", [&](Error e) { return lode_artwork_drawing(bytes, nullptr, "svg", e); });
    broken("format", [&](Error e) { return lode_artwork_drawing(bytes, a, nullptr, e); });
    broken("bytes", [&](Error e) { return lode_artwork_layer(nullptr, a, 0, "svg", e); });
    broken("artwork", [&](Error e) { return lode_artwork_layer(bytes, nullptr, 0, "svg", e); });
    broken("format", [&](Error e) { return lode_artwork_layer(bytes, a, 0, nullptr, e); });
    broken("png", [&](Error e) { return lode_artwork_preview(nullptr, a, 100, e); });
    broken("artwork", [&](Error e) { return lode_artwork_preview(bytes, nullptr, 100, e); });
    Out<lode_rating> rating;
    broken("rating", [&](Error e) { return lode_rate_artwork(nullptr, a, 0, e); });
    broken("artwork", [&](Error e) { return lode_rate_artwork(rating, nullptr, 0, e); });

    ArtOut<lode_plan> plan;
    broken("plan", [&](Error e) { return lode_plan_loads(nullptr, refusal, a, c, nullptr, e); });
    broken("refusal", [&](Error e) { return lode_plan_loads(plan, nullptr, a, c, nullptr, e); });
    broken("artwork", [&](Error e) { return lode_plan_loads(plan, refusal, nullptr, c, nullptr, e); });
    broken("options", [&](Error e) { return lode_plan_loads(plan, refusal, a, nullptr, nullptr, e); });
    broken("bytes", [&](Error e) { return lode_plan_load(nullptr, plan.get(), 0, "svg", e); });
    broken("plan", [&](Error e) { return lode_plan_load(bytes, nullptr, 0, "svg", e); });
    ArtOut<lode_files> cut;
    broken("files", [&](Error e) { return lode_cut_files(nullptr, refusal, a, nullptr, c, nullptr, e); });
    broken("refusal", [&](Error e) { return lode_cut_files(cut, nullptr, a, nullptr, c, nullptr, e); });
    broken("artwork", [&](Error e) { return lode_cut_files(cut, refusal, nullptr, nullptr, c, nullptr, e); });
    broken("json", [&](Error e) { return lode_cut_json(nullptr, a, nullptr, c, e); });
    broken("artwork", [&](Error e) { return lode_cut_json(bytes, nullptr, nullptr, c, e); });

    ArtOut<lode_worksheets> worksheets;
    broken("worksheets", [&](Error e) { return lode_worksheets_create(nullptr, e); });
    REQUIRE(lode_worksheets_create(worksheets, nullptr) == LODE_OK);
    broken("worksheets", [&](Error e) { return lode_worksheets_add(nullptr, puzzle.get(), "", "", e); });
    broken("puzzle", [&](Error e) { return lode_worksheets_add(worksheets.get(), nullptr, "", "", e); });
    broken("text", [&](Error e) { return lode_worksheets_text(nullptr, worksheets.get(), nullptr, e); });
    broken("worksheets", [&](Error e) { return lode_worksheets_text(bytes, nullptr, nullptr, e); });
    broken("html",
           [&](Error e) { return lode_worksheets_solve_page(nullptr, worksheets.get(), 0, nullptr, e); });
    broken("worksheets", [&](Error e) { return lode_worksheets_solve_page(bytes, nullptr, 0, nullptr, e); });
    ArtOut<lode_pages> pages;
    broken("pages", [&](Error e) { return lode_print(nullptr, worksheets.get(), nullptr, e); });
    broken("worksheets", [&](Error e) { return lode_print(pages, nullptr, nullptr, e); });
    const char* json = nullptr;
    broken("pages", [&](Error e) { return lode_pages_json(&json, nullptr, e); });
    REQUIRE(lode_worksheets_add(worksheets.get(), puzzle.get(), nullptr, nullptr, nullptr) == LODE_OK);
    REQUIRE(lode_print(pages, worksheets.get(), nullptr, nullptr) == LODE_OK);
    broken("json", [&](Error e) { return lode_pages_json(nullptr, pages.get(), e); });
}

TEST_CASE("a place beyond a list's end of artwork is a broken call, or nothing", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto artwork = drawn(puzzle.get(), panel_options().get());
    const auto cutting = new_cut_options();
    REQUIRE(lode_cut_options_set_bed(cutting.get(), 200, 200, nullptr) == LODE_OK);
    ArtOut<lode_plan> plan;
    Out<lode_refusal> refusal;
    REQUIRE(lode_plan_loads(plan, refusal, artwork.get(), cutting.get(), nullptr, nullptr) == LODE_OK);
    ArtOut<lode_worksheets> worksheets;
    REQUIRE(lode_worksheets_create(worksheets, nullptr) == LODE_OK);
    ArtOut<lode_files> files;
    REQUIRE(lode_files_create(files, nullptr) == LODE_OK);
    for (const std::size_t far : {std::size_t{50}, SIZE_MAX}) {
        ArtOut<lode_bytes> bytes;
        CHECK(lode_artwork_layer(bytes, artwork.get(), far, "svg", nullptr) == LODE_BROKEN_CALL);
        CHECK(lode_plan_load(bytes, plan.get(), far, "svg", nullptr) == LODE_BROKEN_CALL);
        CHECK(lode_worksheets_solve_page(bytes, worksheets.get(), far, nullptr, nullptr) == LODE_BROKEN_CALL);
        double x = 7, y = 7;
        CHECK(lode_artwork_finding_place(&x, &y, artwork.get(), far, nullptr) == LODE_BROKEN_CALL);
        CHECK(x == 0);
        CHECK(lode_artwork_layer_name(artwork.get(), far) == nullptr);
        CHECK(lode_artwork_layer_colour(artwork.get(), far) == nullptr);
        CHECK(lode_artwork_layer_pieces(artwork.get(), far) == 0);
        CHECK(lode_artwork_note(artwork.get(), far) == nullptr);
        CHECK(lode_artwork_change(artwork.get(), far) == nullptr);
        CHECK(lode_artwork_finding(artwork.get(), far) == nullptr);
        CHECK(lode_artwork_finding_kind(artwork.get(), far) == nullptr);
        CHECK(lode_artwork_finding_piece(artwork.get(), far) == nullptr);
        CHECK(lode_artwork_finding_width_mm(artwork.get(), far) == 0);
        CHECK(lode_artwork_finding_alike(artwork.get(), far) == 0);
        CHECK(lode_artwork_way_out(artwork.get(), far) == nullptr);
        CHECK(lode_plan_note(plan.get(), far) == nullptr);
        CHECK(lode_plan_load_length_mm(plan.get(), far) == 0);
        CHECK(lode_files_path(files.get(), far) == nullptr);
        CHECK(lode_files_data(files.get(), far) == nullptr);
        CHECK(lode_files_size(files.get(), far) == 0);
    }
}
