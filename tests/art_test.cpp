// Artwork as a whole: what is refused, and where things stand.

#include <letterlode/art.hpp>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "art/clearance.hpp"
#include "art/number.hpp"
#include "panels.hpp"
#include "support/path_measures.hpp"

using namespace lode;
using namespace panels;

namespace {

std::string refusal(const Puzzle& puzzle, const ArtworkOptions& wanted) {
    const auto artwork = draw(puzzle, wanted);
    REQUIRE(!artwork);
    CHECK(artwork.refusal().reason == Refusal::Reason::unusable);
    return artwork.refusal().message;
}

const Piece& piece(const Artwork& artwork, const std::string& name) {
    for (const Layer& one : artwork.layers)
        for (const Piece& p : one.pieces)
            if (p.name == name) return p;
    throw std::runtime_error("no piece " + name);
}

Box box_of(const Layer& one) {
    Path all;
    for (const Piece& p : one.pieces)
        all.contours.insert(all.contours.end(), p.path.contours.begin(), p.path.contours.end());
    return bounds(all);
}

// The centre of what a path fills, from side to side: of a polygon of very many corners, by triangles about
// the origin.
double centre_of_area(const Path& path) {
    double area = 0, moment = 0;
    for (const Contour& contour : path.contours) {
        Point from = contour.start;
        Point last = from;
        for (const Segment& s : contour.segments) {
            const int steps = s.curved ? 400 : 1;
            for (int i = 1; i <= steps; ++i) {
                const double t = static_cast<double>(i) / steps, u = 1 - t;
                const auto at = [&](double a, double b, double c, double d) {
                    return u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * c + t * t * t * d;
                };
                const Point p = s.curved ? Point{at(from.x, s.control1.x, s.control2.x, s.to.x),
                                                 at(from.y, s.control1.y, s.control2.y, s.to.y)}
                                         : s.to;
                const double twice = last.x * p.y - last.y * p.x;
                area += twice / 2;
                moment += twice / 2 * (last.x + p.x) / 3;
                last = p;
            }
            from = s.to;
        }
    }
    return moment / area;
}

std::vector<std::string> rows_of(int rows, int columns, char letter) {
    return std::vector<std::string>(static_cast<std::size_t>(rows),
                                    std::string(static_cast<std::size_t>(columns), letter));
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

TEST_CASE("letters stand to the eye in the middle of their cells, on one baseline, at one cap height") {
    // Letters with straight feet and tops: A E F H I K L M N T X Z.
    const Artwork artwork = drawn(of_rows({"EFHIK", "LMNTX", "ZAPNT"}), options());
    CHECK(artwork.cap_height_mm > 0.4 * artwork.cell_mm);
    std::size_t at = 0;
    for (int row = 0; row < 3; ++row)
        for (int column = 0; column < 5; ++column) {
            const Piece& one = layer(artwork, "letters").pieces[at++];
            CAPTURE(one.name);
            const Box box = bounds(one.path);
            const Point centre = artwork.centre({row, column});
            // Half way between the middle of the box and the centre of the ink: common practice.
            CHECK((box.centre().x + centre_of_area(one.path)) / 2 == Approx(centre.x).margin(1e-5));
            CHECK(box.bottom - centre.y == Approx(artwork.cap_height_mm / 2).margin(1e-6));
            CHECK(centre.y - box.top == Approx(artwork.cap_height_mm / 2).margin(1e-6));
            CHECK(signed_area(one.path) > 0);
        }
    CHECK(piece(artwork, "T at row 2, column 4").path == layer(artwork, "letters").pieces[8].path);
}

TEST_CASE("letters with their ink on one side lean to the other, and never out of their cells") {
    const double cell = 12;
    const auto off = [&](const std::string& text) {
        const Artwork artwork = drawn(of_rows(rows_of(15, 15, text[0])), options());
        const Box box = bounds(layer(artwork, "letters").pieces.front().path);
        return (box.centre().x - artwork.centre({0, 0}).x) / artwork.cell_mm * cell;
    };
    for (const char* const left : {"L", "E", "F", "P", "R", "K", "B"}) CHECK(off(left) > 0.1);
    for (const char* const right : {"J", "7", "3"}) CHECK(off(right) < -0.1);
    for (const char* const even : {"A", "H", "I", "M", "O", "T", "V", "W", "X"})
        CHECK(std::abs(off(even)) < 1e-6);
    // No letter comes nearer to its neighbour than the widest do to each other, nor than the least gap where
    // there is room for it: half of that is left free on either side.
    for (const double gap : {1.0, 4.0}) {
        ArtworkOptions wanted = options();
        wanted.least_gap_mm = gap;
        wanted.font = "DejaVu Sans:bold";
        const Artwork artwork = drawn(of_rows({"LJFPW", "JLMEJ", "TALBD"}), wanted);
        std::size_t at = 0;
        for (int row = 0; row < 3; ++row)
            for (int column = 0; column < 5; ++column) {
                const Box box = bounds(layer(artwork, "letters").pieces[at++].path);
                const double middle = artwork.centre({row, column}).x;
                const double most =
                    std::max(box.width() / 2, std::min(0.42 * artwork.cell_mm, (artwork.cell_mm - gap) / 2));
                CHECK(std::max(middle - box.left, box.right - middle) <= most + 1e-9);
            }
    }
}

TEST_CASE("every letter keeps to its cell, marks, tails and clusters of several letters too") {
    const std::vector<std::vector<std::string>> cells{{"LL", "DZS", "W", "Q"},
                                                      {"E\u0302\u0301", "Ạ\u0308", "J", "Å"},
                                                      {"\u05D0\u05B8", "\u0644\u0627", "\u0639", "Ç"},
                                                      {"g", "y", "l", "\u01C4"}};
    for (const std::string font : {"DejaVu Sans:bold", "DejaVu Sans"}) {
        ArtworkOptions wanted = options();
        wanted.font = font;
        const Artwork artwork = drawn(of_cells(cells), wanted);
        std::size_t at = 0;
        for (int row = 0; row < 4; ++row)
            for (int column = 0; column < 4; ++column) {
                const Piece& one = layer(artwork, "letters").pieces[at++];
                CAPTURE(font, one.name);
                const Box box = bounds(one.path);
                const Point centre = artwork.centre({row, column});
                CHECK(std::abs(box.centre().x - centre.x) <=
                      std::abs(centre_of_area(one.path) - box.centre().x) / 2 + 1e-5);
                for (const double out :
                     {centre.x - box.left, box.right - centre.x, centre.y - box.top, box.bottom - centre.y})
                    CHECK(out < 0.46 * artwork.cell_mm);
            }
    }
    const Artwork artwork = drawn(of_cells(cells), options());
    // Small at that, and in a font, since the constructed alphabet has neither Hebrew nor Arabic letters.
    REQUIRE(artwork.notes.size() == 2);
    CHECK(has(artwork.notes[0], "DejaVu Sans Bold"));
    CHECK(has(artwork.notes[0], "\u05D0"));
    CHECK(has(artwork.notes[1], "DZS"));
}

TEST_CASE("where the constructed alphabet lacks letters, a note says what is set in a font instead") {
    const auto set_in_a_font = [](const ArtworkOptions& wanted, const std::string& cell) {
        const Artwork artwork =
            drawn(of_cells({{cell, "A"}, {"B", "C"}}, {{"BC", 1, 0, Direction::right}}), wanted);
        std::vector<std::string> found;
        for (const std::string& note : artwork.notes)
            if (has(note, " set in DejaVu Sans Bold, since"))
                found.push_back(note.substr(0, note.find(" set in")));
        return found;
    };
    using Notes = std::vector<std::string>;
    const std::string alef = "\u05D0";
    CHECK(set_in_a_font(options(), "D") == Notes{});
    CHECK(set_in_a_font(options(), alef) == Notes{"The letters are"});
    CHECK(set_in_a_font(options(Surface::first, alef), "D") == Notes{"The heading is"});
    ArtworkOptions below = options();
    below.foot = alef;
    CHECK(set_in_a_font(below, "D") == Notes{"The foot is"});
    below.word_list = true;
    CHECK(set_in_a_font(below, "D") == Notes{"List and foot are"});
    // All of them at once, each once.
    below.heading = alef;
    CHECK(set_in_a_font(below, alef) == Notes{"The letters are", "The heading is", "List and foot are"});
    // A font that is asked for needs no note.
    below.font = "DejaVu Sans";
    CHECK(set_in_a_font(below, alef) == Notes{});
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
    CHECK(bounds(piece(framed, "A at row 2, column 2").path).left ==
          Approx(bounds(piece(bare, "A at row 1, column 1").path).left));
}

TEST_CASE("small letters are noted and absurd ones refused") {
    ArtworkOptions wanted = options();
    CHECK(drawn(of_rows(rows_of(15, 15, 'H')), wanted).notes.empty());
    wanted.blank = rectangle(101.6, 127);
    const Artwork small = drawn(of_rows(rows_of(15, 15, 'H')), wanted);
    REQUIRE(small.notes.size() == 1);
    CHECK(has(small.notes[0], "common practice"));
    wanted.blank = rectangle(25.4, 25.4);
    CHECK(has(refusal(of_rows(rows_of(15, 15, 'H')), wanted),
              "25.4 x 25.4 mm (1 x 1 in) is too small for 15 columns"));
}

TEST_CASE(
    "layers come in order of application, what the viewer sees in front last on the front and first on the "
    "back") {
    const auto names = [](const Artwork& artwork) {
        std::vector<std::string> all;
        for (const Layer& one : artwork.layers) all.push_back(one.name);
        return all;
    };
    CHECK(names(drawn(garden(), options(Surface::first))) ==
          std::vector<std::string>{"bands", "letters", "heading"});
    CHECK(names(drawn(garden(), options(Surface::second))) ==
          std::vector<std::string>{"heading", "letters", "bands"});
    CHECK(names(drawn(of_rows({"AB"}), options(Surface::first, ""))) == std::vector<std::string>{"letters"});
}

TEST_CASE(
    "strokes become wider only as far as the least gap is left between letters, and the most is named") {
    // Letters that are nearest side by side (W), one above the other (Q, J) and from corner to corner.
    const Puzzle rows = of_rows({"WWMQ", "QJQA", "WVAT"});
    const Puzzle apart = of_rows({"W.W", "...", "Q.J"});
    for (const Puzzle* puzzle : {&rows, &apart})
        for (const std::string font : {"", "DejaVu Sans:bold"}) {
            ArtworkOptions wanted = options(Surface::first, "");
            wanted.blank = rectangle(120, 100);
            wanted.band = BandKind::none;
            wanted.font = font;
            wanted.least_gap_mm = 1.5;
            wanted.embolden_mm = puzzle == &rows ? most_embolden_mm : 0;
            if (puzzle == &apart) {
                // Across closed cells there is more room than that.
                wanted.embolden_mm = 9;
                wanted.blank = rectangle(30, 30);
            }
            const std::string told = refusal(*puzzle, wanted);
            CAPTURE(told, font);
            REQUIRE(has(told, "--embolden 10 mm") == (puzzle == &rows));
            const std::string before = "the most that fits is ";
            REQUIRE(has(told, before));
            const double most = std::stod(told.substr(told.find(before) + before.size()));
            wanted.embolden_mm = most + 0.01;
            CHECK(has(refusal(*puzzle, wanted), told.substr(told.find(before))));
            wanted.embolden_mm = most;
            const Artwork artwork = drawn(*puzzle, wanted);
            // Polyclipping judges: closing gaps by as much as the least leaves all pieces apart, and by a
            // little more it does not.
            const auto pieces_grown_by = [&](double by) {
                ClipperLib::Paths all;
                for (const Piece& one : layer(artwork, "letters").pieces)
                    for (const auto& path : measures::grown(measures::polygons(one.path), by))
                        all.push_back(path);
                const double sum = measures::area(all);
                ClipperLib::Clipper clipper;
                clipper.AddPaths(all, ClipperLib::ptSubject, true);
                ClipperLib::Paths together;
                clipper.Execute(ClipperLib::ctUnion, together, ClipperLib::pftNonZero,
                                ClipperLib::pftNonZero);
                return sum - measures::area(together);
            };
            CHECK(pieces_grown_by(0.5 * wanted.least_gap_mm - 0.005) < 1e-6);
            CHECK(pieces_grown_by(0.5 * wanted.least_gap_mm + 0.02) > 1e-6);
        }
    // Letters that are too near each other as they are.
    ArtworkOptions dense = options(Surface::first, "");
    dense.blank = rectangle(30, 30);
    dense.band = BandKind::none;
    dense.least_gap_mm = 4;
    dense.embolden_mm = 0.1;
    CHECK(has(refusal(rows, dense), "--embolden cannot be used"));
}

TEST_CASE("a band lies behind each word, and names it") {
    const Artwork artwork = drawn(garden(), options());
    std::string names;
    for (const Piece& one : layer(artwork, "bands").pieces) {
        names += one.name + "; ";
        CHECK(signed_area(one.path) > 0);
    }
    for (const PlacedWord& word : garden().words) CHECK(has(names, word.shown));
    CHECK(has(names, "band of LEEK;"));
    CHECK(has(names, "RAT, TAX"));
    CHECK(artwork.band_radius_mm > artwork.cap_height_mm / 2);
    CHECK(artwork.band_radius_mm < artwork.cell_mm / 2);
}

TEST_CASE("letters keep clear of the edges of their bands, and of the bands beside them") {
    using enum Direction;
    // Wide letters where bands pass each other diagonally, at ends, and beside letters of no word.
    const Puzzle puzzle = of_rows({"WMDQWHM", "MWDMWQW", "WMWDMMW", "HQMWDWM", "MWQHWDM", "WMMDMQW"},
                                  {{"WWWWW", 0, 0, down_right},
                                   {"MDDDD", 0, 1, down_right},
                                   {"MWQ", 0, 6, down},
                                   {"WM", 5, 0, right},
                                   {"QHWM", 3, 1, up_right}});
    for (const BandKind kind : {BandKind::capsule, BandKind::brush})
        for (const std::string font : {"", "DejaVu Sans:bold"})
            for (const double bolder : {0.0, 0.4}) {
                ArtworkOptions wanted = options();
                wanted.band = kind;
                wanted.font = font;
                wanted.embolden_mm = bolder;
                wanted.band_colours = {{1, 2, 3}, {4, 5, 6}};
                const Artwork artwork = drawn(puzzle, wanted);
                CAPTURE(name(kind), font, bolder);
                std::vector<std::vector<std::size_t>> on_words(42);
                for (std::size_t w = 0; w < puzzle.words.size(); ++w)
                    for (std::size_t i = 0; i < puzzle.words[w].letters.size(); ++i) {
                        const Cell cell = moved(puzzle.words[w].placed.first,
                                                puzzle.words[w].placed.direction, static_cast<int>(i));
                        on_words[static_cast<std::size_t>(cell.row * 7 + cell.column)].push_back(w);
                    }
                const auto& letters = layer(artwork, "letters").pieces;
                for (std::size_t i = 0; i < letters.size(); ++i)
                    for (const Layer& one : artwork.layers) {
                        if (!one.name.starts_with("bands")) continue;
                        for (const Piece& band : one.pieces) {
                            const double inside = clearance(band.path, letters[i].path);
                            const bool own =
                                std::any_of(on_words[i].begin(), on_words[i].end(), [&](std::size_t w) {
                                    return (w % 2 == 0) == (one.name == "bands-1") &&
                                           has(band.name, puzzle.words[w].shown);
                                });
                            CAPTURE(letters[i].name, band.name, inside);
                            if (own) CHECK(inside > 0.02 * artwork.cell_mm - 0.02);
                            // Two words may cross; else what is not covered is not touched.
                            if (on_words[i].empty()) CHECK(inside < -0.02 * artwork.cell_mm + 0.02);
                        }
                    }
                CHECK(artwork.cap_height_mm > 0.4 * artwork.cell_mm);
            }
}
