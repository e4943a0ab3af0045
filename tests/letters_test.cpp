// From text to letters: case, marks, what fills a cell, alphabets of languages.

#include <algorithm>
#include <atomic>
#include <catch2/catch.hpp>
#include <set>
#include <thread>

#include <unicode/locid.h>
#include <unicode/ulocdata.h>
#include <letterlode/text.hpp>

#include "support/grids.hpp"
#include "support/unicode_files.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;
using Texts = std::vector<std::string>;

namespace {

std::string cased(const std::string& locale, LetterCase letters, const std::string& text) {
    std::string all;
    for (const auto& cluster : segmenter_of(locale, letters).clusters(text)) all += cluster;
    return all;
}

Texts letters_of(const std::string& text, const std::string& locale = "root",
                 LetterCase letters = LetterCase::upper) {
    const auto spelling = segmenter_of(locale, letters).spell(text);
    CHECK(spelling.bad == "");
    return spelling.letters;
}

std::string joined(const Texts& parts) {
    std::string text;
    for (const auto& part : parts) text += part;
    return text;
}

}  // namespace

TEST_CASE("words are cased by the rules of their language") {
    // Unicode's SpecialCasing.txt and CLDR's tailorings, as ICU 72.1 computes them.
    struct Row {
        const char* locale;
        LetterCase letters;
        const char* before;
        const char* after;
    };
    const auto upper = LetterCase::upper;
    const auto lower = LetterCase::lower;
    for (const Row& row : std::vector<Row>{{"de", upper, "straße", "STRASSE"},
                                           {"de", lower, "STRASSE", "strasse"},
                                           {"de", lower, "ẞ", "ß"},
                                           {"root", upper, "istanbul", "ISTANBUL"},
                                           {"tr", upper, "istanbul", "İSTANBUL"},
                                           {"tr", lower, "ISTANBUL", "ıstanbul"},
                                           {"tr", lower, "İSTANBUL", "istanbul"},
                                           {"tr", upper, "diyarbakır", "DİYARBAKIR"},
                                           {"az", upper, "ilin", "İLİN"},
                                           {"el", upper, "άλφα", "ΑΛΦΑ"},
                                           {"root", upper, "άλφα", "ΆΛΦΑ"},
                                           {"el", upper, "μάιος", "ΜΑΪΟΣ"},
                                           {"el", upper, "Ελλάδα", "ΕΛΛΑΔΑ"},
                                           {"el", upper, "μαΐου", "ΜΑΪΟΥ"},
                                           {"el", lower, "ΟΔΟΣ", "οδος"},
                                           {"root", lower, "ΟΔΥΣΣΕΥΣ", "οδυσσευς"},
                                           {"root", upper, "οδός", "ΟΔΌΣ"},
                                           {"nl", upper, "ijsvrij", "IJSVRIJ"},
                                           {"root", upper, "ĳs", "ĲS"},
                                           {"lt", lower, "Ì", "i\u0307\u0300"},
                                           {"root", lower, "Ì", "ì"},
                                           {"hr", upper, "džep", "DŽEP"},
                                           {"hy", upper, "և", "ԵՎ"},
                                           {"root", upper, "և", "ԵՒ"},
                                           {"root", upper, "ﬁn", "FIN"},
                                           {"root", upper, "ǰ", "J\u030C"},
                                           {"root", upper, "ñ", "Ñ"}}) {
        CAPTURE(row.locale, row.before);
        CHECK(points_of(cased(row.locale, row.letters, row.before)) == points_of(row.after));
        CHECK(cased(row.locale, LetterCase::keep, row.before) == row.before);
    }
}

TEST_CASE("a letter is what a reader sees as one, and its marks stay with it") {
    CHECK(letters_of("Jalapeño") == Texts{"J", "A", "L", "A", "P", "E", "Ñ", "O"});
    CHECK(letters_of("jalapen\u0303o") == letters_of("Jalapeño"));
    CHECK(letters_of("g\u0308a") == Texts{"G\u0308", "A"});
    // Counted by ICU 72.1: Hindi in two clusters, Tamil with a vowel sign, Thai with sara am, Hebrew with
    // points.
    CHECK(letters_of("हिन्दी").size() == 2);
    CHECK(letters_of("நி").size() == 1);
    CHECK(letters_of("กำ").size() == 1);
    CHECK(letters_of("שָׁ").size() == 1);
    CHECK(letters_of("각").size() == 1);
    CHECK(letters_of("\u1100\u1161\u11A8") == letters_of("각"));
    // The conjunct kssi, and Devanagari by aksharas: UAX #29 of version 15.0 has two clusters in the first,
    // ICU 72.1 and the version after it one.
    CHECK(letters_of("\u0915\u094D\u0937\u093F") == Texts{"\u0915\u094D\u0937\u093F"});
    // Iteration marks and small kana are letters.
    CHECK(letters_of("時々きょう") == Texts{"時", "々", "き", "ょ", "う"});
    // Digraphs are no clusters: "ch" is two letters where no alphabet says otherwise.
    CHECK(letters_of("chata") == Texts{"C", "H", "A", "T", "A"});
}

TEST_CASE("spaces, hyphens, apostrophes and punctuation are left out, digits are kept") {
    CHECK(joined(letters_of("Saint-Malo")) == "SAINTMALO");
    CHECK(joined(letters_of("lamb's ear")) == "LAMBSEAR");
    // The kashida stretches a line; it is a letter to Unicode alone.
    CHECK(letters_of("مـحـمد") == letters_of("محمد"));
    for (const char* apostrophe : {"'", "’", "‘", "`", "´", "ʼ", "ʻ", "ʹ"}) {
        CAPTURE(apostrophe);
        CHECK(joined(letters_of(std::string("O") + apostrophe + "Brien")) == "OBRIEN");
    }
    CHECK(joined(letters_of("bok – choy — (no. 7)\t\u00A0!")) == "BOKCHOYNO7");
    CHECK(joined(letters_of("L·L")) == "LL");
    CHECK(letters_of("...").empty());
}

TEST_CASE("what cannot be seen makes no other letter") {
    // U+200C and U+200D (joiners), U+200E (direction mark), U+FE0F (variation selector), U+00AD (soft
    // hyphen), U+2060 (word joiner), U+FEFF: all of Unicode's property Default_Ignorable_Code_Point.
    CHECK(letters_of("می\u200Cخواهم") == letters_of("میخواهم"));
    CHECK(letters_of("\u200Ea\u200Db\uFE0F\u00ADc\u2060\uFEFF") == Texts{"A", "B", "C"});
    CHECK(letters_of("\u200B\u200E").empty());
}

TEST_CASE("a character that can stand in no cell is told with its place in the text as it was written") {
    const auto bad = [](const std::string& text) {
        const auto spelling = segmenter_of().spell(text);
        CHECK(spelling.letters.empty());
        return std::pair{spelling.bad, spelling.bad_position};
    };
    CHECK(bad("rake☃") == std::pair{std::string("☃"), 5});
    CHECK(bad("straße € 5") == std::pair{std::string("€"), 8});
    CHECK(bad("a👨‍👩‍👧b") == std::pair{std::string("👨‍👩‍👧"), 2});
    CHECK(bad("½ tub") == std::pair{std::string("½"), 1});
    CHECK(bad("Ⅳ") == std::pair{std::string("Ⅳ"), 1});
    CHECK(bad("a+b=c") == std::pair{std::string("+"), 2});
    CHECK(bad("a\nb").second == 2);
    CHECK(bad(std::string("a\0b", 3)).second == 2);
    CHECK(bad("\u0301a").second == 1);
    CHECK(bad("a\uE000").second == 2);
    // Ill-formed bytes are U+FFFD, which is no letter.
    CHECK(bad("a\xFF"
              "b")
              .second == 2);
}

TEST_CASE("letters are the same once more: what the segmenter gives it takes") {
    for (const char* locale :
         {"root", "de", "tr", "el", "lt", "hi", "th", "ar", "he", "ka", "hy", "nl", "ko", "ja"})
        for (const LetterCase letters : {LetterCase::upper, LetterCase::lower, LetterCase::keep})
            for (const auto& letter : main_letters({locale, letters})) {
                CAPTURE(locale, letter);
                CHECK(letters_of(letter, locale, letters) == Texts{letter});
            }
}

TEST_CASE("the letters of a language are CLDR's main ones") {
    // CLDR 42's main exemplars, cased: facts of the file exemplars_icu72, which another program wrote.
    const auto letters = [](const std::string& locale, LetterCase wanted = LetterCase::upper) {
        return main_letters({locale, wanted});
    };
    Texts a_to_z_texts;
    for (char letter = 'A'; letter <= 'Z'; ++letter) a_to_z_texts.emplace_back(1, letter);
    CHECK(letters("en") == a_to_z_texts);
    CHECK(letters("en", LetterCase::lower).front() == "a");
    CHECK(letters("en-GB") == a_to_z_texts);
    CHECK(letters("en_GB") == a_to_z_texts);
    CHECK(joined(letters("hr")) == "ABCDEFGHIJKLMNOPRSTUVZĆČĐŠŽDŽLJNJ");
    CHECK(joined(letters("cs")) == "ABCDEFGHIJKLMNOPQRSTUVWXYZÁÉÍÓÚÝČĎĚŇŘŠŤŮŽCH");
    CHECK(joined(letters("hu")) == "ABCDEFGHIJKLMNOPRSTUVZÁÉÍÓÖÚÜŐŰCSDZDZSGYLYNYSZTYZS");
    // ß has no capital of its own in a word: it becomes SS.
    CHECK(joined(letters("de")) == "ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÜ");
    CHECK(joined(letters("de", LetterCase::lower)) == "abcdefghijklmnopqrstuvwxyzßäöü");
    CHECK(joined(letters("he")) == "אבגדהוזחטיךכלםמןנסעףפץצקרשת");
    CHECK(letters("root").empty());
    CHECK(letters("und").empty());
    CHECK(letters("no such").empty());
}

TEST_CASE("main letters are letters, each once, in every locale that ICU knows") {
    std::int32_t count = 0;
    const icu::Locale* locales = icu::Locale::getAvailableLocales(count);
    CHECK(count > 300);
    std::set<std::string> languages;
    for (std::int32_t at = 0; at < count; ++at) languages.insert(locales[at].getLanguage());
    for (const auto& language : languages) {
        const auto letters = main_letters({language, LetterCase::upper});
        CAPTURE(language, letters);
        CHECK(std::set<std::string>(letters.begin(), letters.end()).size() == letters.size());
        for (const auto& letter : letters)
            if (letters_of(letter, language) != Texts{letter})
                CHECK(letters_of(letter, language) == Texts{letter});
    }
}

TEST_CASE("a locale that names no language is refused") {
    for (const std::string& tag : Texts{"", "xx-yy-zz-nonsense!", "qqq", "e", "no such", "de;", "12",
                                        "C.UTF-8", std::string("en\0x", 4), std::string(5000, 'a')}) {
        CAPTURE(tag);
        const auto segmenter = Segmenter::open({tag, LetterCase::upper});
        REQUIRE_FALSE(segmenter);
        CHECK(segmenter.refusal().reason == Refusal::Reason::unusable);
        CHECK_FALSE(segmenter.refusal().advice.empty());
    }
    for (const char* tag :
         {"root", "und", "en", "en-GB", "en_US", "sr-Latn", "DE", "cy", "zh-Hant-TW", "ca-valencia"})
        CHECK(Segmenter::open({tag, LetterCase::upper}));
}

TEST_CASE("avoided words see letters without case and marks") {
    // Full case folding, then NFKD without marks: Unicode's CaseFolding.txt and UAX #15.
    for (const auto& [letter, plain] : std::vector<std::pair<std::string, std::string>>{{"É", "e"},
                                                                                        {"e\u0301", "e"},
                                                                                        {"e", "e"},
                                                                                        {"E", "e"},
                                                                                        {"Å", "a"},
                                                                                        {"ñ", "n"},
                                                                                        {"ß", "ss"},
                                                                                        {"ẞ", "ss"},
                                                                                        {"İ", "i"},
                                                                                        {"Σ", "σ"},
                                                                                        {"ς", "σ"},
                                                                                        {"ﬁ", "fi"},
                                                                                        {"Ａ", "a"},
                                                                                        {"й", "и"},
                                                                                        {"שׁ", "ש"},
                                                                                        {"ם", "מ"},
                                                                                        {"ף", "פ"},
                                                                                        {"7", "7"}}) {
        CAPTURE(letter);
        CHECK(folded(letter) == plain);
        CHECK(folded(plain) == plain);
    }
    // Plain ASCII is folded without ICU, and with a mark by it.
    for (char first = ' '; first <= '~'; ++first)
        for (char second = ' '; second <= '~'; ++second) {
            const std::string both{first, second};
            if (folded(both) != folded(both + "\u0301")) CHECK(folded(both) == folded(both + "\u0301"));
        }
    // A mark alone is not lost.
    CHECK_FALSE(folded("\u0301").empty());
}

TEST_CASE("the script of a text runs as its first letter does") {
    CHECK(is_right_to_left("שלום"));
    CHECK(is_right_to_left("«123 سلام"));
    CHECK_FALSE(is_right_to_left("garden שלום"));
    CHECK_FALSE(is_right_to_left("123"));
    CHECK_FALSE(is_right_to_left(""));
}

TEST_CASE("an alphabet numbers letters in the order in which they came") {
    Alphabet alphabet;
    CHECK(alphabet.add("LL") == 0);
    CHECK(alphabet.add("A") == 1);
    CHECK(alphabet.add("LL") == 0);
    CHECK(alphabet.add_all({"A", "B", "A"}) == Letters{1, 2, 1});
    CHECK(alphabet.size() == 3);
    CHECK(alphabet.text(2) == "B");
    CHECK(alphabet.find("B") == Letter{2});
    CHECK_FALSE(alphabet.find("L"));
    CHECK_THROWS_AS(alphabet.text(3), std::out_of_range);
}

TEST_CASE("an alphabet knows letters of a byte from each other, and from longer ones that begin so") {
    Alphabet alphabet;
    std::vector<std::string> letters;
    for (int byte = 0; byte < 256; ++byte) letters.emplace_back(1, static_cast<char>(byte));
    for (int byte = 0; byte < 256; ++byte) letters.push_back(letters[static_cast<std::size_t>(byte)] + "H");
    letters.emplace_back();
    for (std::size_t letter = 0; letter < letters.size(); ++letter) {
        CHECK_FALSE(alphabet.find(letters[letter]));
        CHECK(alphabet.add(letters[letter]) == letter);
    }
    const Alphabet copy = alphabet;
    for (std::size_t letter = 0; letter < letters.size(); ++letter) {
        CHECK(alphabet.add(letters[letter]) == letter);
        CHECK(copy.find(letters[letter]) == static_cast<Letter>(letter));
        CHECK(copy.text(static_cast<Letter>(letter)) == letters[letter]);
    }
}

TEST_CASE("an alphabet has room for 65,520 letters, none of which looks like an empty or a closed cell") {
    Alphabet alphabet;
    for (std::size_t letter = 0; letter < max_letters; ++letter) alphabet.add(std::to_string(letter));
    CHECK(alphabet.size() == 65'520);
    CHECK(alphabet.find("65519") < empty_cell);
    CHECK(alphabet.add("7") == 7);
    CHECK_THROWS_AS(alphabet.add("one more"), std::length_error);
}

TEST_CASE("the rules of spelling have names by which they are found") {
    for (const LetterCase letters : {LetterCase::upper, LetterCase::lower, LetterCase::keep})
        CHECK(letter_case_named(name(letters)) == letters);
    CHECK_FALSE(letter_case_named("Upper"));
    CHECK(digraphs_named("join") == Digraphs::join);
    CHECK(digraphs_named("split") == Digraphs::split);
    CHECK(sharp_s_named("double") == SharpS::doubled);
    CHECK(sharp_s_named("keep") == SharpS::keep);
    CHECK(marks_named("keep") == Marks::keep);
    CHECK(marks_named("strip") == Marks::strip);
    CHECK(finals_named("keep") == Finals::keep);
    CHECK(finals_named("fold") == Finals::fold);
    CHECK(name(Digraphs::split) == "split");
    CHECK(name(SharpS::doubled) == "double");
    CHECK(name(Marks::strip) == "strip");
    CHECK(name(Finals::fold) == "fold");
    CHECK_FALSE(digraphs_named("keep"));
    CHECK_FALSE(sharp_s_named("ss"));
    CHECK_FALSE(marks_named("fold"));
    CHECK_FALSE(finals_named("strip"));
}

TEST_CASE("one segmenter spells on several threads at once") {
    // Words that go the short way, the long one, and join.
    const Segmenter segmenter = segmenter_of("cy");
    const Texts words{"llongyfarchiadau", "Ban|gor", "tŷ",   "g\u0308wyll", "sgôr",
                      "'r ardd",          "chwarae", "हिन्दी"};
    std::vector<Texts> expected;
    for (const auto& word : words) expected.push_back(segmenter.spell(word).letters);
    std::atomic<long> wrong{0};
    std::vector<std::thread> threads;
    for (std::size_t thread = 0; thread < 4; ++thread)
        threads.emplace_back([&, thread] {
            for (std::size_t round = 0; round < 500; ++round) {
                const std::size_t word = (round * 3 + thread) % words.size();
                if (segmenter.spell(words[word]).letters != expected[word]) ++wrong;
                if (segmenter.readings(words[word]).front() != words[word]) ++wrong;
            }
        });
    for (auto& thread : threads) thread.join();
    CHECK(wrong == 0);
}
