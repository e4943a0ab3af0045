// Widths of text in columns, against Unicode's own table.

#include <catch2/catch.hpp>
#include <set>

#include "support/unicode_files.hpp"
#include "text/display_width.hpp"

using namespace lode;
using namespace lode::test;

// EastAsianWidth.txt (UAX #11: W and F are wide) and the general categories of UnicodeData.txt, Unicode 15.0.
TEST_CASE("a character is as wide as UAX #11 says, and marks have no width") {
    std::set<char32_t> marks;
    const std::string folder = LODE_UNICODE_DATA;
    each_row(folder + "/UnicodeData.txt", [&](const std::vector<std::string>& fields) {
        if (fields.at(2) == "Mn" || fields.at(2) == "Me" || fields.at(2) == "Cf")
            marks.insert(static_cast<char32_t>(std::stoul(fields.at(0), nullptr, 16)));
    });
    CHECK(marks.size() > 1000);
    long wide = 0;
    each_row(folder + "/EastAsianWidth.txt", [&](const std::vector<std::string>& fields) {
        if (fields.at(1) != "W" && fields.at(1) != "F") return;
        const auto range = split(fields.at(0), '.');
        // Of a range its ends.
        for (const std::string& end : {range.front(), range.back()}) {
            const auto character = static_cast<char32_t>(std::stoul(end, nullptr, 16));
            CAPTURE(points_of(utf8_of(character)));
            CHECK(display_width(utf8_of(character)) == (marks.contains(character) ? 0 : 2));
            ++wide;
        }
    });
    CHECK(wide > 200);
    CHECK(display_width("") == 0);
    CHECK(display_width("Ab\u00E9") == 3);
    CHECK(display_width("e\u0301") == 1);
    CHECK(display_width("\u05D0\u200F") == 1);
}

TEST_CASE("text is padded to a width and never cut") {
    CHECK(padded("\u65E5", 4) == "\u65E5  ");
    CHECK(padded_before("7", 3) == "  7");
    CHECK(padded("long", 2) == "long");
    CHECK(padded_before("long", 2) == "long");
}
