// Values of artwork, cutting and print as a person writes them: names that are chosen among, and lengths.

#include <algorithm>
#include <functional>

#include "support/c_art_handles.hpp"

using namespace lode::test::c_api;

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
