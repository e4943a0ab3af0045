// Cutting as C callers meet it: options, plans, and the files of a folder; the C++ API is the judge.

#include "support/c_art_handles.hpp"

using namespace lode::test::c_api;

namespace {

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

}  // namespace

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
    REQUIRE(lode_cut_options_set_order(options.get(), "W-101", nullptr) == LODE_OK);
    judge.preview_px = 64;
    judge.order = "W-101";
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
