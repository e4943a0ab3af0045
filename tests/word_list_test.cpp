// Lists of words: what is read, and what is refused with file, line and word.

#include <catch2/catch.hpp>

#include <letterlode/text.hpp>

#include "support/grids.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;

namespace {

std::vector<std::string> shown_in(const std::string& text) {
    std::vector<std::string> shown;
    for (const auto& word : read_word_lines(text, "beds.txt").value().words) shown.push_back(word.shown);
    return shown;
}

Refusal refused_lines(const std::string& text) {
    const auto lines = read_word_lines(text, "beds.txt");
    REQUIRE_FALSE(lines);
    return lines.refusal();
}

Refusal refused_words(const std::string& text, const std::string& locale = "root") {
    const auto list = spell(read_word_lines(text, "beds.txt").value(), segmenter_of(locale));
    REQUIRE_FALSE(list);
    CHECK(list.refusal().reason == Refusal::Reason::unusable);
    CHECK(list.refusal().source == "beds.txt");
    CHECK_FALSE(list.refusal().advice.empty());
    return list.refusal();
}

using Texts = std::vector<std::string>;

}  // namespace

TEST_CASE("a list is a word a line, without comments and blank lines") {
    CHECK(shown_in("# beds\nCarrot\n\n  Sweet pea \t\n#Leek\nKale # by the wall\n#\nBed #3\nNo.#4\n") ==
          Texts{"Carrot", "Sweet pea", "Kale", "Bed #3", "No.#4"});
    CHECK(shown_in("").empty());
    CHECK(shown_in("Carrot") == Texts{"Carrot"});
    CHECK(shown_in("\xEF\xBB\xBF"
                   "Carrot\r\nLeek\r\n") == Texts{"Carrot", "Leek"});
    CHECK(shown_in("  # indented comment\nLeek") == Texts{"Leek"});
}

TEST_CASE("words are shown in normal form C, and know their lines") {
    const auto lines = read_word_lines("\n# one\nJalapen\u0303o\n\nLeek\n", "beds.txt").value();
    CHECK(lines.source == "beds.txt");
    REQUIRE(lines.words.size() == 2);
    CHECK(lines.words[0].shown == "Jalapeño");
    CHECK(lines.words[0].line == 3);
    CHECK(lines.words[1].line == 5);
}

TEST_CASE("a list that is no UTF-8 or holds control characters is refused with every such line") {
    const Refusal bytes = refused_lines(
        "Carrot\nL\xE9"
        "ek\nKale\n\xC0\x80\n\xED\xA0\x80\n");
    CHECK(bytes.reason == Refusal::Reason::unusable);
    CHECK(bytes.source == "beds.txt");
    CHECK(bytes.line == 2);
    CHECK_THAT(bytes.message, Contains("beds.txt:2: ") && Contains("UTF-8") && Contains("beds.txt:4: ") &&
                                  Contains("beds.txt:5: "));
    CHECK_FALSE(bytes.advice.empty());

    const Refusal control = refused_lines(std::string("Carrot\nLe\0ek\nKa\x1Ble\n", 20));
    CHECK(control.line == 2);
    CHECK_THAT(control.message, Contains("beds.txt:2: ") && Contains("control") && Contains("beds.txt:3: "));
    CHECK_THAT(control.message, !Contains("\x1B"));
}

TEST_CASE("long lists of faults are told in part, and counted") {
    std::string text;
    for (int line = 0; line < 500; ++line) text += "\xFF\n";
    const Refusal refusal = refused_lines(text);
    CHECK_THAT(refusal.message,
               Contains("beds.txt:10: ") && !Contains("beds.txt:11: ") && Contains("490 more"));
}

TEST_CASE("a word is refused that is too short, holds what no cell can, or comes twice") {
    Refusal refusal = refused_words("Carrot\nX\n");
    CHECK(refusal.line == 2);
    CHECK(refusal.words == Texts{"X"});
    CHECK_THAT(refusal.message, Contains("beds.txt:2: ") && Contains("'X'") && Contains("one letter"));

    refusal = refused_words("Carrot\n'-'\n");
    CHECK_THAT(refusal.message, Contains("beds.txt:2: ") && Contains("no letter"));

    refusal = refused_words("Rake☃\n");
    CHECK_THAT(refusal.message,
               Contains("beds.txt:1: ") && Contains("'Rake☃'") && Contains("'☃'") && Contains("character 5"));
    CHECK(refusal.position == 5);

    refusal = refused_words("Saint-Malo\nLeek\nsaint malo\n");
    CHECK(refusal.line == 3);
    CHECK_THAT(refusal.message, Contains("beds.txt:3: ") && Contains("'saint malo'") &&
                                    Contains("'Saint-Malo'") && Contains("line 1"));

    refusal = refused_words("straße\nSTRASSE\n", "de");
    CHECK(refusal.line == 2);
    refused_words("άλφα\nΑΛΦΑ\n", "el");

    CHECK_THAT(refused_words("# nothing\n").message, Contains("beds.txt: ") && Contains("no word"));
}

TEST_CASE("all faulty words of a list are told at once") {
    const Refusal refusal = refused_words("X\nCarrot\nLeek\nleek\n☃☃\n");
    CHECK_THAT(refusal.message,
               Contains("beds.txt:1: ") && Contains("beds.txt:4: ") && Contains("beds.txt:5: "));
    CHECK(refusal.words == Texts{"X", "leek", "Leek", "☃☃"});
    CHECK(refusal.line == 1);
}

TEST_CASE("messages show no character that a terminal would obey, and no endless word") {
    const auto list = spell({"recipe", {{"Ra\x1B[31mke\n", 0}}}, segmenter_of());
    REQUIRE_FALSE(list);
    CHECK_THAT(list.refusal().message, Contains("'Ra<U+001B>[31mke<U+000A>'") && Contains("character 3"));
    CHECK_THAT(list.refusal().message, !Contains("\x1B"));

    const Refusal refusal = refused_words(std::string(500, 'A') + "☃");
    CHECK(refusal.message.size() < 300);
    CHECK_THAT(refusal.message, Contains("AAA...'"));
    // Cut between characters, not within one.
    CHECK(normalised(refused_words("a" + std::string(60, 'b') + "☃").message));
    std::string umlauts;
    for (int at = 0; at < 100; ++at) umlauts += "ä";
    CHECK(normalised(refused_words("x" + umlauts + "☃").message));
}

TEST_CASE("lists beyond any puzzle are refused and not worked on") {
    CHECK_THAT(refused_words(std::string(max_word_bytes + 1, 'A')).message, Contains("too long"));

    std::string many;
    for (std::size_t word = 0; word <= max_list_words; ++word) many += "a\n";
    CHECK_THAT(refused_lines(many).message, Contains("1000000 words"));

    // Different letters: two ideographs a word, from the blocks of CJK ideographs and of Hangul syllables.
    WordLines different;
    std::string word;
    const auto add = [&](unsigned point) {
        word += static_cast<char>(0xE0 | point >> 12);
        word += static_cast<char>(0x80 | (point >> 6 & 0x3F));
        word += static_cast<char>(0x80 | (point & 0x3F));
        if (word.size() == 6) different.words.push_back({std::exchange(word, {}), 0});
    };
    for (unsigned point = 0x4E00; point < 0x9FFC; ++point) add(point);
    for (unsigned point = 0xAC00; point < 0xD7A4; ++point) add(point);
    const auto list = spell(different, segmenter_of());
    REQUIRE_FALSE(list);
    CHECK_THAT(list.refusal().message, Contains("different letters"));
}

TEST_CASE("a word keeps what it shows beside its letters") {
    const auto list = spell(read_word_lines("Lamb's ear\nBok-choy\n", "").value(), segmenter_of()).value();
    REQUIRE(list.words.size() == 2);
    CHECK(list.words[0].shown == "Lamb's ear");
    CHECK(list.words[0].letters == Texts{"L", "A", "M", "B", "S", "E", "A", "R"});
    CHECK(list.words[1].line == 2);
}

TEST_CASE("places in messages name what is known of file and line") {
    CHECK(place_in("beds.txt", 7) == "beds.txt:7: ");
    CHECK(place_in("beds.txt", 0) == "beds.txt: ");
    CHECK(place_in("", 7) == "line 7: ");
    CHECK(place_in("", 0) == "");
}

TEST_CASE("a list that begins with word,band is a table of words and their bands") {
    const auto read = [](const std::string& text) {
        std::vector<std::pair<std::string, std::string>> rows;
        for (const auto& word : read_word_lines(text, "beds.csv").value().words)
            rows.emplace_back(word.shown, word.band);
        return rows;
    };
    using Rows = std::vector<std::pair<std::string, std::string>>;
    const Rows expected{{"Basil", "#f0bf72"}, {"Bay leaf", ""}, {"Mint", "none"}};
    CHECK(read("word,band\nBasil,#f0bf72\nBay leaf\nMint,none\n") == expected);
    CHECK(read("\xEF\xBB\xBF# herbs\r\n\r\nWord ; Band\r\n Basil ; #f0bf72\r\nBay leaf;\r\n\r\nMint;none") ==
          expected);
    CHECK(read("word\tband\nBasil\t#f0bf72\nBay leaf\t\nMint\tnone\n") == expected);
    CHECK(read("\"word\",\"band\"\n\"Basil\",\"#f0bf72\"\n\"Bay leaf\",\"\"\nMint,none") == expected);
    // RFC 4180, 2.6 and 2.7: separators and doubled quotes inside quotes.
    CHECK(read("word,band\n\"Bed \"\"A\"\", south\",gold\n") == Rows{{"Bed \"A\", south", "gold"}});
    // Elsewhere a comma belongs to the word.
    CHECK(read("Basil\nword,band\n") == Rows{{"Basil", ""}, {"word,band", ""}});
}

TEST_CASE("a header with other columns is no word") {
    for (const char* header : {"word,color", "Word;Colour", "word\tband\tsize", "\"word\",\"colour\""}) {
        const Refusal refusal =
            refused_lines("# beds\n" + std::string(header) + "\nBasil,green\nMint,gold\n");
        CHECK(refusal.line == 2);
        CHECK_THAT(refusal.message, Contains("other columns than word and band"));
        CHECK_THAT(refusal.advice.front(), Contains("word,band"));
    }
    CHECK(read_word_lines("words,and more\nword\n", "").value().words.size() == 2);
}

TEST_CASE("a table's faulty rows are named") {
    const Refusal three = refused_lines("word,band\nBasil,gold\nMint,red,blue\n");
    CHECK(three.line == 3);
    CHECK_THAT(three.message, Contains("more than the two fields"));
    CHECK(refused_lines("word,band\n\"Basil,gold\n").line == 2);
    CHECK(refused_lines("word,band\n\"Basil\"x,gold\n").line == 2);
}
