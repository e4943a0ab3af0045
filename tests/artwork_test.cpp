// Artwork on blanks of any outline: everything inside, on the axis, in the colours that were asked for.

#include <catch2/catch.hpp>

#include <letterlode/art.hpp>

#include "art/combine.hpp"
#include "art/outline_polygons.hpp"
#include "panels.hpp"

using namespace lode;
using namespace panels;

namespace {

constexpr double lattice = 1'000;  // units a millimetre

// How much of the artwork lies less than `margin` inside the blank's outline, in mm2.
double outside(const Artwork& artwork, double margin) {
    const auto room = outline_polygons(grown(artwork.blank.outline, -margin), lattice, 64);
    double area = 0;
    for (const Layer& one : artwork.layers)
        for (const Piece& piece : one.pieces) {
            const auto polygons = outline_polygons(piece.path, lattice, 64);
            area += covered_area(polygons) - shared_area(polygons, room);
        }
    return area / lattice / lattice;
}

double area_of(const Artwork& artwork, bool bands_only) {
    double area = 0;
    for (const Layer& one : artwork.layers)
        if (!bands_only || one.name.starts_with("bands"))
            for (const Piece& piece : one.pieces) area += signed_area(piece.path);
    return area;
}

Puzzle with_bands(const std::vector<std::string>& bands) {
    Puzzle puzzle = garden();
    for (std::size_t i = 0; i < puzzle.words.size(); ++i)
        puzzle.recipe.words.words.push_back({puzzle.words[i].shown, 0, i < bands.size() ? bands[i] : ""});
    return puzzle;
}

}  // namespace

TEST_CASE("whatever is asked for stays on the blank and within its rebate") {
    std::size_t drawings = 0;
    for (const char* const blank : {"8x10in", "rounded 203x254mm", "circle 250mm", "oval 300x220mm",
                                    "heart 300mm", "star 400mm", "hexagon 260mm"})
        for (const BandKind band : {BandKind::capsule, BandKind::brush, BandKind::ring})
            for (const int dress : {0, 1, 2}) {
                ArtworkOptions wanted = options(Surface::first, dress == 2 ? "" : "The Tool\nShed");
                wanted.blank = read_blank(blank).value();
                wanted.band = band;
                wanted.rebate_mm = 4;
                if (dress == 1) {
                    wanted.border = BorderStyle::double_line;
                    wanted.ornament = Ornament::curl;
                    wanted.foot = "May 2031";
                    wanted.embolden_mm = 0.4;
                }
                if (dress == 2) {
                    wanted.border = BorderStyle::dotted;
                    wanted.margin_mm = 6;
                    wanted.word_list = true;
                }
                const auto artwork = draw(garden(), wanted);
                CAPTURE(blank, name(band), dress);
                if (!artwork) {
                    CHECK(has(artwork.refusal().message, "too small"));
                    continue;
                }
                ++drawings;
                // Flattening cuts corners by less than this.
                CHECK(outside(*artwork, wanted.rebate_mm - 0.01) < 1e-3);
            }
    CHECK(drawings > 50);
}

TEST_CASE("a grid stands on the axis of a blank that is alike on both sides") {
    for (const char* const blank :
         {"circle 250mm", "oval 300x220mm", "heart 300mm", "star 400mm", "hexagon 260mm"}) {
        ArtworkOptions wanted = options(Surface::first, "Shed");
        wanted.blank = read_blank(blank).value();
        wanted.border = BorderStyle::line;
        wanted.ornament = Ornament::leaf;
        const Artwork artwork = drawn(garden(), wanted);
        CAPTURE(blank);
        const double middle = artwork.grid_corner.x + 4.5 * artwork.cell_mm;
        CHECK(middle == Approx(artwork.blank.width_mm / 2).margin(0.02));
    }
}

TEST_CASE("bands have the colours of the list, or take theirs in turn") {
    ArtworkOptions wanted = options();
    wanted.band_colours = {{1, 2, 3}, {4, 5, 6}};
    // LEEK gold, MINT none; the others by turns.
    const Artwork artwork = drawn(with_bands({"gold", "none"}), wanted);
    std::vector<Colour> colours;
    std::string names;
    for (const Layer& one : artwork.layers) {
        if (!one.name.starts_with("bands")) continue;
        colours.push_back(one.colour);
        CHECK_FALSE(one.carried_whole);
        for (const Piece& piece : one.pieces) names += piece.name + ";";
    }
    CHECK(colours == std::vector<Colour>{{0xff, 0xd7, 0x00}, {1, 2, 3}, {4, 5, 6}});
    CHECK(has(names, "LEEK"));
    CHECK_FALSE(has(names, "MINT"));
}

TEST_CASE("inlaid bands lie beside each other, and cover what those that are not cover together") {
    for (const BandKind band : {BandKind::capsule, BandKind::brush, BandKind::ring}) {
        ArtworkOptions wanted = options();
        wanted.band = band;
        wanted.band_colours = {{1, 2, 3}, {4, 5, 6}, {7, 8, 9}};
        wanted.least_stroke_mm = 0.01;  // what is nowhere as wide would be left out: inlay_test.cpp
        std::vector<Path> bands;
        for (const Layer& one : drawn(garden(), wanted).layers)
            if (one.name.starts_with("bands"))
                for (const Piece& piece : one.pieces) bands.push_back(piece.path);
        const double whole = signed_area(united(bands));
        wanted.inlay = Inlay::bands;
        const Artwork artwork = drawn(garden(), wanted);
        CAPTURE(name(band));
        CHECK(area_of(artwork, true) == Approx(whole).margin(1e-3));
        wanted.inlay = Inlay::all;
        const Artwork all = drawn(garden(), wanted);
        std::vector<Path> paths;
        for (const Layer& one : all.layers)
            for (const Piece& piece : one.pieces) paths.push_back(piece.path);
        CHECK(area_of(all, false) == Approx(signed_area(united(paths))).margin(1e-2));
    }
}

TEST_CASE("letters that run into each other are one piece") {
    // Arabic letters of a word join; so do Latin ones that are made too wide.
    const Artwork arabic = drawn(garden(), options(Surface::first, "\u0628\u064A\u062A"));
    CHECK(layer(arabic, "heading").pieces.size() == 1);
    ArtworkOptions wide = options(Surface::first, "Tool Shed");
    wide.font = "DejaVu Sans:bold";
    wide.embolden_mm = 5;
    const Artwork bold = drawn(garden(), wide);
    const auto& pieces = layer(bold, "heading").pieces;
    CHECK(pieces.size() < 8);
    for (std::size_t i = 0; i + 1 < pieces.size(); ++i)
        CHECK(shared(pieces[i].path, pieces[i + 1].path).empty());
}

TEST_CASE("a puzzle that is made for an outline has its cells wholly inside") {
    Recipe recipe;
    for (const char* const word : {"Beetroot", "Carrot", "Fennel", "Kale", "Leek", "Onion", "Thyme"})
        recipe.words.words.push_back({word, 0});
    for (const char* const blank : {"heart 300mm", "circle 250mm", "hexagon 260mm", "star 400mm"}) {
        ArtworkOptions wanted = options(Surface::first, "Shed");
        wanted.blank = read_blank(blank).value();
        const auto fitted = recipe_on_blank(recipe, wanted);
        CAPTURE(blank);
        REQUIRE(fitted);
        REQUIRE(fitted->mask);
        const auto puzzle = make(*fitted);
        REQUIRE(puzzle);
        const Artwork artwork = drawn(*puzzle, wanted);
        const auto room = outline_polygons(artwork.blank.outline, lattice, 64);
        for (int row = 0; row < fitted->mask->size().rows; ++row)
            for (int column = 0; column < fitted->mask->size().columns; ++column) {
                if (!fitted->mask->open({row, column})) continue;
                const Point c = artwork.centre({row, column});
                const double half = artwork.cell_mm / 2;
                const Path cell{
                    {{{c.x - half, c.y - half},
                      {Segment::line({c.x + half, c.y - half}), Segment::line({c.x + half, c.y + half}),
                       Segment::line({c.x - half, c.y + half}), Segment::line({c.x - half, c.y - half})}}}};
                const auto polygons = outline_polygons(cell, lattice);
                CHECK(covered_area(polygons) - shared_area(polygons, room) < 1e-3 * lattice * lattice);
            }
    }
    // What names its grid keeps it.
    Recipe given = recipe;
    given.size = Size{9, 9};
    ArtworkOptions wanted = options();
    wanted.blank = read_blank("heart 300mm").value();
    CHECK_FALSE(recipe_on_blank(given, wanted).value().mask);
}

TEST_CASE("holes are holes of the blank, and nothing is set near them") {
    ArtworkOptions wanted = options();
    wanted.holes = {{{101.6, 30}, 6}};
    const Artwork artwork = drawn(garden(), wanted);
    CHECK(artwork.blank.outline.contours.size() == 2);
    const auto about = outline_polygons(capsule({101.6, 30}, {101.6, 30}, 3 + 5), lattice);
    for (const Layer& one : artwork.layers)
        for (const Piece& piece : one.pieces)
            CHECK(shared_area(outline_polygons(piece.path, lattice), about) == 0);
    wanted.holes = {{{500, 30}, 6}};
    CHECK(has(refusal(garden(), wanted), "outside of the blank"));
}
