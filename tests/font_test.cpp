// Outlines against FreeType's own rendering, and fonts that are missing, broken or hostile.

#include "art/font.hpp"

#include <ft2build.h>
#include FT_FREETYPE_H
#include <cairo.h>
#include <fontconfig/fontconfig.h>

#include <catch2/catch.hpp>
#include <cmath>
#include <cstdlib>
#include <random>

#include "oracles/picture.hpp"

#if defined(__SANITIZE_ADDRESS__)
#define LODE_WATCHES_LEAKS 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define LODE_WATCHES_LEAKS 1
#endif
#endif
#ifdef LODE_WATCHES_LEAKS
#include <sanitizer/lsan_interface.h>
#endif

using namespace lode;

namespace {

#ifdef LODE_WATCHES_LEAKS
// fontconfig 2.14 loses a few hundred bytes of its own where it reads its rules. It reads them here,
// unwatched, before any test, so that leaks of ours are still seen.
[[maybe_unused]] const bool rules_are_read = [] {
    const __lsan::ScopedDisabler unwatched;
    return FcInit() != 0;
}();
#endif

Font opened(const std::string& asked) {
    auto file = find_font(asked);
    REQUIRE(file);
    auto font = Font::open(*std::move(file));
    REQUIRE(font);
    return *std::move(font);
}

std::string file_of(const std::string& asked) {
    return find_font(asked).value().path;
}

SetLine set(Font& font, const std::string& text) {
    auto line = font.set_line(text);
    REQUIRE(line);
    return *std::move(line);
}

std::string texts(const SetLine& line) {
    std::string all;
    for (const SetLetter& letter : line.letters) all += (all.empty() ? "" : " ") + letter.text;
    return all;
}

// Coverage of the path drawn by Cairo: font units times scale, its box's upper left corner at (0, 0).
std::vector<unsigned char> coverage(const Path& path, double scale, double left, double top, int width,
                                    int height) {
    cairo_surface_t* const surface = cairo_image_surface_create(CAIRO_FORMAT_A8, width, height);
    cairo_t* const context = cairo_create(surface);
    cairo_set_antialias(context, CAIRO_ANTIALIAS_BEST);
    cairo_set_tolerance(context, 0.01);
    const auto x = [&](Point p) { return p.x * scale - left; };
    const auto y = [&](Point p) { return p.y * scale - top; };
    for (const Contour& contour : path.contours) {
        cairo_move_to(context, x(contour.start), y(contour.start));
        for (const Segment& s : contour.segments)
            if (s.curved)
                cairo_curve_to(context, x(s.control1), y(s.control1), x(s.control2), y(s.control2), x(s.to),
                               y(s.to));
            else
                cairo_line_to(context, x(s.to), y(s.to));
        cairo_close_path(context);
    }
    cairo_fill(context);
    cairo_surface_flush(surface);
    std::vector<unsigned char> pixels;
    for (int row = 0; row < height; ++row) {
        const unsigned char* const line =
            cairo_image_surface_get_data(surface) + row * cairo_image_surface_get_stride(surface);
        pixels.insert(pixels.end(), line, line + width);
    }
    cairo_destroy(context);
    cairo_surface_destroy(surface);
    return pixels;
}

}  // namespace

TEST_CASE("every capital drawn from our outline is the one that FreeType draws itself") {
    for (const std::string asked : {"DejaVu Sans:bold", "DejaVu Serif", "DejaVu Sans Mono:bold"}) {
        Font font = opened(asked);
        FT_Library library = nullptr;
        FT_Face face = nullptr;
        REQUIRE(FT_Init_FreeType(&library) == 0);
        REQUIRE(FT_New_Face(library, file_of(asked).c_str(), 0, &face) == 0);
        constexpr int pixels_an_em = 200;
        REQUIRE(FT_Set_Pixel_Sizes(face, pixels_an_em, pixels_an_em) == 0);
        const double scale = static_cast<double>(pixels_an_em) / face->units_per_EM;
        for (char c = 'A'; c <= 'Z'; ++c) {
            CAPTURE(asked, c);
            const SetLine line = set(font, std::string(1, c));
            REQUIRE(line.letters.size() == 1);
            REQUIRE(FT_Load_Char(face, static_cast<FT_ULong>(c), FT_LOAD_RENDER | FT_LOAD_NO_HINTING) == 0);
            const FT_Bitmap& theirs = face->glyph->bitmap;
            const int width = static_cast<int>(theirs.width);
            const int height = static_cast<int>(theirs.rows);
            const auto ours = coverage(line.letters[0].path, scale, face->glyph->bitmap_left,
                                       -face->glyph->bitmap_top, width, height);
            double off = 0;
            double ink = 0;
            for (int row = 0; row < height; ++row)
                for (int column = 0; column < width; ++column) {
                    const int a = ours[static_cast<std::size_t>(row * width + column)];
                    const int b = theirs.buffer[row * theirs.pitch + column];
                    off += std::abs(a - b);
                    ink += b;
                }
            REQUIRE(ink > 0);
            CHECK(off / ink < 0.006);
            // Nothing of ours lies outside their picture.
            const Box box = bounds(line.letters[0].path);
            CHECK(box.left * scale > face->glyph->bitmap_left - 0.05);
            CHECK(box.right * scale < face->glyph->bitmap_left + width + 0.05);
            CHECK(-box.top * scale < face->glyph->bitmap_top + 0.05);
            CHECK(-box.bottom * scale > face->glyph->bitmap_top - height - 0.05);
        }
        FT_Done_Face(face);
        FT_Done_FreeType(library);
    }
}

TEST_CASE("outer contours have a positive area and counters a negative one") {
    for (const std::string asked : {"DejaVu Sans:bold", "DejaVu Serif:bold"}) {
        Font font = opened(asked);
        const auto signs = [&](const std::string& letter) {
            int outer = 0;
            int inner = 0;
            const SetLine line = set(font, letter);
            for (const Contour& contour : line.letters.at(0).path.contours) {
                CHECK(contour.segments.back().to == contour.start);
                (signed_area(contour) > 0 ? outer : inner)++;
            }
            return std::pair(outer, inner);
        };
        CHECK(signs("O") == std::pair(1, 1));
        CHECK(signs("B") == std::pair(1, 2));
        CHECK(signs("L") == std::pair(1, 0));
        CHECK(signs("É") == std::pair(2, 0));
        CHECK(signs("Å").first >= 1);
        CHECK(signs("8") == std::pair(1, 2));
    }
}

TEST_CASE("the cap height is that of an H") {
    Font font = opened("DejaVu Sans:bold");
    CHECK(font.cap_height() == Approx(bounds(set(font, "H").letters.at(0).path).height()));
    CHECK(font.name() == "DejaVu Sans Bold");
}

TEST_CASE("letters of several code points are set as one run") {
    Font font = opened("DejaVu Sans:bold");
    // Two characters that the font joins to one cluster, and two that stay two.
    CHECK(texts(set(font, "E\u0301")) == "E\u0301");
    CHECK(texts(set(font, "LL")) == "L L");
    const SetLine line = set(font, "LL");
    CHECK(bounds(line.letters[1].path).left > bounds(line.letters[0].path).right);
}

TEST_CASE("Arabic is joined, and is not as wide as its letters one by one") {
    Font font = opened("DejaVu Sans");
    const auto width = [&](const std::string& text) {
        double left = 1e300;
        double right = -1e300;
        for (const SetLetter& letter : set(font, text).letters) {
            left = std::min(left, bounds(letter.path).left);
            right = std::max(right, bounds(letter.path).right);
        }
        return right - left;
    };
    CHECK(width("\u0628\u0628\u0628") < 0.8 * 3 * width("\u0628"));  // three times beh
}

TEST_CASE("a line in both directions is set as it is read") {
    Font font = opened("DejaVu Sans");
    // From left to right on the line. The Unicode bidirectional algorithm keeps numbers from left to right
    // inside Hebrew.
    CHECK(texts(set(font, "\u05D0\u05D1 12")) == "1 2 \u05D1 \u05D0");
    CHECK(texts(set(font, "ab \u05D0\u05D1 cd")) == "a b \u05D1 \u05D0 c d");
    CHECK(texts(set(font, "\u05D0\u05D1 ab")) == "a b \u05D1 \u05D0");
    // Two scripts in one run from right to left: Hebrew first, so at the right; then Arabic.
    CHECK(texts(set(font, "\u05D0\u05D1 \u062F\u062F")) == "\u062F \u062F \u05D1 \u05D0");
    const SetLine line = set(font, "\u05D0\u05D1 12 ab");
    for (std::size_t i = 1; i < line.letters.size(); ++i)
        CHECK(bounds(line.letters[i].path).centre().x > bounds(line.letters[i - 1].path).centre().x);
}

TEST_CASE("what the font lacks is named, and what has it is found") {
    Font font = opened("DejaVu Sans:bold");
    CHECK(set(font, "A\u0905").missing == std::vector<std::string>{"\u0905"});  // Devanagari A
    CHECK(set(font, "ABC").missing.empty());
    const auto families = families_with("A\u05D0");
    CHECK(std::find(families.begin(), families.end(), "DejaVu Sans") != families.end());
    CHECK(families_with("\U000F0001").empty());  // private use: nobody's letter
}

TEST_CASE("a family that is not installed is refused, and installed ones are proposed") {
    const auto file = find_font("Deja Vu Sanz");
    REQUIRE(!file);
    CHECK(file.refusal().message.find("Deja Vu Sanz") != std::string::npos);
    REQUIRE(file.refusal().advice.size() == 1);
    CHECK(file.refusal().advice[0].find("DejaVu Sans") != std::string::npos);
    CHECK(!find_font("Nobody Has Drawn This:bold"));
    CHECK(!find_font("sans-serif"));  // a wish, not a family
    CHECK(!find_font(""));
    CHECK(!find_font(":bold"));
    CHECK(!find_font("DejaVu Sans:weight=["));
    CHECK(find_font("dejavusans:bold"));  // case and blanks do not matter, as in fontconfig
}

TEST_CASE("a style that is not installed is noted") {
    const std::string regular = file_of("DejaVu Sans:regular");
    CHECK(find_font("DejaVu Sans:bold").value().notes.empty());
    CHECK(find_font("DejaVu Sans").value().notes.empty());

    // A machine with one font, and with the usual rule that puts a slanted or a smeared one in place of what
    // is missing.
    const judge::Folder folder;
    const std::string rules =
        folder.write("fonts.conf",
                     "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig>"
                     "<include ignore_missing=\"yes\">/etc/fonts/conf.d/90-synthetic.conf</include>"
                     "</fontconfig>");
    FcConfig* const usual = FcConfigReference(nullptr);
    FcConfig* const lone = FcConfigCreate();
    REQUIRE(FcConfigParseAndLoad(lone, reinterpret_cast<const FcChar8*>(rules.c_str()), FcTrue));
    REQUIRE(FcConfigAppFontAddFile(lone, reinterpret_cast<const FcChar8*>(regular.c_str())));
    REQUIRE(FcConfigSetCurrent(lone));
    const auto plain = find_font("DejaVu Sans");
    const auto bold = find_font("DejaVu Sans:bold");
    const auto slanted = find_font("DejaVu Sans:italic");
    const auto other = find_font("DejaVu Serif");
    FcConfigSetCurrent(usual);
    FcConfigDestroy(usual);
    FcConfigDestroy(lone);

    CHECK(plain.value().notes.empty());
    REQUIRE(bold.value().notes.size() == 1);
    CHECK(bold->notes[0].find("DejaVu Sans Book") != std::string::npos);
    CHECK(bold->notes[0].find("thinner") != std::string::npos);
    REQUIRE(slanted.value().notes.size() == 1);
    CHECK(slanted->notes[0].find("slant") != std::string::npos);
    REQUIRE(!other);
    CHECK(other.refusal().advice ==
          std::vector<std::string>{"Installed are, nearest in name first: DejaVu Sans."});
}

TEST_CASE("a font is taken from its file") {
    const std::string path = file_of("DejaVu Sans:bold");
    Font font = opened(path);
    CHECK(font.name() == "DejaVu Sans Bold");
    const judge::Folder folder;
    const auto missing = Font::open(find_font(folder.name("none.ttf")).value());
    REQUIRE(!missing);
    CHECK(missing.refusal().message.find("none.ttf") != std::string::npos);
}

TEST_CASE("a file that is no font, and one that holds pictures only, are refused") {
    const judge::Folder folder;
    const auto refusal = [&](const std::string& name, const std::string& bytes) {
        const auto font = Font::open(find_font(folder.write(name, bytes)).value());
        REQUIRE(!font);
        return font.refusal().message;
    };
    CHECK(refusal("text.ttf", "this is no font").find("no font file") != std::string::npos);
    CHECK(refusal("nothing.ttf", "").find("no font file") != std::string::npos);
    // A font of one picture in the Glyph Bitmap Distribution Format (Adobe's specification 2.2).
    CHECK(
        refusal("pictures.ttf",
                "STARTFONT 2.1\nFONT box\nSIZE 8 75 75\nFONTBOUNDINGBOX 8 8 0 0\nSTARTPROPERTIES "
                "2\nFONT_ASCENT 8\n"
                "FONT_DESCENT 0\nENDPROPERTIES\nCHARS 1\nSTARTCHAR A\nENCODING 65\nSWIDTH 500 0\nDWIDTH 8 0\n"
                "BBX 8 8 0 0\nBITMAP\nFF\nFF\nFF\nFF\nFF\nFF\nFF\nFF\nENDCHAR\nENDFONT\n")
            .find("pictures") != std::string::npos);
}

TEST_CASE("a broken font is refused or set, but never worse") {
    const std::string whole = judge::read(file_of("DejaVu Sans Mono:bold"));
    REQUIRE(whole.size() > 100'000);
    const judge::Folder folder;
    std::mt19937 random(3);
    int set_all = 0;
    int refused = 0;
    const auto attempt = [&](const std::string& bytes) {
        auto font = Font::open(find_font(folder.write("broken.ttf", bytes)).value());
        if (!font) return ++refused;
        for (const char* const text : {"A", "W", "É", "ABC", "\u0627\u0644"}) {
            const auto line = font->set_line(text);
            if (!line) return ++refused;
            for (const SetLetter& letter : line->letters) {
                const Box box = bounds(letter.path);
                CHECK((std::isfinite(box.width()) && std::isfinite(box.height())));
            }
        }
        return ++set_all;
    };
    for (int i = 0; i < 60; ++i) attempt(whole.substr(0, random() % whole.size()));
    for (int i = 0; i < 150; ++i) {
        std::string bytes = whole;
        // Headers and tables of offsets hurt most, so half of the changes hit the first kilobyte.
        for (int j = 0; j < 40; ++j)
            bytes[random() % (j % 2 ? bytes.size() : 1024)] = static_cast<char>(random() % 256);
        attempt(bytes);
    }
    CHECK(refused > 0);
    CHECK(set_all + refused == 210);
}
