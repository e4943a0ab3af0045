// Letters held to Unicode's own test files and data, as the package unicode-data brings them.

#include <catch2/catch.hpp>
#include <map>

#include <unicode/uchar.h>
#include <unicode/uversion.h>
#include <letterlode/text.hpp>

#include "support/grids.hpp"
#include "support/unicode_files.hpp"

using namespace lode;
using namespace lode::test;

namespace {

std::string joined(const std::vector<std::string>& parts) {
    std::string text;
    for (const auto& part : parts) text += part;
    return text;
}

std::vector<std::string> points_of_all(const std::vector<std::string>& texts) {
    std::vector<std::string> points;
    for (const auto& text : texts) points.push_back(points_of(text));
    return points;
}

}  // namespace

TEST_CASE("grapheme clusters fall where Unicode's GraphemeBreakTest says") {
    // Letters are kept as they are, but normalised: an expected cluster is compared in form C, which never
    // crosses its borders here.
    const Segmenter keep = segmenter_of("root", LetterCase::keep);
    long changed_by_normalisation = 0;
    const long cases =
        each_row(LODE_UNICODE_DATA "/auxiliary/GraphemeBreakTest.txt", [&](const auto& fields) {
            // "÷ 0020 × 0308 ÷ 0020 ÷"
            std::vector<std::string> expected;
            std::string whole;
            for (const auto& mark : split(fields.at(0), ' ')) {
                if (mark == "÷")
                    expected.emplace_back();
                else if (mark != "×")
                    expected.back() += text_of_points(mark);
            }
            expected.pop_back();  // what follows the last border
            for (const auto& cluster : expected) whole += cluster;
            if (normalised(whole) != whole) ++changed_by_normalisation;
            std::vector<std::string> in_form_c;
            for (const auto& cluster : expected) in_form_c.push_back(normalised(cluster).value());
            CAPTURE(fields.at(0));
            CHECK(joined(in_form_c) == normalised(whole));
            CHECK(points_of_all(keep.clusters(whole)) == points_of_all(in_form_c));
        });
    CHECK(cases == 602);  // of version 15.0.0
    // AC00 11A8 and 0061 0308, each alone and before another letter; all others are compared as the file has
    // them.
    CHECK(changed_by_normalisation == 4);
}

TEST_CASE("text is normalised as Unicode's NormalizationTest says") {
    // Fields: source; NFC; NFD; NFKC; NFKD. NFC is c2 of c1, c2 and c3, and c4 of c4 and c5.
    const long rows = each_row(LODE_NORMALIZATION_TEST, [&](const auto& fields) {
        std::vector<std::string> column;
        for (int at = 0; at < 5; ++at)
            column.push_back(text_of_points(fields.at(static_cast<std::size_t>(at))));
        const bool right = normalised(column[0]) == column[1] && normalised(column[1]) == column[1] &&
                           normalised(column[2]) == column[1] && normalised(column[3]) == column[3] &&
                           normalised(column[4]) == column[3];
        if (!right) {
            CAPTURE(fields.at(0));
            CHECK(right);
        }
    });
    CHECK(rows == 19074);  // of version 15.0.0
}

TEST_CASE("every letter has the capital that UnicodeData and SpecialCasing give it") {
    // UnicodeData: field 0 code point, 2 category, 12 simple upper case. SpecialCasing, rows without a
    // condition: code point; lower; title; upper. Marks are compared in form C, as text is normalised after
    // casing.
    std::map<std::string, std::string> upper;
    std::map<std::string, std::string> lower;
    each_row(LODE_UNICODE_DATA "/UnicodeData.txt", [&](const auto& fields) {
        // Ranges of ideographs and syllables have no case.
        if (fields.at(1).front() == '<' || fields.at(2).front() != 'L') return;
        const std::string letter = text_of_points(fields[0]);
        upper[letter] = fields.size() > 12 && !fields[12].empty() ? text_of_points(fields[12]) : letter;
        lower[letter] = fields.size() > 13 && !fields[13].empty() ? text_of_points(fields[13]) : letter;
    });
    CHECK(upper.size() > 15'000);
    each_row(LODE_UNICODE_DATA "/SpecialCasing.txt", [&](const auto& fields) {
        if (fields.size() > 4 && !fields[4].empty()) return;
        const std::string letter = text_of_points(fields.at(0));
        if (upper.count(letter) == 0) return;
        lower[letter] = text_of_points(fields.at(1));
        upper[letter] = text_of_points(fields.at(3));
    });
    const Segmenter capitals = segmenter_of("root", LetterCase::upper);
    const Segmenter smalls = segmenter_of("root", LetterCase::lower);
    // The one that the rules of spelling decide: a capital sharp s is doubled like the small one.
    CHECK(upper.at("ẞ") == "ẞ");
    upper["ẞ"] = upper.at("ß");
    for (const auto& [letter, capital] : upper) {
        const std::string seen = joined(capitals.clusters(letter));
        if (seen != normalised(capital)) {
            CAPTURE(points_of(letter), points_of(seen));
            CHECK(points_of(seen) == points_of(normalised(capital).value()));
        }
    }
    for (const auto& [letter, small] : lower) {
        const std::string seen = joined(smalls.clusters(letter));
        if (seen != normalised(small)) {
            CAPTURE(points_of(letter), points_of(seen));
            CHECK(points_of(seen) == points_of(normalised(small).value()));
        }
    }
}

TEST_CASE("letters are cased by SpecialCasing's conditions") {
    // Code point; lower; title; upper; condition: a language, a context, or both. Of the contexts those that
    // a letter alone or at a word's end is in, and, after an i, the dot above that is taken off.
    long compared = 0;
    const long rows = each_row(LODE_UNICODE_DATA "/SpecialCasing.txt", [&](const auto& fields) {
        if (fields.size() < 5 || fields[4].empty()) return;
        const auto condition = split(fields[4], ' ');
        const bool has_language = condition.front().size() == 2;
        const std::string locale = has_language ? condition.front() : "root";
        const std::string context =
            has_language ? (condition.size() > 1 ? condition[1] : "") : condition.front();
        const std::string letter = text_of_points(fields[0]);
        const auto in_case = [&](LetterCase letters, const std::string& text) {
            return joined(segmenter_of(locale, letters).clusters(text));
        };
        CAPTURE(fields[0], fields[4]);
        if (context.empty() || context == "Not_Before_Dot") {
            CHECK(in_case(LetterCase::lower, letter) == normalised(text_of_points(fields[1])));
            CHECK(in_case(LetterCase::upper, letter) == normalised(text_of_points(fields[3])));
        } else if (context == "Final_Sigma") {
            CHECK(in_case(LetterCase::lower, "Α" + letter) == "α" + text_of_points(fields[1]));
            // A bar is seen by no rule: before it the word goes on.
            CHECK(joined(segmenter_of(locale, LetterCase::lower).spell("Α" + letter + "|").letters) ==
                  "α" + text_of_points(fields[1]));
            CHECK(joined(segmenter_of(locale, LetterCase::lower).spell("Α" + letter + "|Α").letters) ==
                  "ασα");
        } else if (context == "After_Soft_Dotted") {
            CHECK(in_case(LetterCase::upper, "i" + letter) == "I" + text_of_points(fields[3]));
        } else {
            return;
        }
        ++compared;
    });
    CHECK(rows > 100);
    CHECK(compared >= 10);
}

TEST_CASE("every letter of UnicodeData fills a cell, and no punctuation, space or symbol does") {
    const Segmenter keep = segmenter_of("root", LetterCase::keep);
    long letters = 0;
    each_row(LODE_UNICODE_DATA "/UnicodeData.txt", [&](const auto& fields) {
        if (fields.at(1).front() == '<') return;
        const std::string text = text_of_points(fields[0]);
        const auto spelling = keep.spell(text);
        const std::string& category = fields[2];
        CAPTURE(fields[0], fields[1]);
        if (category == "Lu" || category == "Ll" || category == "Lt" || category == "Lo" ||
            category == "Nd") {
            // Hangul fillers are letters that nobody sees.
            if (fields[1].find("FILLER") != std::string::npos) return;
            ++letters;
            if (spelling.letters != std::vector{normalised(text).value()})
                CHECK(spelling.letters == std::vector{normalised(text).value()});
        } else if (category.front() == 'P' || category.front() == 'Z') {
            if (!spelling.letters.empty() || !spelling.bad.empty()) CHECK(spelling.bad == "");
        } else if (text == std::string(1, letter_bar)) {
            // Parts letters.
            CHECK(spelling.bad == "");
            CHECK(spelling.letters.empty());
        } else if (category == "Sm" || category == "Sc" || category == "So" || category == "Nl" ||
                   category == "No") {
            if (spelling.bad.empty()) CHECK(spelling.bad == text);
        }
    });
    CHECK(letters > 15'000);
}
