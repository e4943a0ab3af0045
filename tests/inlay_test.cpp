// Film beside film: what bands leave of each other, and letters in bands. Judged with polyclipping, over
// random puzzles.

#include <catch2/catch.hpp>

#include <letterlode/art.hpp>

#include "panels.hpp"
#include "support/path_measures.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace panels;

namespace {

const std::vector<std::string> plot{"tomato",  "cabbage", "leek",   "carrot", "beetroot",
                                    "lettuce", "radish",  "fennel", "chives", "parsley",
                                    "thyme",   "sage",    "mint",   "sorrel"};

Puzzle puzzle_of(std::uint64_t seed) {
    Recipe recipe = test::recipe_of(plot, Size{11, 11}, seed);
    recipe.directions = Directions::all();
    return make(recipe).value();
}

ArtworkOptions in_colours(BandKind band, Inlay inlay) {
    ArtworkOptions wanted = options(Surface::first, "");
    wanted.band = band;
    wanted.inlay = inlay;
    wanted.band_colours = {{1, 2, 3}, {4, 5, 6}, {7, 8, 9}};
    return wanted;
}

ClipperLib::Paths bands_of(const Artwork& artwork) {
    ClipperLib::Paths all;
    for (const Layer& one : artwork.layers)
        if (one.name.starts_with("bands"))
            for (const Piece& piece : one.pieces)
                for (const auto& path : measures::polygons(piece.path)) all.push_back(path);
    return all;
}

}  // namespace

TEST_CASE(
    "no sliver of a band is cut that is nowhere as wide as a stroke must be, and those left out are told") {
    int told = 0;
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        const Puzzle puzzle = puzzle_of(seed);
        ArtworkOptions wanted = in_colours(BandKind::brush, Inlay::bands);
        wanted.least_stroke_mm = 1.5;
        const Artwork artwork = drawn(puzzle, wanted);
        CAPTURE(seed);
        for (const Layer& one : artwork.layers)
            if (one.name.starts_with("bands"))
                for (const Piece& piece : one.pieces)
                    CHECK(!measures::grown(measures::polygons(piece.path), -0.49 * wanted.least_stroke_mm)
                               .empty());
        // What is missing is slivers: nothing of it is as wide.
        wanted.inlay = Inlay::none;
        const auto missing = measures::less(bands_of(drawn(puzzle, wanted)), bands_of(artwork));
        CHECK(measures::grown(missing, -0.51 * wanted.least_stroke_mm).empty());
        bool noted = false;
        for (const std::string& note : artwork.notes) noted = noted || has(note, "Left out of the bands");
        CHECK(noted == (measures::area(measures::grown(missing, -0.005)) > 0));
        told += noted ? 1 : 0;
    }
    CHECK(told > 0);
    CHECK(told < 4);
}

TEST_CASE("every letter is wholly inlaid or not at all") {
    for (std::uint64_t seed = 1; seed <= 4; ++seed)
        for (const BandKind band : {BandKind::capsule, BandKind::brush}) {
            const Puzzle puzzle = puzzle_of(seed);
            const auto columns = static_cast<std::size_t>(puzzle.grid.grid.size().columns);
            std::vector<bool> on_word(puzzle.grid.grid.letters().size(), false);
            for (const PlacedWord& word : puzzle.words)
                for (std::size_t i = 0; i < word.letters.size(); ++i) {
                    const Cell cell = moved(word.placed.first, word.placed.direction, static_cast<int>(i));
                    on_word[static_cast<std::size_t>(cell.row) * columns +
                            static_cast<std::size_t>(cell.column)] = true;
                }
            const auto bands = bands_of(drawn(puzzle, in_colours(band, Inlay::none)));
            const Artwork artwork = drawn(puzzle, in_colours(band, Inlay::all));
            ClipperLib::Paths in, out;
            const auto& letters = layer(artwork, "letters").pieces;
            REQUIRE(letters.size() == on_word.size());
            for (std::size_t i = 0; i < letters.size(); ++i)
                for (const auto& path : measures::polygons(letters[i].path))
                    (on_word[i] ? in : out).push_back(path);
            CAPTURE(seed, static_cast<int>(band));
            CHECK(measures::area(measures::less(in, bands)) < 1e-6);
            CHECK(measures::area(measures::less(out, bands)) == Approx(measures::area(out)).margin(1e-6));
            // Neither lies on film: what rounding to the lattice leaves is no thicker than that.
            ClipperLib::Paths all = in;
            all.insert(all.end(), out.begin(), out.end());
            CHECK(measures::area(measures::less(all, bands_of(artwork))) ==
                  Approx(measures::area(all)).epsilon(1e-3));
        }
}
