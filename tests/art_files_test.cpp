// What outside readers of SVG and PNG make of our files.

#include <letterlode/art.hpp>

#include <catch2/catch.hpp>
#include <locale>

#include "oracles/picture.hpp"
#include "panels.hpp"

using namespace lode;
using namespace panels;

TEST_CASE("every file is well-formed and has its true size") {
    const Artwork artwork = drawn(garden(), options(Surface::second, "Beds & <Borders> \"one\""));
    std::vector<std::string> files{to_svg(artwork_drawing(artwork))};
    for (std::size_t i = 0; i < artwork.layers.size(); ++i) files.push_back(to_svg(layer_drawing(artwork, i)));
    for (const std::string& svg : files) {
        CHECK(judge::is_well_formed(svg));
        CHECK(has(svg, "width=\"203.2mm\" height=\"254mm\" viewBox=\"0 0 203.2 254\""));
        CHECK(has(svg, "already mirrored: do not mirror again"));
        // 96 dots an inch is CSS's own measure; a second one shows that millimetres were meant.
        for (const int dots : {96, 300}) {
            const judge::Picture picture = judge::rendered(svg, dots);
            CHECK(picture.width == 8 * dots);
            CHECK(picture.height == 10 * dots);
        }
    }
    CHECK(!has(to_svg(artwork_drawing(drawn(garden(), options(Surface::first)))), "already mirrored"));
    CHECK_THROWS_AS(to_svg(layer_drawing(artwork, 3)), std::out_of_range);
}

TEST_CASE("files hold paths and nothing that a cutter could not follow") {
    const std::string svg = to_svg(artwork_drawing(drawn(garden(), options())));
    for (const char* const unwanted :
         {"<text", "<image", "<script", "<use", "href", "style", "transform", "-0 ", "e-", "nan", "inf"})
        CHECK(!has(svg, unwanted));
    CHECK(has(svg, "<g id=\"letters\" fill=\"#243f3a\" fill-rule=\"nonzero\""));
    CHECK(has(svg, "<g id=\"bands\""));
    CHECK(has(svg, "<g id=\"heading\""));
    std::size_t starts = 0;
    std::size_t ends = 0;
    std::size_t curves = 0;
    for (std::size_t at = svg.find(" d=\""); at != std::string::npos; at = svg.find(" d=\"", at)) {
        const std::size_t end = svg.find('"', at += 4);
        const std::string data = svg.substr(at, end - at);
        CHECK(data.find_first_not_of("MLCZ0123456789. -") == std::string::npos);
        CHECK(data.back() == 'Z');
        for (const char c : data) {
            starts += c == 'M';
            ends += c == 'Z';
            curves += c == 'C';
        }
    }
    CHECK(starts > 63);
    CHECK(starts == ends);
    CHECK(curves > 100);
}

TEST_CASE("text that XML cannot hold is kept out of the files") {
    Puzzle puzzle = garden();
    puzzle.words[0].shown = "<LEEK> & \"\x01\x08\xFF\xED\xA0\x80\xEF\xBF\xBF\xC3";
    const std::string svg = to_svg(artwork_drawing(drawn(puzzle, options())));
    CHECK(judge::is_well_formed(svg));
    CHECK(has(svg, "&lt;LEEK&gt; &amp; &quot;<"));
}

TEST_CASE("every open cell holds ink in the rendered letters, and no closed one does") {
    const Puzzle puzzle = of_rows({".I.", "ILI", "TTT", ".J."});
    for (const Surface surface : {Surface::first, Surface::second}) {
        const Artwork artwork = drawn(puzzle, options(surface, ""));
        const auto ink = judge::rendered(to_svg(layer_drawing(artwork, place_of(artwork, "letters"))), 96);
        const auto none = judge::rendered(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"203.2mm\" height=\"254mm\"/>", 96);
        for (int row = 0; row < 4; ++row)
            for (int column = 0; column < 3; ++column) {
                const Point centre = artwork.centre({row, column});
                const double x = surface == Surface::second ? 203.2 - centre.x : centre.x;
                const int marks = judge::marks(ink, none, x * 96 / mm_an_inch, centre.y * 96 / mm_an_inch,
                                               0.48 * artwork.cell_mm * 96 / mm_an_inch);
                CAPTURE(row, column);
                CHECK((marks > 100) == (puzzle.grid.grid[{row, column}] != closed_cell));
                if (puzzle.grid.grid[{row, column}] == closed_cell) CHECK(marks == 0);
            }
    }
}

TEST_CASE("second-surface artwork rendered and turned over is first-surface artwork") {
    const auto front = judge::rendered(to_svg(artwork_drawing(drawn(garden(), options(Surface::first)))), 150);
    const auto back = judge::rendered(to_svg(artwork_drawing(drawn(garden(), options(Surface::second)))), 150);
    CHECK(judge::share_that_differs(front, back.flipped()) < 1e-4);
    CHECK(judge::share_that_differs(front, back) > 0.01);
}

TEST_CASE("the cap height that is reported is the one that is rendered") {
    const Artwork artwork = drawn(of_rows({"HHH", "HHH"}), options(Surface::first, ""));
    constexpr int dots = 600;
    const auto picture = judge::rendered(to_svg(layer_drawing(artwork, 0)), dots);
    const double pixels_a_mm = dots / mm_an_inch;
    const Point centre = artwork.centre({0, 0});
    // Down through the left stem of the first H.
    const int x = static_cast<int>((bounds(artwork.layers[0].pieces[0].path).left + 1) * pixels_a_mm);
    int high = 0;
    for (int y = 0; y < static_cast<int>((centre.y + artwork.cell_mm / 2) * pixels_a_mm); ++y)
        high += picture.darkness(x, y) > 100;
    CHECK(high / pixels_a_mm == Approx(artwork.cap_height_mm).margin(1.5 / pixels_a_mm));
}

TEST_CASE("the preview shows every letter, right way round on either surface") {
    for (const std::string heading : {"", "The Tool Shed"}) {
        const Artwork front = drawn(garden(), options(Surface::first, heading));
        Artwork bare = front;
        bare.layers.clear();
        constexpr int side = 1000;
        const std::string bytes = preview_png(front, side);
        CHECK(bytes == preview_png(drawn(garden(), options(Surface::second, heading)), side));
        const auto picture = judge::read_png(bytes);
        const auto blank = judge::read_png(preview_png(bare, side));
        CHECK(picture.height == side);
        CHECK(picture.width < side);
        // The plate stands in the middle, so millimetres follow from its share of the picture.
        const double scale = side / (254 * 1.22);
        const double left = (picture.width - 203.2 * scale) / 2;
        const double top = (picture.height - 254 * scale) / 2;
        for (int row = 0; row < 7; ++row)
            for (int column = 0; column < 9; ++column) {
                const Point centre = front.centre({row, column});
                CAPTURE(row, column);
                CHECK(judge::marks(picture, blank, left + centre.x * scale, top + centre.y * scale,
                                   0.3 * front.cell_mm * scale) > 30);
            }
        // Nothing but wall outside the plate.
        CHECK(judge::marks(picture, blank, left / 2, picture.height / 2.0, left / 2 - 1) == 0);
    }
}

TEST_CASE("previews have the size that is asked for, and no other than is allowed") {
    ArtworkOptions wide = options();
    wide.blank = rectangle(508, 101.6);
    const auto picture = judge::read_png(preview_png(drawn(garden(), wide), 640));
    CHECK(picture.width == 640);
    CHECK(picture.height < 400);
    for (const int side : {0, -5, 63, 8001})
        CHECK_THROWS_AS(preview_png(drawn(garden(), wide), side), std::invalid_argument);
}

TEST_CASE("the same puzzle gives the same bytes, in every locale") {
    const auto bytes = [] {
        const Artwork artwork = drawn(garden(), options(Surface::second));
        return to_svg(artwork_drawing(artwork)) + to_svg(layer_drawing(artwork, 0)) + preview_png(artwork, 400);
    };
    const std::string before = bytes();
    struct Comma : std::numpunct<char> {
        char do_decimal_point() const override { return ','; }
        char do_thousands_sep() const override { return '.'; }
        std::string do_grouping() const override { return "\3"; }
    };
    const std::locale old = std::locale::global(std::locale(std::locale::classic(), new Comma));
    const std::string within = bytes();
    std::locale::global(old);
    CHECK(before == within);
    CHECK(has(before, "203.2mm"));
}
