// Counters against the outlines of a font: each inner contour is one.

#include <catch2/catch.hpp>

#include "art/font.hpp"
#include "puzzle/letter_shapes.hpp"
#include "support/grids.hpp"

using namespace lode;
using namespace lode::test;

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_OUTLINE_H

#include <unicode/unistr.h>

namespace {

// How many holes the font's glyph has: points that an odd number of contours enclose from one side are ink in
// TrueType, so a contour that runs against the outermost one is a hole's edge.
int holes_in(FT_Face face, char32_t letter) {
    const FT_UInt glyph = FT_Get_Char_Index(face, letter);
    REQUIRE(glyph != 0);
    REQUIRE(FT_Load_Glyph(face, glyph, FT_LOAD_NO_SCALE) == 0);
    const FT_Outline& outline = face->glyph->outline;
    int holes = 0;
    int start = 0;
    for (int contour = 0; contour < outline.n_contours; ++contour) {
        const int end = outline.contours[contour];
        long long doubled_area = 0;
        for (int at = start; at <= end; ++at) {
            const FT_Vector a = outline.points[at];
            const FT_Vector b = outline.points[at == end ? start : at + 1];
            doubled_area += static_cast<long long>(a.x) * b.y - static_cast<long long>(b.x) * a.y;
        }
        // TrueType: outer contours run clockwise, so that their area is negative with y upward.
        holes += doubled_area > 0 ? 1 : 0;
        start = end + 1;
    }
    return holes;
}

}  // namespace

TEST_CASE("letters enclose as many counters as the outlines of DejaVu Sans Bold have holes") {
    FT_Library library = nullptr;
    REQUIRE(FT_Init_FreeType(&library) == 0);
    FT_Face face = nullptr;
    REQUIRE(FT_New_Face(library, find_font("DejaVu Sans:bold").value().path.c_str(), 0, &face) == 0);
    const std::u32string letters =
        U"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789ÆŒÞÐæœþ"
        U"ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩαβγδεζηθικλμνξοπρστυχψω"
        U"АБВГДЕЖЗИКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯЉЊабвгдежзиклмнопрстуфхцчшщъыьэюяљњ";
    std::string differ;
    for (const char32_t letter : letters) {
        std::string text;
        icu::UnicodeString(static_cast<UChar32>(letter)).toUTF8String(text);
        if (counters_of(text) != holes_in(face, letter))
            differ += text + " " + std::to_string(counters_of(text)) + ", not " +
                      std::to_string(holes_in(face, letter)) + "; ";
    }
    CHECK(differ == "");
    FT_Done_Face(face);
    FT_Done_FreeType(library);
}

TEST_CASE("marks do not change what a letter looks like, and case does") {
    CHECK(counters_of("É") == 0);
    CHECK(counters_of("é") == 1);
    CHECK(counters_of("Å") == counters_of("A"));
    CHECK(counters_of("Ch") == 0);  // two letters in a cell: C and H
    CHECK(counters_of("OO") == 2);
    CHECK(counters_of("ם") == 0);  // nothing is known of Hebrew
    CHECK(look_of("é").shape == look_of("e").shape);
    CHECK(look_of("I").shape != look_of("i").shape);
}

TEST_CASE("letters that are often confused are look-alikes, both ways, and others are not") {
    const auto alike = [](const std::string& one, const std::string& other) {
        const FillerRules rules{0, {look_of(one), look_of(other)}};
        CHECK(rules.are_look_alikes(0, 1) == rules.are_look_alikes(1, 0));
        return rules.are_look_alikes(0, 1);
    };
    // Capitals often confused: C D G O Q; H K M N W in reading tests (secondary sources).
    for (const std::string group : {"CDGOQ", "HKMNW"})
        for (const char one : group)
            for (const char other : group)
                CHECK(alike(std::string(1, one), std::string(1, other)) == (one != other));
    for (const auto& [one, other] : {std::pair("I", "L"), {"O", "0"}, {"b", "d"}, {"I", "l"}, {"Ö", "Q"}})
        CHECK(alike(one, other));
    for (const auto& [one, other] : {std::pair("A", "B"), {"O", "X"}, {"D", "B"}, {"E", "É"}, {"B", "d"}})
        CHECK_FALSE(alike(one, other));
}
