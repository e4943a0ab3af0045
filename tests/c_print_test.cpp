// Print as C callers meet it, and what is written of anything; the C++ API is the judge.

#include "support/c_art_handles.hpp"
#include "support/scratch_folder.hpp"

using namespace lode::test::c_api;

namespace {

std::vector<lode::Worksheet> worksheets_in_cpp() {
    return {{herbs_in_cpp(), "Herb bed", ""}, {herbs_in_cpp(), "Herb bed", "B"}};
}

}  // namespace

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
