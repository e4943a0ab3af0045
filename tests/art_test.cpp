// Artwork as a whole: what is refused, and where things stand.

#include <letterlode/art.hpp>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "art/number.hpp"
#include "panels.hpp"

using namespace lode;
using namespace panels;

namespace {

Box box_of(const Layer& one) {
    Path all;
    for (const Piece& p : one.pieces)
        all.contours.insert(all.contours.end(), p.path.contours.begin(), p.path.contours.end());
    return bounds(all);
}

}  // namespace

TEST_CASE("a blank is read in inches, millimetres, centimetres and points") {
    const auto read = [](const char* text) { return read_blank(text).value(); };
    CHECK(read("8x10in").width_mm == Approx(203.2));
    CHECK(read("8x10in").height_mm == Approx(254.0));
    CHECK(read("203x254mm") == BlankSize{203, 254});
    CHECK(read("20.3x25.4cm").width_mm == Approx(203));
    CHECK(read("8.5X11in").width_mm == Approx(215.9));
    CHECK(read(" 8 × 10 in ").height_mm == Approx(254));
    // 72 points are an inch; A4 measures 595.2756 x 841.8898 of them (ISO 216: 210 x 297 mm).
    CHECK(read("595.2756x841.8898pt").width_mm == Approx(210).epsilon(1e-6));
    CHECK(read("595.2756x841.8898pt").height_mm == Approx(297).epsilon(1e-6));
}

TEST_CASE("nonsense is no blank, and the message says what one looks like") {
    for (const char* const text : {"",          "8x10",
                                   "8in",       "x10in",
                                   "8xin",      "-8x10in",
                                   "8x-10in",   "nanx10in",
                                   "infx10in",  "1e3x10in",
                                   "0x10in",    "8x10inch",
                                   "8x10 mm x", "8,5x11in",
                                   "0.1x10in",  "99999999x10in",
                                   "8x10in8",   "8..5x11in",
                                   "+8x10in",   "0x8x10in",
                                   ".x.in",     "111111111111111111111111111111111111111111111111111x1in",
                                   "8x10\n"}) {
        CAPTURE(text);
        const auto blank = read_blank(text);
        REQUIRE(!blank);
        REQUIRE(blank.refusal().advice.size() == 1);
        CHECK(has(blank.refusal().advice[0], "8x10in"));
        CHECK(has(blank.refusal().advice[0], "203x254mm"));
    }
}

TEST_CASE("colours and surfaces are read and written") {
    CHECK(read_colour("#243f3a").value() == Colour{0x24, 0x3f, 0x3a});
    CHECK(read_colour("#FFFFFF").value() == Colour{255, 255, 255});
    CHECK(to_text(Colour{0, 10, 255}) == "#000aff");
    for (const char* const text :
         {"", "#", "#fff", "rouge", "243f3a", "#243f3", "#243f3aa", "#24 f3a", "#-1f3aa", "#gg0000"})
        CHECK(!read_colour(text));
    CHECK(surface_named("first") == Surface::first);
    CHECK(surface_named(name(Surface::second)) == Surface::second);
    CHECK(!surface_named("back"));
}

TEST_CASE("numbers are rounded, without zeros at their ends and without a negative nought") {
    CHECK(decimal(203.2, 4) == "203.2");
    CHECK(decimal(254, 4) == "254");
    CHECK(decimal(100, 0) == "100");
    CHECK(decimal(0.00004, 4) == "0");
    CHECK(decimal(-0.00004, 4) == "0");
    CHECK(decimal(-0.0, 2) == "0");
    CHECK(decimal(-0.5, 4) == "-0.5");
    CHECK(decimal(1.23456, 4) == "1.2346");
    CHECK(decimal(1e300, 1).size() == 301);
}

TEST_CASE("default letters stand out from their bands") {
    // WCAG 2.x contrast, from relative luminance of linear sRGB; 4.5 is its threshold for text.
    const auto luminance = [](Colour c) {
        const auto linear = [](unsigned part) {
            const double s = part / 255.0;
            return s <= 0.04045 ? s / 12.92 : std::pow((s + 0.055) / 1.055, 2.4);
        };
        return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue);
    };
    const auto contrast = [&](Colour a, Colour b) {
        const double x = luminance(a) + 0.05;
        const double y = luminance(b) + 0.05;
        return std::max(x, y) / std::min(x, y);
    };
    REQUIRE(contrast({0x76, 0x76, 0x76}, {255, 255, 255}) ==
            Approx(4.542225).epsilon(1e-6));  // a known value
    const ArtworkOptions defaults;
    CHECK(contrast(defaults.letters, defaults.band_colours.front()) > 4.5);
    CHECK(contrast(defaults.letters, {255, 255, 255}) > 7);
    CHECK(contrast(defaults.heading_colour, {255, 255, 255}) > 4.5);
}

TEST_CASE("surface and blank must be said") {
    ArtworkOptions wanted = options();
    wanted.surface.reset();
    CHECK(has(refusal(garden(), wanted), "--surface has no default"));
    wanted = options();
    for (const double side : {0.0, -8.0, 9.9, 5001.0, std::numeric_limits<double>::quiet_NaN(),
                              std::numeric_limits<double>::infinity()}) {
        wanted.blank.width_mm = side;
        CHECK(has(refusal(garden(), wanted), "blank"));
    }
}

TEST_CASE("a puzzle that cannot be drawn is refused with the reason") {
    CHECK(has(refusal(of_rows({"...", "..."}), options()), "no letters"));
    Puzzle unfinished = of_rows({"AB", "CD"});
    unfinished.grid.grid[{1, 0}] = empty_cell;
    CHECK(has(refusal(unfinished, options()), "row 2, column 1"));
    const Puzzle outside = of_rows({"AB", "CD"}, {{"BEET", 0, 1, Direction::right}});
    CHECK(has(refusal(outside, options()), "BEET"));
    ArtworkOptions large = options();
    large.blank = rectangle(5000, 5000);
    CHECK(has(refusal(of_rows(rows_of(201, 201, 'A')), large), "40000"));
    CHECK(has(refusal(Puzzle{}, options()), "no letters"));
}

TEST_CASE("a missing letter is named with its place and the font") {
    const std::string message = refusal(of_cells({{"A", "\u0905"}, {"B", "C"}}), options());
    CHECK(has(message, "\u0905"));
    CHECK(has(message, "row 1, column 2"));
    CHECK(has(message, "DejaVu Sans Bold"));
    CHECK(has(refusal(garden(), options(Surface::first, "Shed \u0905")), "heading, line 1"));
}

TEST_CASE("a heading is tidied, and one that cannot be set is refused") {
    CHECK(drawn(garden(), options(Surface::first, "  One\t\r\n\n Two  \n")).heading == "One\nTwo");
    CHECK(drawn(garden(), options(Surface::first, " \n ")).layers.size() == 2);
    CHECK(has(refusal(garden(), options(Surface::first, "a\x01")), "control"));
    CHECK(has(refusal(garden(), options(Surface::first, "a\xFF")), "UTF-8"));
    CHECK(has(refusal(garden(), options(Surface::first, std::string(1001, 'a'))), "1000"));
    CHECK(has(refusal(garden(), options(Surface::first, "1\n2\n3\n4\n5\n6\n7\n8\n9")), "8 lines"));
}

TEST_CASE("a long heading is set in two lines where that makes its letters larger") {
    const std::string no_break = "\u00A0";
    const std::vector<std::string> words{"The",        "Allotment", "Holders", "of",
                                         "Wrenbarrow", "Lower",     "Garden"};
    const auto with = [&](const std::string& blank) {
        std::string text;
        for (const std::string& word : words) text += (text.empty() ? "" : blank) + word;
        return text;
    };
    const Artwork two = drawn(garden(), options(Surface::first, with(" ")));
    const Artwork one = drawn(garden(), options(Surface::first, with(no_break)));
    CHECK(two.heading == "The Allotment Holders of\nWrenbarrow Lower Garden");
    CHECK(!has(one.heading, "\n"));
    CHECK(two.heading_cap_mm > 1.3 * one.heading_cap_mm);
    CHECK(box_of(layer(two, "heading")).bottom < box_of(layer(two, "letters")).top);

    // In an area that is wide and low, one line is larger; in a high one, two.
    for (const double area : {8.0, 60.0}) {
        ArtworkOptions wanted = options(Surface::first, "The Tool Shed Society");
        wanted.heading_area_mm = area;
        const Artwork artwork = drawn(garden(), wanted);
        CAPTURE(area, artwork.heading_cap_mm, artwork.cap_height_mm);
        CHECK(has(artwork.heading, "\n") == (area > 10));
    }
    // One that has room stays, and so do lines that the maker broke.
    CHECK(drawn(garden(), options(Surface::first, "Tool Shed")).heading == "Tool Shed");
    const std::string own = "The Allotment\nHolders of Wrenbarrow Lower Garden";
    CHECK(drawn(garden(), options(Surface::first, own)).heading == own);
}

TEST_CASE("cells are as large as the blank allows, and all stays on it") {
    for (const auto& [rows, columns] :
         {std::pair(15, 15), std::pair(5, 20), std::pair(20, 5), std::pair(1, 1)})
        for (const std::string heading :
             {"", "Shed", "A heading that is far longer than the grid is wide", "Two\nLines"})
            for (const BlankSize blank : {BlankSize{203.2, 254}, BlankSize{304.8, 304.8},
                                          BlankSize{101.6, 508}, BlankSize{508, 101.6}}) {
                ArtworkOptions wanted = options(Surface::first, heading);
                wanted.blank = rectangle(blank.width_mm, blank.height_mm);
                const Artwork artwork = drawn(of_rows(rows_of(rows, columns, 'H')), wanted);
                CAPTURE(rows, columns, heading, blank.width_mm);
                const double margin = 0.055 * std::min(blank.width_mm, blank.height_mm);
                const Point corner = artwork.grid_corner;
                const double right = corner.x + columns * artwork.cell_mm;
                const double bottom = corner.y + rows * artwork.cell_mm;
                CHECK(corner.x > margin - 1e-6);
                CHECK(right < blank.width_mm - margin + 1e-6);
                CHECK(bottom < blank.height_mm - margin + 1e-6);
                CHECK(corner.x == Approx(blank.width_mm - right));
                const bool fills_width = right > blank.width_mm - margin - 1e-6;
                const double top = heading.empty() ? corner.y : box_of(layer(artwork, "heading")).top;
                const double air = heading.empty() ? 0 : (artwork.cell_mm - artwork.cap_height_mm) / 2;
                const bool fills_height = bottom - (top - air) > blank.height_mm - 2 * margin - 1e-6;
                CHECK((fills_width || fills_height));
                CHECK(top - air == Approx(blank.height_mm - bottom));
                if (heading.empty()) continue;
                const Box box = box_of(layer(artwork, "heading"));
                CHECK(box.left > margin - 1e-6);
                CHECK(box.right < blank.width_mm - margin + 1e-6);
                CHECK(box.centre().x == Approx(blank.width_mm / 2));
                CHECK(box.top > margin - 1e-6);
                CHECK(box.bottom < corner.y);
            }
}

TEST_CASE("a grid of the aspect that a blank asks for fills it both ways") {
    for (const BlankSize blank :
         {BlankSize{203.2, 254}, BlankSize{304.8, 304.8}, BlankSize{254, 203.2}, BlankSize{210, 297}})
        for (const std::string heading : {"", "Beds", "Two\nlines"}) {
            ArtworkOptions wanted = options(Surface::first, heading);
            wanted.blank = rectangle(blank.width_mm, blank.height_mm);
            const double aspect = recipe_on_blank({}, wanted).value().aspect;
            const int rows = aspect > 1 ? 15 : static_cast<int>(std::lround(15 / aspect));
            const int columns = static_cast<int>(std::lround(aspect * rows));
            const Artwork artwork = drawn(of_rows(rows_of(rows, columns, 'H')), wanted);
            CAPTURE(blank.width_mm, heading, rows, columns);
            const double margin = 0.055 * std::min(blank.width_mm, blank.height_mm);
            const double top =
                heading.empty() ? artwork.grid_corner.y : box_of(layer(artwork, "heading")).top;
            CHECK(artwork.grid_corner.x - margin < 0.5 * artwork.cell_mm);
            CHECK(top - margin < 0.75 * artwork.cell_mm);
        }
    // Too small a blank for a heading still gives a grid.
    ArtworkOptions low = options(Surface::first, "1\n2\n3\n4\n5\n6\n7\n8");
    low.blank = rectangle(200, 10);
    CHECK(checked_aspect(recipe_on_blank({}, low).value().aspect));
}

TEST_CASE("closed rows and columns about a shape take no room") {
    const Artwork bare = drawn(of_rows({"AB", "CD"}), options());
    const Artwork framed = drawn(of_rows({"....", ".AB.", ".CD.", "...."}), options());
    CHECK(framed.cell_mm == Approx(bare.cell_mm));
    CHECK(bounds(piece_named(framed, "A at row 2, column 2").path).left ==
          Approx(bounds(piece_named(bare, "A at row 1, column 1").path).left));
}
