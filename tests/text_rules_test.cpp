// The rules that a maker chooses: the sharp s, marks, final letters; and what they make of alphabets.

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <set>

#include <letterlode/text.hpp>

#include "support/grids.hpp"
#include "support/unicode_files.hpp"

using namespace lode;
using namespace lode::test;

namespace {

std::string joined(const std::vector<std::string>& letters) {
    std::string text;
    for (const auto& letter : letters) (text += text.empty() ? "" : " ") += letter;
    return text;
}

std::string spelled(const std::string& text, const TextRules& rules) {
    const auto spelling = Segmenter::open(rules).value().spell(text);
    CHECK(spelling.bad == "");
    return joined(spelling.letters);
}

TextRules with_sharp_s(LetterCase letters, std::optional<SharpS> rule) {
    TextRules rules{"de", letters};
    rules.sharp_s = rule;
    return rules;
}

std::string stripped(const std::string& text, const std::string& locale = "root",
                     LetterCase letters = LetterCase::keep) {
    TextRules rules{locale, letters};
    rules.marks = Marks::strip;
    return spelled(text, rules);
}

std::string folded_finals(const std::string& text, LetterCase letters, Finals rule = Finals::fold) {
    TextRules rules{"root", letters};
    rules.finals = rule;
    return spelled(text, rules);
}

bool has(const std::vector<std::string>& letters, const std::string& letter) {
    return std::find(letters.begin(), letters.end(), letter) != letters.end();
}

}  // namespace

TEST_CASE("the sharp s has two cells or one") {
    const auto upper = LetterCase::upper;
    const auto lower = LetterCase::lower;
    const auto keep = LetterCase::keep;
    CHECK(spelled("Maß", with_sharp_s(upper, {})) == "M A S S");
    CHECK(spelled("MAẞ", with_sharp_s(upper, {})) == "M A S S");
    CHECK(spelled("Maß", with_sharp_s(upper, SharpS::doubled)) == "M A S S");
    CHECK(spelled("Maß", with_sharp_s(upper, SharpS::keep)) == "M A ẞ");
    CHECK(spelled("MAẞ", with_sharp_s(upper, SharpS::keep)) == "M A ẞ");
    CHECK(spelled("Maß", with_sharp_s(lower, {})) == "m a ß");
    CHECK(spelled("MAẞ", with_sharp_s(lower, {})) == "m a ß");
    CHECK(spelled("MAẞ", with_sharp_s(lower, SharpS::keep)) == "m a ß");
    CHECK(spelled("Maß", with_sharp_s(lower, SharpS::doubled)) == "m a s s");
    CHECK(spelled("MAẞ", with_sharp_s(lower, SharpS::doubled)) == "m a s s");
    CHECK(spelled("Maß", with_sharp_s(keep, {})) == "M a ß");
    CHECK(spelled("MAẞ", with_sharp_s(keep, {})) == "M A ẞ");
    CHECK(spelled("Maß", with_sharp_s(keep, SharpS::doubled)) == "M a s s");
    CHECK(spelled("MAẞ", with_sharp_s(keep, SharpS::doubled)) == "M A S S");
    // SS that is written so is not taken for one.
    CHECK(spelled("Masse", with_sharp_s(upper, SharpS::keep)) == "M A S S E");
    CHECK(has(main_letters(with_sharp_s(upper, SharpS::keep)), "ẞ"));
    CHECK_FALSE(has(main_letters(with_sharp_s(upper, {})), "ẞ"));
    CHECK(has(main_letters(with_sharp_s(lower, {})), "ß"));
    CHECK_FALSE(has(main_letters(with_sharp_s(lower, SharpS::doubled)), "ß"));
}

TEST_CASE("marks can be taken off Latin and Greek letters, and what decomposes into none stays") {
    CHECK(stripped("café") == "c a f e");
    CHECK(stripped("Ñandú") == "N a n d u");
    CHECK(stripped("ấ ơ ǖ ç g\u0308") == "a o u c g");
    CHECK(stripped("ØłŁđĐßæœþħı") == "Ø ł Ł đ Đ ß æ œ þ ħ ı");
    CHECK(stripped("ǿ") == "ø");
    CHECK(stripped("άλφα ᾳ ΐ") == "α λ φ α α ι");
    CHECK(stripped("café", "fr", LetterCase::upper) == "C A F E");
    CHECK(stripped("Ì", "lt", LetterCase::lower) == "i");
    // The dot of a Turkish capital I is no mark, elsewhere it is.
    CHECK(stripped("istanbul", "tr", LetterCase::upper) == "İ S T A N B U L");
    CHECK(stripped("ığdır", "tr", LetterCase::upper) == "I G D I R");
    CHECK(stripped("İ") == "I");
}

TEST_CASE("no letter is made another one of its alphabet, or nonsense, by taking marks off other scripts") {
    // Cyrillic: stress goes, short i and yo stay.
    CHECK(stripped("за\u0301мок") == "з а м о к");
    CHECK(stripped("йёїўѓќ") == "й ё ї ў ѓ ќ");
    // Hebrew points, Arabic vowel signs and doubling go; hamza and madda stay.
    CHECK(stripped("שָׁלוֹם") == "ש ל ו ם");
    CHECK(stripped("مُحَمَّد") == "م ح م د");
    CHECK(stripped("أآؤئإ") == "أ آ ؤ ئ إ");
    CHECK(stripped("ا\u0654\u064E") == "أ");
    // Vowel signs, viramas and voicing marks are what is read.
    for (const char* text : {"हिन्दी", "क्षि", "நி", "กำ", "ガがパ", "각", "한국"})
        CHECK(stripped(text) == spelled(text, {"root", LetterCase::keep}));
}

TEST_CASE("a Latin or Greek letter without marks is the one that UnicodeData takes it apart to") {
    // UnicodeData: fields 0 code point, 1 name, 2 category, 5 decomposition.
    std::set<std::string> marks;
    std::set<std::string> taken_off;
    std::map<std::string, std::string> first_of;
    std::vector<std::string> marked;
    each_row(LODE_UNICODE_DATA "/UnicodeData.txt", [&](const auto& fields) {
        if (fields.at(2) == "Mn") marks.insert(fields[0]);
        const bool is_ours = fields[1].starts_with("LATIN") || fields[1].starts_with("GREEK");
        if (!is_ours || fields[2].front() != 'L' || fields.at(5).empty() || fields[5].front() == '<') return;
        const auto points = split(fields[5], ' ');
        first_of[fields[0]] = points.front();
        if (points.size() < 2) return;
        marked.push_back(fields[0]);
        taken_off.insert(points[1]);
    });
    for (const auto& mark : taken_off) CHECK(marks.count(mark) == 1);
    CHECK(marked.size() > 600);
    TextRules rules{"root", LetterCase::keep};
    rules.marks = Marks::strip;
    const auto bare = Segmenter::open(rules).value();
    for (const auto& letter : marked) {
        std::string base = letter;
        while (first_of.count(base) > 0) base = first_of[base];
        CAPTURE(letter);
        CHECK(bare.spell(text_of_points(letter)).letters == std::vector{text_of_points(base)});
    }
}

TEST_CASE("the alphabet follows the rule for marks") {
    TextRules rules{"fr"};
    rules.marks = Marks::strip;
    // Æ and Œ are letters of two, without marks.
    CHECK(joined(main_letters(rules)) == "A B C D E F G H I J K L M N O P Q R S T U V W X Y Z Æ Œ");
    rules.locale = "vi";
    CHECK(joined(main_letters(rules)) == "A B C D E G H I K L M N O P Q R S T U V X Y Đ");
    rules.locale = "nl";
    CHECK(has(main_letters(rules), "IJ"));
    CHECK_FALSE(has(main_letters(rules), "ÍJ\u0301"));
    rules.locale = "hr";
    CHECK(has(main_letters(rules), "DZ"));
    rules.locale = "ru";
    CHECK(has(main_letters(rules), "Й"));
    // What is given once is given again.
    for (const char* locale : {"fr", "vi", "nl", "hr", "hu", "el", "ru", "ar", "hi", "tr", "uz", "mt"}) {
        rules.locale = locale;
        for (const auto& letter : main_letters(rules)) {
            CAPTURE(locale, letter);
            CHECK(spelled(letter, rules) == letter);
        }
    }
}

TEST_CASE("final letters are letters of their own, or those within a word") {
    const auto lower = LetterCase::lower;
    CHECK(folded_finals("שלום", lower, Finals::keep) == "ש ל ו ם");
    CHECK(folded_finals("שלום", lower) == "ש ל ו מ");
    CHECK(folded_finals("ךםןףץ", lower) == "כ מ נ פ צ");
    CHECK(folded_finals("ΟΔΟΣ", lower, Finals::keep) == "ο δ ο ς");
    CHECK(folded_finals("ΟΔΟΣ", lower) == "ο δ ο σ");
    CHECK(folded_finals("οδος", LetterCase::keep) == "ο δ ο σ");
    CHECK(folded_finals("οδος", LetterCase::upper, Finals::keep) == "Ο Δ Ο Σ");
    TextRules hebrew{"he"};
    CHECK(main_letters(hebrew).size() == 27);
    hebrew.finals = Finals::fold;
    CHECK(main_letters(hebrew).size() == 22);
    TextRules greek{"el", lower};
    CHECK(has(main_letters(greek), "ς"));
    greek.finals = Finals::fold;
    CHECK_FALSE(has(main_letters(greek), "ς"));
    CHECK(has(main_letters(greek), "σ"));
}
