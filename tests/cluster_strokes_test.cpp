// Letters of several characters keep the widths that the constructed alphabet promises, judged by balls that
// shrink (support/shrinking_ball.hpp).

#include <catch2/catch.hpp>

#include <letterlode/art.hpp>

#include <set>

#include "panels.hpp"
#include "support/recipes.hpp"
#include "support/shrinking_ball.hpp"

using namespace lode;
using namespace panels;

namespace {

// Every letter of several characters that CLDR 42 has in Welsh, in words of the garden.
Puzzle welsh() {
    Recipe recipe = test::recipe_of({"rhosyn", "gardd", "llwyn", "ffenigl", "clawdd", "chwynnu", "rhaw",
                                     "pridd", "llysiau", "ffa", "dringo", "brithyll", "blodau", "pethau"},
                                    Size{15, 15});
    recipe.text.locale = "cy";
    return make(recipe).value();
}

}  // namespace

TEST_CASE("letters of several characters are drawn with strokes as wide as promised") {
    const Puzzle puzzle = welsh();
    for (const BandKind band : {BandKind::capsule, BandKind::none}) {
        ArtworkOptions wanted = options(Surface::first, "Gardd");
        wanted.band = band;
        const Artwork artwork = drawn(puzzle, wanted);
        REQUIRE(artwork.font == std::string(constructed_alphabet) + " alphabet");
        std::set<std::string> seen;
        for (const Piece& piece : layer(artwork, "letters").pieces) {
            const std::string letter = piece.name.substr(0, piece.name.find(' '));
            if (!seen.insert(letter).second) continue;
            const judge::Widths widths = judge::narrowest_by_balls(piece.path, 0.05);
            CAPTURE(static_cast<int>(band), letter);
            REQUIRE(widths.stroke);
            CHECK(*widths.stroke >= 0.99 * wanted.least_stroke_mm);
            // Behind a band letters are smaller still, and some too low for three strokes and two gaps above
            // each other, 5.2 mm: gaps give way first.
            if (widths.gap)
                CHECK(*widths.gap >= (band == BandKind::none ? 0.99 : 0.85) * wanted.least_gap_mm);
            // As strong as its neighbours, not a black spot among them.
            CHECK(*widths.stroke <= 1.4);
        }
        for (const char* const letter : {"CH", "DD", "FF", "NG", "LL", "RH", "TH"})
            CHECK(seen.count(letter) == 1);
    }
}
