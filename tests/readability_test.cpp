// Readability against published values, and the looks of letters.

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <fstream>
#include <numeric>

#include <letterlode/art.hpp>
#include <letterlode/score.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/made.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;

namespace {

const RatingPart* part_named(const std::vector<RatingPart>& parts, const std::string& wanted) {
    const auto found =
        std::find_if(parts.begin(), parts.end(), [&](const auto& part) { return part.part == wanted; });
    return found == parts.end() ? nullptr : &*found;
}

LetterLooks no_looks() {
    return {"none", {}, {}};
}

double inches(double value) {
    return value * 25.4;
}

Alphabet letters_and_digits() {
    Alphabet alphabet;
    for (const char letter : std::string("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789"))
        alphabet.add(std::string(1, letter));
    return alphabet;
}

}  // namespace

// h = 2 D tan(a / 2), computed: 16, 20 and 22 minutes of arc at 500, 2000 and 5000 mm.
TEST_CASE("a height is seen under the angle that trigonometry gives") {
    struct Row {
        double distance, at_16, at_20, at_22;
    };
    for (const auto& [distance, at_16, at_20, at_22] :
         {Row{500, 2.327, 2.909, 3.200}, Row{2000, 9.308, 11.636, 12.799},
          Row{5000, 23.271, 29.089, 31.998}}) {
        CHECK(angle_as_seen(at_16, distance) == Approx(16).margin(0.01));
        CHECK(angle_as_seen(at_20, distance) == Approx(20).margin(0.01));
        CHECK(angle_as_seen(at_22, distance) == Approx(22).margin(0.01));
        // NUREG-0700 rev. 2 has h = 6.283 D a / 21600 for small angles.
        CHECK(6.283 * distance * 20 / 21600 == Approx(at_20).epsilon(0.001));
    }
}

// 2010 ADA Standards for Accessible Design, table 703.5.5, worked with exact inches: baseline, distance,
// height.
TEST_CASE("letters on signs are as high as table 703.5.5 asks for, at each of its breaks") {
    struct Row {
        double baseline, distance, height;
    };
    for (const auto& [baseline, distance, height] :
         {Row{50, 120, 1.125}, Row{50, 240, 2.375}, Row{70, 96, 0.875}, Row{70.01, 96, 2},
          Row{100, 240, 2.625}, Row{121, 360, 4.125}, Row{40, 71.99, 0.625}, Row{40, 72, 0.625},
          Row{120, 180, 2}, Row{120.01, 252, 3}, Row{200, 100, 3}}) {
        CAPTURE(baseline, distance);
        const auto least = least_height_on_signs(inches(baseline), inches(distance));
        REQUIRE(least);
        CHECK(*least == Approx(inches(height)));
    }
    CHECK(*least_height_on_signs(inches(50), inches(60)) == Approx(15.875));  // the printed 16 mm rounds it
    CHECK_FALSE(least_height_on_signs(inches(39.9), inches(60)));
}

TEST_CASE("a larger letter is never less readable, and one that is nearer neither") {
    const LetteredGrid grid = lettered({"AB", "CD"});
    double before = 0;
    for (double height = 1; height < 60; height += 0.7) {
        LettersSeen seen;
        seen.cap_height = height;
        seen.viewing = 2'000;
        const auto parts = rate_readability(grid, no_looks(), seen);
        const RatingPart* angle = part_named(parts, "letter height as seen");
        REQUIRE(angle);
        CHECK(angle->value > before);
        CHECK((angle->value >= 16) == (height >= 9.308));
        before = angle->value;
        seen.viewing = 1'900;
        CHECK(part_named(rate_readability(grid, no_looks(), seen), "letter height as seen")->value > before);
        CHECK(part_named(parts, "letter height")->threshold.value() ==
              Approx(15.875 + 3.175 * (2000 - 1828.8) / 304.8));
    }
}

TEST_CASE("shares of the height are held against both ends of their range") {
    LettersSeen seen;
    seen.cap_height = 10;
    const auto stroke = [&](double width) {
        seen.stroke = width;
        return *part_named(rate_readability(lettered({"A"}), no_looks(), seen), "stroke");
    };
    CHECK_THAT(stroke(0.9).note, Contains("this is less"));
    CHECK(stroke(0.9).threshold == 10.0);
    CHECK_THAT(stroke(2).note, !Contains("this is"));
    CHECK_THAT(stroke(3.1).note, Contains("this is more"));
    CHECK(stroke(3.1).threshold == 30.0);
    CHECK(stroke(2).value == Approx(20));
}

TEST_CASE("the longest run of one letter is found along every line") {
    for (const auto& rows : {std::vector<std::string>{"AAAX", "XYXY"},
                             {"AX", "AY", "AX"},
                             {"AXY", "YAX", "XYA"},
                             {"XYA", "YAX", "AXY"},
                             {"A.AAA"}}) {
        const auto parts = rate_readability(lettered(rows), no_looks());
        REQUIRE(parts.size() == 1);
        CHECK(parts.front().value == 3);
        CHECK_THAT(parts.front().note, Contains("Of A"));
    }
}

TEST_CASE("look-alike neighbours are counted in pairs, and equal letters are none") {
    Alphabet alphabet;
    LetterLooks looks{"a font", {0.3, 0.3, 0.1}, {0, 0.9, 0.1, 0.9, 0, 0.1, 0.1, 0.1, 0}};
    LetteredGrid grid{{}, Grid({1, 4}, 0)};
    for (const char* letter : {"O", "Q", "I"}) grid.alphabet.add(letter);
    for (int column = 0; column < 4; ++column)
        grid.grid[{0, column}] =
            static_cast<Letter>(std::string("0012")[static_cast<std::size_t>(column)] - '0');
    const auto* part = part_named(rate_readability(grid, looks), "look-alike neighbours");
    const auto parts = rate_readability(grid, looks);
    part = part_named(parts, "look-alike neighbours");
    REQUIRE(part);
    CHECK(part->value == Approx(100.0 / 3));  // O O, O Q, Q I
    CHECK_THAT(part->note, Contains("O and Q") && Contains("a font"));
}

TEST_CASE("a grid of one letter is even, and a spot in it is not") {
    LetterLooks looks{"a font", {0.2, 0.4}, {0, 0, 0, 0}};
    LetteredGrid grid{{}, Grid({6, 6}, 0)};
    grid.alphabet.add("I");
    grid.alphabet.add("M");
    CHECK(part_named(rate_readability(grid, looks), "evenness")->value == Approx(0).margin(1e-6));
    grid.grid[{2, 2}] = 1;
    CHECK(part_named(rate_readability(grid, looks), "evenness")->value > 1);
}

TEST_CASE("the table of looks is what the program computes from the font today") {
    const Alphabet alphabet = letters_and_digits();
    const auto computed = letter_looks(alphabet, "DejaVu Sans:bold");
    REQUIRE(computed);
    const LetterLooks table = built_in_looks(alphabet);
    CHECK(table.font == computed->font);
    const std::size_t count = alphabet.size();
    for (std::size_t one = 0; one < count; ++one) {
        CAPTURE(alphabet.text(static_cast<Letter>(one)));
        CHECK(table.ink[one] == Approx(computed->ink[one]).margin(1e-3));
        for (std::size_t other = 0; other < count; ++other)
            if (computed->likeness[one * count + other] >= 0.501)
                CHECK(table.likeness[one * count + other] ==
                      Approx(computed->likeness[one * count + other]).margin(1e-3));
    }
}

// Capitals that are often confused (common practice): C D G O Q; H N.
TEST_CASE("letters that are often confused are more alike than most") {
    const Alphabet alphabet = letters_and_digits();
    const LetterLooks looks = built_in_looks(alphabet);
    const auto likeness = [&](const char* one, const char* other) {
        return looks.likeness[*alphabet.find(one) * alphabet.size() + *alphabet.find(other)];
    };
    CHECK(likeness("O", "Q") > alike);
    CHECK(likeness("D", "O") > alike);
    CHECK(likeness("G", "O") > alike);
    CHECK(likeness("H", "N") > alike);
    CHECK(likeness("A", "I") < alike);
    CHECK(likeness("L", "W") < alike);

    // A letter with a mark is its letter under it; one that the table lacks is not known.
    Alphabet others;
    for (const char* letter : {"O", "\u00D6", "\u05D0"}) others.add(letter);
    const LetterLooks marked = built_in_looks(others);
    CHECK(marked.ink[1] == marked.ink[0]);
    CHECK(marked.likeness[1] == 1);
    CHECK(marked.ink[2] < 0);
}

TEST_CASE("letters on a panel are measured on their outlines") {
    const Puzzle puzzle = made(recipe_of({"NOON", "LILIES"}, Size{8, 8}));
    ArtworkOptions options;
    options.blank = shaped_blank("rectangle", {200, 200});
    options.font = "DejaVu Sans:bold";
    options.surface = Surface::first;
    const auto artwork = draw(puzzle, options);
    REQUIRE(artwork);
    const auto seen = letters_seen(puzzle, *artwork, options, 1'500);
    REQUIRE(seen);
    CHECK(seen->cap_height == artwork->cap_height_mm);
    CHECK(seen->line_pitch == artwork->cell_mm);
    // DejaVu Sans Bold, by its glyf table: the I is a bar 385 wide and 1493 high, the O 1536 wide.
    CHECK(seen->stroke / seen->cap_height == Approx(385.0 / 1493).margin(0.003));
    CHECK(seen->o_width / seen->cap_height == Approx(1536.0 / 1493).margin(0.003));
    CHECK(seen->letter_gap > 0);
    CHECK(seen->letter_gap < artwork->cell_mm);
    options.font = "no such font, surely";
    CHECK_FALSE(letters_seen(puzzle, *artwork, options, 1'500));
    CHECK_FALSE(letter_looks(puzzle.grid.alphabet, options.font));
}

TEST_CASE("distances are read with their units, and nothing else is") {
    CHECK(read_distance("1.5m").value() == Approx(1500));
    CHECK(read_distance(" 60 cm ").value() == Approx(600));
    CHECK(read_distance("400mm").value() == Approx(400));
    CHECK(read_distance("5ft").value() == Approx(1524));
    CHECK(read_distance("24in").value() == Approx(609.6));
    for (const char* text : {"", "m", "1.5", "1.5 miles", "-1m", "1e3mm", "99mm", "101m", "nanm", "1.5m2"}) {
        CAPTURE(text);
        CHECK_FALSE(read_distance(text));
    }
}
