// Artwork, cutting and print for C in wrong hands: values that are none, what cannot be, cancelled work, many
// threads.

#include <algorithm>
#include <functional>
#include <limits>
#include <thread>

#include "support/c_art_handles.hpp"

using namespace lode::test::c_api;

namespace {

// The value cannot be used; the message names the option, and a way out stands there too.
template <class Call>
void unusable(const char* named, const Call& call) {
    const auto failure = failure_of(call);
    INFO(named << ": " << failure.message);
    CHECK(failure.status == LODE_UNUSABLE);
    CHECK(contains(failure.message, named));
    CHECK((!failure.advice.empty() || contains(failure.message, " must ")));
}

constexpr double no_number = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

std::string shown(const lode_artwork_options* options) {
    const auto artwork = drawn(herb_puzzle().get(), options);
    return bytes_from(
               [&](auto out, auto error) { return lode_artwork_drawing(out, artwork.get(), "svg", error); }) +
           bytes_from([&](auto out, auto error) {
               return lode_cut_json(out, artwork.get(), nullptr, nullptr, error);
           });
}

Held<lode_control> cancelled_control() {
    lode_control* control = nullptr;
    REQUIRE(lode_control_create(&control, nullptr) == LODE_OK);
    lode_control_cancel(control);
    return Held<lode_control>(control);
}

}  // namespace

TEST_CASE("what an option cannot be is refused, and the options stay as they were", "[c]") {
    const auto options = panel_options();
    auto* const o = options.get();
    const std::string before = shown(o);
    struct Length {
        const char* name;
        std::int32_t (*set)(lode_artwork_options*, double, lode_error**);
    };
    for (const auto& [name, set] : {Length{"--margin", lode_artwork_options_set_margin},
                                    Length{"--rebate", lode_artwork_options_set_rebate},
                                    Length{"--heading-area", lode_artwork_options_set_heading_area},
                                    Length{"--border-line", lode_artwork_options_set_border_line},
                                    Length{"--least-stroke", lode_artwork_options_set_least_stroke},
                                    Length{"--least-gap", lode_artwork_options_set_least_gap},
                                    Length{"--embolden", lode_artwork_options_set_embolden}})
        for (const double none : {no_number, infinity, -infinity, -1., 1e300})
            unusable(name, [&, set = set](Error e) { return set(o, none, e); });
    for (const double none : {no_number, infinity, -infinity, -1., 1e300}) {
        unusable("--hole", [&](Error e) { return lode_artwork_options_add_hole(o, none, 10, 5, e); });
        unusable("--hole", [&](Error e) { return lode_artwork_options_add_hole(o, 10, none, 5, e); });
        unusable("--hole", [&](Error e) { return lode_artwork_options_add_hole(o, 10, 10, none, e); });
    }
    for (const char* none : {"", "purple", "CAPSULE", "capsule ", "\xff\xfe", "\xc0\x80"}) {
        const bool is_text = none[0] >= 0;
        const auto named = [&](const char* option) { return is_text ? option : "UTF-8"; };
        unusable(named("--surface"), [&](Error e) { return lode_artwork_options_set_surface(o, none, e); });
        unusable(named("--band"), [&](Error e) { return lode_artwork_options_set_band(o, none, e); });
        unusable(named("--inlay"), [&](Error e) { return lode_artwork_options_set_inlay(o, none, e); });
        unusable(named("--border"), [&](Error e) { return lode_artwork_options_set_border(o, none, e); });
        unusable(named("--ornament"), [&](Error e) { return lode_artwork_options_set_ornament(o, none, e); });
        unusable(named("--colour"),
                 [&](Error e) { return lode_artwork_options_set_colour(o, none, "gold", e); });
        CHECK(lode_artwork_options_set_blank(o, none, nullptr) == LODE_UNUSABLE);
        CHECK(lode_artwork_options_set_blank_svg(o, none, none, nullptr) == LODE_UNUSABLE);
    }
    CHECK(lode_artwork_options_set_colour(o, "bands", "gold,,red", nullptr) == LODE_UNUSABLE);
    CHECK(lode_artwork_options_set_colour(o, "bands", "", nullptr) == LODE_UNUSABLE);
    unusable("several",
             [&](Error e) { return lode_artwork_options_set_colour(o, "letters", "gold,red", e); });
    std::string many = "red";
    for (std::size_t at = 0; at < lode::max_band_colours; ++at) many += ",red";
    CHECK(lode_artwork_options_set_colour(o, "bands", many.c_str(), nullptr) == LODE_UNUSABLE);
    for (const char* none : {"\xff", "Gar\xc3", "\xed\xa0\x80"}) {
        unusable("UTF-8", [&](Error e) { return lode_artwork_options_set_font(o, none, e); });
        unusable("UTF-8", [&](Error e) { return lode_artwork_options_set_heading(o, none, e); });
        unusable("UTF-8", [&](Error e) { return lode_artwork_options_set_heading_font(o, none, e); });
        unusable("UTF-8", [&](Error e) { return lode_artwork_options_set_foot(o, none, e); });
    }
    CHECK((shown(o) == before));
    // More holes than a blank has.
    for (std::size_t at = 0; at < lode::max_holes; ++at)
        REQUIRE(lode_artwork_options_add_hole(o, 1, 1, 1, nullptr) == LODE_OK);
    CHECK(lode_artwork_options_add_hole(o, 1, 1, 1, nullptr) == LODE_UNUSABLE);
}

TEST_CASE("what an option of cutting or print cannot be is refused", "[c]") {
    const auto cutting = new_cut_options();
    auto* const c = cutting.get();
    for (const double none : {no_number, infinity, -infinity, -1., 1e300}) {
        unusable("bed's width", [&](Error e) { return lode_cut_options_set_bed(c, none, 300, e); });
        unusable("bed's height", [&](Error e) { return lode_cut_options_set_bed(c, 300, none, e); });
        unusable("edge", [&](Error e) { return lode_cut_options_set_bed_edge(c, none, e); });
        unusable("--longest-load", [&](Error e) { return lode_cut_options_set_longest_load(c, none, e); });
        unusable("--speed", [&](Error e) { return lode_cut_options_set_speed(c, none, e); });
        unusable("film", [&](Error e) { return lode_cut_options_add_film(c, "red", none, 300, 1, e); });
        unusable("film", [&](Error e) { return lode_cut_options_add_film(c, "red", 300, none, 1, e); });
        CHECK(lode_cut_options_set_gap(c, none, nullptr) == LODE_UNUSABLE);
        CHECK(lode_cut_options_set_film_margin(c, none, nullptr) == LODE_UNUSABLE);
    }
    CHECK(lode_cut_options_add_film(c, "red", 300, 300, -1, nullptr) == LODE_UNUSABLE);
    CHECK(lode_cut_options_add_film(c, "no colour", 300, 300, 1, nullptr) == LODE_UNUSABLE);
    for (const std::int32_t none : {INT32_MIN, -1, 0, 63, 8'001, INT32_MAX})
        unusable("--preview", [&](Error e) { return lode_cut_options_set_preview(c, none, e); });
    unusable("--order",
             [&](Error e) { return lode_cut_options_set_order(c, std::string(2'001, 'W').c_str(), e); });
    unusable("--paper", [&](Error e) { return lode_cut_options_set_paper(c, "papyrus", e); });

    const auto printing = new_print_options();
    auto* const p = printing.get();
    for (const double none : {no_number, infinity, -infinity, -1., 0., 50.1, 1e300})
        unusable("--margin", [&](Error e) { return lode_print_options_set_margin(p, none, e); });
    for (const std::int64_t none : {INT64_MIN, std::int64_t{-1}, INT64_MAX})
        unusable("date", [&](Error e) { return lode_print_options_set_date(p, none, e); });
    unusable("--page", [&](Error e) { return lode_print_options_set_page(p, "papyrus", e); });
    unusable("--list", [&](Error e) { return lode_print_options_set_list(p, "none", e); });
    unusable("--grid-lines", [&](Error e) { return lode_print_options_set_grid_lines(p, "bold", e); });
    unusable("--key", [&](Error e) { return lode_print_options_set_key(p, "arrows", e); });
    CHECK(lode_print_options_set_colours(p, "own,gold", nullptr) == LODE_UNUSABLE);
    const std::string endless(3'000, 'a');
    unusable("--name-line", [&](Error e) { return lode_print_options_set_name_line(p, endless.c_str(), e); });
    unusable("--booklet", [&](Error e) { return lode_print_options_set_booklet(p, endless.c_str(), e); });
    unusable("UTF-8", [&](Error e) { return lode_print_options_set_font(p, "\xff", e); });
    unusable("UTF-8", [&](Error e) { return lode_print_options_set_date_line(p, "\xff", e); });

    // Nothing of that was taken: pages are those of the defaults.
    const auto puzzle = herb_puzzle();
    ArtOut<lode_worksheets> worksheets;
    REQUIRE(lode_worksheets_create(worksheets, nullptr) == LODE_OK);
    REQUIRE(lode_worksheets_add(worksheets.get(), puzzle.get(), nullptr, nullptr, nullptr) == LODE_OK);
    CHECK(lode_worksheets_add(worksheets.get(), puzzle.get(), "\xff", nullptr, nullptr) == LODE_UNUSABLE);
    CHECK(lode_worksheets_add(worksheets.get(), puzzle.get(), "", "\xff", nullptr) == LODE_UNUSABLE);
    CHECK(lode_worksheets_count(worksheets.get()) == 1);
    ArtOut<lode_pages> pages, plain;
    REQUIRE(lode_print(pages, worksheets.get(), p, nullptr) == LODE_OK);
    REQUIRE(lode_print(plain, worksheets.get(), nullptr, nullptr) == LODE_OK);
    CHECK((bytes_of(lode_pages_pdf(pages.get())) == bytes_of(lode_pages_pdf(plain.get()))));
}

TEST_CASE("artwork that cannot be drawn is refused, and says what would help", "[c]") {
    const auto puzzle = herb_puzzle();
    lode_artwork_options* created = nullptr;
    REQUIRE(lode_artwork_options_create(&created, nullptr) == LODE_OK);
    const ArtHeld<lode_artwork_options> options(created);
    const auto draw = [&] {
        return refused_by([&](auto refusal, auto error) {
            ArtOut<lode_artwork> artwork;
            const auto status =
                lode_draw_and_measure(artwork, refusal, puzzle.get(), created, nullptr, error);
            CHECK((artwork.get() != nullptr) == (status == LODE_OK));
            return status;
        });
    };
    const auto says = [&](const char* part) {
        const auto failure = failure_of([&](Error error) {
            ArtOut<lode_artwork> artwork;
            return lode_draw(artwork, puzzle.get(), created, error);
        });
        CHECK(failure.status == LODE_UNUSABLE);
        CHECK(contains(failure.message, part));
        CHECK_FALSE(failure.advice.empty());
        const auto refused = draw();
        INFO(refused.message);
        CHECK(refused.status == LODE_REFUSED);
        CHECK(refused.reason == LODE_REASON_UNUSABLE);
        CHECK(contains(refused.message, part));
        CHECK(refused.advice > 0);
    };
    says("blank");
    REQUIRE(lode_artwork_options_set_blank(created, "120x100mm", nullptr) == LODE_OK);
    says("surface");
    REQUIRE(lode_artwork_options_set_surface(created, "first", nullptr) == LODE_OK);
    REQUIRE(draw().status == LODE_OK);
    REQUIRE(lode_artwork_options_set_font(created, "No Such Family", nullptr) == LODE_OK);
    says("No Such Family");
    REQUIRE(lode_artwork_options_set_font(created, "", nullptr) == LODE_OK);
    REQUIRE(lode_artwork_options_set_margin(created, 49, nullptr) == LODE_OK);
    CHECK(draw().status == LODE_REFUSED);
    REQUIRE(lode_artwork_options_set_blank(created, "heart 20x20mm", nullptr) == LODE_OK);
    REQUIRE(lode_artwork_options_set_margin(created, 2, nullptr) == LODE_OK);
    const auto no_room = refused_by([&](auto refusal, auto error) {
        const auto recipe = recipe_of(garden, 5, 5);
        REQUIRE(lode_recipe_set_grid_auto(recipe.get(), 1, nullptr) == LODE_OK);
        Out<lode_recipe> none;
        return lode_recipe_on_blank(none, refusal, recipe.get(), created, nullptr, error);
    });
    CHECK(no_room.status == LODE_REFUSED);
    CHECK(no_room.reason == LODE_REASON_UNUSABLE);
}

TEST_CASE("a plan that cannot be is refused, and one of another artwork is a broken call", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto artwork = drawn(puzzle.get(), panel_options().get());
    const auto other = drawn(puzzle.get(), panel_options().get());
    const auto plan_on = [&](const lode_cut_options* options) {
        return refused_by([&](auto refusal, auto error) {
            ArtOut<lode_plan> plan;
            return lode_plan_loads(plan, refusal, artwork.get(), options, nullptr, error);
        });
    };
    const auto none = new_cut_options();
    const auto no_bed = plan_on(none.get());
    CHECK(no_bed.status == LODE_REFUSED);
    CHECK(no_bed.reason == LODE_REASON_UNUSABLE);
    CHECK(contains(no_bed.message, "bed"));
    CHECK(no_bed.advice == 1);
    const auto small = new_cut_options();
    REQUIRE(lode_cut_options_set_bed(small.get(), 200, 200, nullptr) == LODE_OK);
    for (const char* colour : {"#f0bf72", "#243f3a"})
        REQUIRE(lode_cut_options_add_film(small.get(), colour, 12, 12, INT32_MAX, nullptr) == LODE_OK);
    const auto impossible = plan_on(small.get());
    CHECK(impossible.status == LODE_REFUSED);
    CHECK(impossible.reason == LODE_REASON_IMPOSSIBLE);
    REQUIRE(lode_cut_options_set_bed_edge(small.get(), 150, nullptr) == LODE_OK);
    CHECK(plan_on(small.get()).reason == LODE_REASON_UNUSABLE);

    // Of no use without a bed.
    const auto waiting = new_cut_options();
    REQUIRE(lode_cut_options_set_bed_edge(waiting.get(), 3, nullptr) == LODE_OK);
    const auto no_use = refused_by([&](auto refusal, auto error) {
        ArtOut<lode_files> files;
        return lode_cut_files(files, refusal, artwork.get(), nullptr, waiting.get(), nullptr, error);
    });
    CHECK(no_use.status == LODE_REFUSED);
    CHECK(contains(no_use.message, "--bed-edge"));
    ArtOut<lode_bytes> json;
    CHECK(lode_cut_json(json, artwork.get(), nullptr, waiting.get(), nullptr) == LODE_UNUSABLE);

    const auto right = new_cut_options();
    REQUIRE(lode_cut_options_set_bed(right.get(), 200, 200, nullptr) == LODE_OK);
    ArtOut<lode_plan> plan;
    Out<lode_refusal> refusal;
    REQUIRE(lode_plan_loads(plan, refusal, artwork.get(), right.get(), nullptr, nullptr) == LODE_OK);
    const auto mistaken = refused_by([&](auto refused, auto error) {
        ArtOut<lode_files> files;
        return lode_cut_files(files, refused, other.get(), plan.get(), nullptr, nullptr, error);
    });
    CHECK(mistaken.status == LODE_BROKEN_CALL);
    CHECK(lode_cut_json(json, other.get(), plan.get(), nullptr, nullptr) == LODE_BROKEN_CALL);
    CHECK(lode_plan_load(json, plan.get(), 0, "png", nullptr) == LODE_UNUSABLE);

    const auto not_measured = drawn_alone(puzzle.get(), panel_options().get());
    const auto unmeasured = failure_of(
        [&](Error error) { return lode_cut_json(json, not_measured.get(), nullptr, nullptr, error); });
    CHECK(unmeasured.status == LODE_BROKEN_CALL);
    CHECK(contains(unmeasured.message, "lode_draw_and_measure"));
}

TEST_CASE("cancelled drawing, planning and writing is refused as unfinished", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto options = panel_options();
    const auto artwork = drawn(puzzle.get(), options.get());
    const auto cutting = new_cut_options();
    REQUIRE(lode_cut_options_set_bed(cutting.get(), 200, 200, nullptr) == LODE_OK);
    const auto control = cancelled_control();
    const auto auto_recipe = recipe_of(garden, 5, 5);
    REQUIRE(lode_recipe_set_grid_auto(auto_recipe.get(), 1, nullptr) == LODE_OK);
    const auto star = panel_options();
    REQUIRE(lode_artwork_options_set_blank(star.get(), "star 300mm", nullptr) == LODE_OK);
    ArtOut<lode_artwork> new_artwork;
    ArtOut<lode_plan> new_plan;
    ArtOut<lode_files> new_files;
    Out<lode_recipe> new_recipe;
    using Call = std::function<std::int32_t(lode_refusal**, lode_error**)>;
    for (const Call& call :
         std::vector<Call>{[&](auto refusal, auto error) {
                               return lode_draw_and_measure(new_artwork, refusal, puzzle.get(), options.get(),
                                                            control.get(), error);
                           },
                           [&](auto refusal, auto error) {
                               return lode_draw_to_hold(new_artwork, refusal, puzzle.get(), options.get(),
                                                        control.get(), error);
                           },
                           [&](auto refusal, auto error) {
                               return lode_plan_loads(new_plan, refusal, artwork.get(), cutting.get(),
                                                      control.get(), error);
                           },
                           [&](auto refusal, auto error) {
                               return lode_cut_files(new_files, refusal, artwork.get(), nullptr, nullptr,
                                                     control.get(), error);
                           },
                           [&](auto refusal, auto error) {
                               return lode_recipe_on_blank(new_recipe, refusal, auto_recipe.get(), star.get(),
                                                           control.get(), error);
                           }}) {
        const auto refused = refused_by(call);
        INFO(refused.message);
        CHECK(refused.status == LODE_REFUSED);
        CHECK(refused.reason == LODE_REASON_UNFINISHED);
    }
    CHECK(new_artwork.get() == nullptr);
    CHECK(new_plan.get() == nullptr);
    CHECK(new_files.get() == nullptr);
}

TEST_CASE("progress is told while artwork is drawn, and may cancel it", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto options = panel_options();
    lode_control* created = nullptr;
    REQUIRE(lode_control_create(&created, nullptr) == LODE_OK);
    const Held<lode_control> control(created);
    struct Told {
        lode_control* control;
        std::uint64_t calls = 0;
        bool in_bounds = true;
    } told{created};
    const auto tell = [](void* user, std::uint64_t done, std::uint64_t all) {
        auto& its = *static_cast<Told*>(user);
        ++its.calls;
        its.in_bounds = its.in_bounds && done <= all;
        lode_control_cancel(its.control);
    };
    REQUIRE(lode_control_set_progress(created, tell, &told, nullptr) == LODE_OK);
    const auto refused = refused_by([&](auto refusal, auto error) {
        ArtOut<lode_artwork> artwork;
        return lode_draw_and_measure(artwork, refusal, puzzle.get(), options.get(), created, error);
    });
    CHECK(refused.reason == LODE_REASON_UNFINISHED);
    CHECK(told.calls > 0);
    CHECK(told.in_bounds);
}

TEST_CASE("files are added under paths inside their folder only, each once", "[c]") {
    ArtOut<lode_files> files;
    REQUIRE(lode_files_create(files, nullptr) == LODE_OK);
    REQUIRE(lode_files_add(files.get(), "pages/herbs.pdf", "a", 1, nullptr) == LODE_OK);
    for (const char* path :
         {"", "/", "/etc/herbs", "..", "../herbs", "pages/../../herbs", "pages//herbs", ".", "pages/",
          "./herbs", "pages/herbs.pdf", "pages", "pages/herbs.pdf/below", "\xff"}) {
        INFO(path);
        const auto failure =
            failure_of([&](Error error) { return lode_files_add(files.get(), path, "b", 1, error); });
        CHECK(failure.status == LODE_UNUSABLE);
        CHECK_FALSE(failure.advice.empty());
    }
    CHECK(lode_files_count(files.get()) == 1);
    CHECK(lode_files_add(files.get(), "pages.txt", "b", 1, nullptr) == LODE_OK);
    for (const char* place : {"", "\xff", "/", ".."})
        CHECK(lode_files_write(files.get(), place, 1, nullptr) == LODE_UNUSABLE);
}

TEST_CASE("no worksheet, too many, and a title that is too long cannot be printed", "[c]") {
    ArtOut<lode_worksheets> worksheets;
    REQUIRE(lode_worksheets_create(worksheets, nullptr) == LODE_OK);
    ArtOut<lode_pages> pages;
    const auto none =
        failure_of([&](Error error) { return lode_print(pages, worksheets.get(), nullptr, error); });
    CHECK(none.status == LODE_UNUSABLE);
    CHECK(contains(none.message, "no worksheet"));
    CHECK(bytes_from([&](auto out, auto error) {
              return lode_worksheets_text(out, worksheets.get(), nullptr, error);
          }).empty());
    const auto puzzle = herb_puzzle();
    REQUIRE(lode_worksheets_add(worksheets.get(), puzzle.get(), std::string(5'000, 'a').c_str(), nullptr,
                                nullptr) == LODE_OK);
    CHECK(lode_print(pages, worksheets.get(), nullptr, nullptr) == LODE_UNUSABLE);
    for (std::size_t at = 1; at < lode::most_worksheets; ++at)
        REQUIRE(lode_worksheets_add(worksheets.get(), puzzle.get(), nullptr, nullptr, nullptr) == LODE_OK);
    CHECK(lode_worksheets_add(worksheets.get(), puzzle.get(), nullptr, nullptr, nullptr) == LODE_UNUSABLE);
    CHECK(lode_worksheets_count(worksheets.get()) == lode::most_worksheets);
}

TEST_CASE("many threads draw one puzzle by one set of options", "[c]") {
    const auto puzzle = herb_puzzle();
    const auto options = panel_options();
    REQUIRE(lode_artwork_options_set_font(options.get(), "DejaVu Sans:bold", nullptr) == LODE_OK);
    const std::string judge = shown(options.get());
    std::vector<std::string> drawings(16);
    std::vector<std::thread> threads;
    for (std::string& drawing : drawings)
        threads.emplace_back([&] {
            lode_artwork* artwork = nullptr;
            lode_refusal* refusal = nullptr;
            lode_bytes *svg = nullptr, *json = nullptr;
            lode_draw_and_measure(&artwork, &refusal, puzzle.get(), options.get(), nullptr, nullptr);
            lode_artwork_drawing(&svg, artwork, "svg", nullptr);
            lode_cut_json(&json, artwork, nullptr, nullptr, nullptr);
            for (lode_bytes* bytes : {svg, json})
                drawing.append(static_cast<const char*>(lode_bytes_data(bytes)), lode_bytes_size(bytes));
            lode_bytes_free(svg);
            lode_bytes_free(json);
            lode_refusal_free(refusal);
            lode_artwork_free(artwork);
        });
    for (std::thread& thread : threads) thread.join();
    CHECK(std::count(drawings.begin(), drawings.end(), judge) == 16);
}
