// Guides printed, measured and glued together.

#include <letterlode/art.hpp>

#include <catch2/catch.hpp>
#include <cmath>

#include "cut/guide.hpp"
#include "panels.hpp"
#include "pdf_reader.hpp"

using namespace lode;
using namespace panels;

namespace {

std::string guide(const Artwork& artwork, Paper paper) {
    const auto made = guide_pdf(artwork, paper);
    if (!made) throw std::runtime_error(made.refusal().message);
    return *made;
}

// The artwork without anything on it, so that only the blank's edge and the centre lines are drawn.
Artwork bare(BlankSize blank, Surface surface = Surface::first) {
    ArtworkOptions wanted = options(surface);
    wanted.blank = rectangle(blank.width_mm, blank.height_mm);
    Artwork artwork = drawn(garden(), wanted);
    artwork.layers.clear();
    return artwork;
}

// Pixels a millimetre of the pictures that are measured: lines of a ruler need finer ones.
constexpr int coarse = 5;
constexpr int fine = 10;
judge::Picture page_picture(const std::string& pdf, int pixels_a_mm, int page = 1) {
    return judge::page_picture(pdf, static_cast<int>(pixels_a_mm * mm_an_inch), page);
}

// Whether a line of ink runs there: a share of dark pixels along a stretch, in mm.
double ink_along(const judge::Picture& page, Point from, Point to, int pixels_a_mm = coarse) {
    const int steps = static_cast<int>(pixels_a_mm * std::hypot(to.x - from.x, to.y - from.y));
    int dark = 0;
    for (int i = 0; i < steps; ++i) {
        const double share = (i + 0.5) / steps;
        const int x = static_cast<int>(pixels_a_mm * (from.x + share * (to.x - from.x)));
        const int y = static_cast<int>(pixels_a_mm * (from.y + share * (to.y - from.y)));
        bool near = false;
        for (int dx = -1; dx <= 1; ++dx)
            for (int dy = -1; dy <= 1; ++dy)
                near = near || (x + dx >= 0 && x + dx < page.width && y + dy >= 0 && y + dy < page.height &&
                                page.darkness(x + dx, y + dy) > 120);
        dark += near;
    }
    return static_cast<double>(dark) / steps;
}

}  // namespace

TEST_CASE("a guide that fits its paper is one page, with the blank in the middle at true size") {
    const Artwork artwork = bare({203.2, 254});
    const std::string pdf = guide(artwork, Paper::letter);
    CHECK(judge::told(pdf, "Pages") == "1");
    CHECK(judge::size_in(pdf) == std::pair{612.0, 792.0});
    const judge::Picture page = page_picture(pdf, coarse);
    const double left = (215.9 - 203.2) / 2;
    const double top = guide_tiles(artwork.blank, Paper::letter).area.centre().y - 127;
    CHECK(ink_along(page, {left, top}, {left, top + 254}) > 0.99);
    CHECK(ink_along(page, {left + 203.2, top}, {left + 203.2, top + 254}) > 0.99);
    CHECK(ink_along(page, {left, top}, {left + 203.2, top}) > 0.99);
    CHECK(ink_along(page, {left, top + 254}, {left + 203.2, top + 254}) > 0.99);
    CHECK(ink_along(page, {left + 30, top + 30}, {left + 90, top + 90}) < 0.05);
    const double dashes = ink_along(page, {left + 101.6, top + 5}, {left + 101.6, top + 249});
    CHECK(dashes > 0.6);
    CHECK(dashes < 0.95);
}

TEST_CASE("the ruler of a guide has its hundred millimetres and four inches") {
    const judge::Picture page = page_picture(guide(bare({100, 100}), Paper::a4), fine);
    const double y = 297 - 6 - 3.6;
    const double left = 6.5;
    CHECK(ink_along(page, {left, y}, {left + 101.6, y}, fine) > 0.99);
    CHECK(ink_along(page, {left + 102.5, y - 2}, {left + 103.5, y + 2}, fine) < 0.01);
    for (int mm = 0; mm <= 100; ++mm)
        CHECK(page.darkness(static_cast<int>(fine * (left + mm)), static_cast<int>(fine * (y - 0.7))) > 60);
    for (int mm = 0; mm < 100; ++mm)
        CHECK(page.darkness(static_cast<int>(fine * (left + mm) + fine / 2),
                            static_cast<int>(fine * (y - 0.7))) < 60);
    for (int inch = 0; inch <= 4; ++inch)
        CHECK(ink_along(page, {left + 25.4 * inch, y}, {left + 25.4 * inch, y + 1.9}, fine) > 0.99);
}

TEST_CASE("a guide says how it is to be printed and which side it shows") {
    const std::string second = judge::text_in(guide(drawn(garden(), options(Surface::second)), Paper::a4));
    const std::string first = judge::text_in(guide(drawn(garden(), options(Surface::first)), Paper::letter));
    for (const std::string& text : {first, second}) {
        CHECK(has(text, "The Tool Shed"));
        CHECK(has(text, "Print at 100 percent"));
        CHECK(has(text, "100 mm"));
        CHECK(has(text, "4 in"));
    }
    CHECK(has(second, "MIRRORED"));
    CHECK(!has(first, "MIRRORED"));
    CHECK(has(second, "Page 2 of 2: row 1, column 2"));
    CHECK(has(second, "joins page 1"));
    CHECK(!has(first, "joins"));
}

TEST_CASE("a guide shows the second surface mirrored") {
    const auto picture = [](Surface surface) {
        ArtworkOptions wanted = options(surface, "");
        wanted.band = BandKind::none;
        return judge::page_picture(guide(drawn(garden(), wanted), Paper::letter), 100);
    };
    // Between header and footer.
    const auto middle = [](judge::Picture page) {
        const auto row = static_cast<std::size_t>(3 * page.width);
        page.rgb.erase(page.rgb.begin() + static_cast<std::ptrdiff_t>(row * 1040), page.rgb.end());
        page.rgb.erase(page.rgb.begin(), page.rgb.begin() + static_cast<std::ptrdiff_t>(row * 60));
        page.height = 980;
        return page;
    };
    const judge::Picture first = middle(picture(Surface::first));
    const judge::Picture second = middle(picture(Surface::second));
    CHECK(judge::share_that_differs(first, second.flipped()) < 0.005);
    CHECK(judge::share_that_differs(first, second) > 0.02);
}

TEST_CASE("the pages of a guide meet at their marks and cover the blank") {
    for (const auto& [paper, blank] :
         {std::pair{Paper::letter, BlankSize{457.2, 304.8}}, std::pair{Paper::a4, BlankSize{203.2, 254}}}) {
        const Artwork artwork = bare(blank);
        const GuideTiles tiles = guide_tiles(blank, paper);
        const std::string pdf = guide(artwork, paper);
        CHECK(judge::told(pdf, "Pages") == std::to_string(tiles.columns * tiles.rows));
        // The same place of the blank lies under the crosses of both pages.
        CHECK(tiles.corner(1, 0).x + tiles.overlap / 2 ==
              Approx(tiles.corner(0, 0).x + tiles.area.width() - tiles.overlap / 2));
        CHECK(tiles.first.x <= 1e-9);
        CHECK(tiles.first.y <= 1e-9);
        for (int row = 0; row < tiles.rows; ++row)
            for (int column = 0; column < tiles.columns; ++column) {
                const judge::Picture page = page_picture(pdf, coarse, row * tiles.columns + column + 1);
                CAPTURE(row, column);
                const auto on_page = [&](Point p) {
                    const Point corner = tiles.corner(column, row);
                    return Point{p.x - corner.x + tiles.area.left, p.y - corner.y + tiles.area.top};
                };
                const auto clamped = [&](Point p) {
                    return Point{std::clamp(p.x, tiles.area.left + 0.2, tiles.area.right - 0.2),
                                 std::clamp(p.y, tiles.area.top + 0.2, tiles.area.bottom - 0.2)};
                };
                for (const auto& [from, to] :
                     {std::pair{Point{0, 0}, Point{blank.width_mm, 0}},
                      std::pair{Point{0, blank.height_mm}, Point{blank.width_mm, blank.height_mm}},
                      std::pair{Point{0, 0}, Point{0, blank.height_mm}},
                      std::pair{Point{blank.width_mm, 0}, Point{blank.width_mm, blank.height_mm}}}) {
                    const Point a = on_page(from);
                    const Point b = on_page(to);
                    const bool here = from.x == to.x ? a.x > tiles.area.left && a.x < tiles.area.right
                                                     : a.y > tiles.area.top && a.y < tiles.area.bottom;
                    const Point start = clamped(a);
                    const Point end = clamped(b);
                    if (here && std::hypot(end.x - start.x, end.y - start.y) > 1)
                        CHECK(ink_along(page, start, end) > 0.99);
                }
                const double cross = tiles.area.top + 0.12 * tiles.area.height();
                if (column > 0) {
                    const double x = tiles.area.left + tiles.overlap / 2;
                    CHECK(ink_along(page, {x - 3, cross}, {x + 3, cross}) > 0.99);
                }
                if (column + 1 < tiles.columns) {
                    const double x = tiles.area.right - tiles.overlap / 2;
                    CHECK(ink_along(page, {x - 3, cross}, {x + 3, cross}) > 0.99);
                }
            }
    }
}

TEST_CASE("no joint of a guide runs through a letter where its overlap has a free place") {
    int free_ones = 0;
    int moved = 0;
    for (const Surface surface : {Surface::first, Surface::second})
        for (double width = 300; width < 620; width += 37)
            for (const double height : {330.0, 410.0, 505.0}) {
                ArtworkOptions wanted = options(surface, "");
                wanted.blank = rectangle(width, height);
                const Artwork artwork =
                    drawn(of_rows(std::vector<std::string>(24, std::string(24, 'H'))), wanted);
                const GuideTiles tiles = guide_tiles(artwork.blank, Paper::a4);
                const GuideJoints joints = guide_joints(artwork, tiles);
                // H is the same mirrored, and stands in the middle of its cell.
                const Layer& letters = layer(artwork, "letters");
                const auto cut = [&](const Box& shared, double at, bool upright) {
                    int count = 0;
                    for (const Piece& piece : letters.pieces) {
                        const Box box = bounds(piece.path);
                        if (box.right > shared.left && box.left < shared.right && box.bottom > shared.top &&
                            box.top < shared.bottom)
                            count +=
                                upright ? box.left < at && at < box.right : box.top < at && at < box.bottom;
                    }
                    return count;
                };
                const auto check = [&](const Box& shared, double at, bool upright) {
                    const double from = upright ? shared.left : shared.top;
                    CHECK(at > from + 1);
                    CHECK(at < from + tiles.overlap - 1);
                    bool free = false;
                    for (double place = from + 2; place <= from + tiles.overlap - 2; place += 0.5)
                        free = free || cut(shared, place, upright) == 0;
                    if (!free) return;
                    ++free_ones;
                    const double middle = from + tiles.overlap / 2;
                    const bool through = cut(shared, middle, upright) > 0;
                    moved += through ? 1 : 0;
                    CHECK(cut(shared, at, upright) == 0);
                };
                CAPTURE(width, height);
                for (int row = 0; row < tiles.rows; ++row)
                    for (int column = 0; column < tiles.columns; ++column) {
                        const Point corner = tiles.corner(column, row);
                        const Point next = tiles.corner(column + 1, row + 1);
                        if (column + 1 < tiles.columns)
                            check({next.x, corner.y, next.x + tiles.overlap, corner.y + tiles.area.height()},
                                  joints.upright(column, row), true);
                        if (row + 1 < tiles.rows)
                            check({corner.x, next.y, corner.x + tiles.area.width(), next.y + tiles.overlap},
                                  joints.level(column, row), false);
                    }
            }
    CHECK(free_ones > 50);
    CHECK(moved > 10);
}

TEST_CASE("guides turn the paper where that saves pages") {
    const GuideTiles wide = guide_tiles({254, 150}, Paper::letter);
    CHECK(wide.columns * wide.rows == 1);
    CHECK(wide.page == PageSize{279.4, 215.9});
    const GuideTiles large = guide_tiles({most_blank_mm, most_blank_mm}, Paper::a4);
    CHECK(large.corner(large.columns - 1, 0).x + large.area.width() >= most_blank_mm - 1e-6);
    CHECK(large.corner(0, large.rows - 1).y + large.area.height() >= most_blank_mm - 1e-6);
}
