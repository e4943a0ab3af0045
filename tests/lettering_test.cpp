// The letters of the grid and their bands: where they stand, how large they are, what they keep clear of.

#include <letterlode/art.hpp>

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "art/clearance.hpp"
#include "panels.hpp"
#include "support/path_measures.hpp"

using namespace lode;
using namespace panels;

namespace {

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

}  // namespace

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
    CHECK(piece_named(artwork, "T at row 2, column 4").path == layer(artwork, "letters").pieces[8].path);
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
