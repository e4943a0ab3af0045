// Letters of several characters: what a language's alphabet joins, and what parts them again.

#include <catch2/catch.hpp>

#include <letterlode/puzzle.hpp>

#include "support/grids.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Texts = std::vector<std::string>;

namespace {

Texts spelled(const std::string& text, const TextRules& rules) {
    const auto spelling = Segmenter::open(rules).value().spell(text);
    CHECK(spelling.bad == "");
    return spelling.letters;
}

Texts in(const std::string& locale, const std::string& text) {
    return spelled(text, {locale});
}

bool has(const Texts& letters, const std::string& letter) {
    return std::find(letters.begin(), letters.end(), letter) != letters.end();
}

}  // namespace

TEST_CASE("a cell holds one letter of the language's alphabet") {
    // CLDR 42, main exemplars; the words are common ones of each language.
    CHECK(in("cy", "llongyfarchiadau") ==
          Texts{"LL", "O", "NG", "Y", "F", "A", "R", "CH", "I", "A", "D", "A", "U"});
    CHECK(in("cs", "chata") == Texts{"CH", "A", "T", "A"});
    CHECK(in("sk", "džbán") == Texts{"DŽ", "B", "Á", "N"});
    CHECK(in("hr", "ljepota") == Texts{"LJ", "E", "P", "O", "T", "A"});
    CHECK(in("sr-Latn", "njiva") == Texts{"NJ", "I", "V", "A"});
    CHECK(in("sq", "shqip") == Texts{"SH", "Q", "I", "P"});
    CHECK(in("mt", "għasel") == Texts{"GĦ", "A", "S", "E", "L"});
    CHECK(in("nl", "ijsvrij") == Texts{"IJ", "S", "V", "R", "IJ"});
    CHECK(in("be", "дзень") == Texts{"ДЗ", "Е", "Н", "Ь"});
    // Spanish has had no letters of two characters since 1994, and English none.
    CHECK(in("es", "llama") == Texts{"L", "L", "A", "M", "A"});
    CHECK(in("en", "chill") == Texts{"C", "H", "I", "L", "L"});
    CHECK(in("root", "llong") == Texts{"L", "L", "O", "N", "G"});
    CHECK(in("cy-GB", "lloer") == Texts{"LL", "O", "E", "R"});
}

TEST_CASE("letters join whatever their case, and stay as they are written where case is kept") {
    CHECK(spelled("LLong", {"cy", LetterCase::lower}) == Texts{"ll", "o", "ng"});
    CHECK(spelled("LlonG", {"cy", LetterCase::keep}) == Texts{"Ll", "o", "nG"});
    CHECK(spelled("llO", {"cy", LetterCase::keep}) == Texts{"ll", "O"});
    CHECK(spelled("DŽdžDž", {"hr", LetterCase::keep}) == Texts{"DŽ", "dž", "Dž"});
    CHECK(in("hr", "DZ\u030Cep") == Texts{"DŽ", "E", "P"});
}

TEST_CASE("the longest letter wins, from the first on") {
    CHECK(in("hu", "lándzsa") == Texts{"L", "Á", "N", "DZS", "A"});
    CHECK(in("hu", "edz") == Texts{"E", "DZ"});
    CHECK(in("hu", "dzszs") == Texts{"DZS", "ZS"});
    CHECK(in("zu", "intshontsho") == Texts{"I", "NTSH", "O", "NTSH", "O"});
    // Three in a row: the first two join.
    CHECK(in("cy", "lll") == Texts{"LL", "L"});
}

TEST_CASE("a Hungarian letter that is written longer for a long sound has one cell, and is no filler") {
    CHECK(in("hu", "asszony") == Texts{"A", "SSZ", "O", "NY"});
    CHECK(in("hu", "meggy") == Texts{"M", "E", "GGY"});
    CHECK(in("hu", "eddzsel") == Texts{"E", "DDZS", "E", "L"});
    // Where a compound's parts meet, a bar says so.
    CHECK(in("hu", "vas|szeg") == Texts{"V", "A", "S", "SZ", "E", "G"});
    const auto letters = main_letters({"hu"});
    for (const char* letter : {"CS", "DZ", "DZS", "GY", "LY", "NY", "SZ", "TY", "ZS"})
        CHECK(has(letters, letter));
    for (const char* letter : {"CCS", "DDZ", "DDZS", "GGY", "LLY", "NNY", "SSZ", "TTY", "ZZS"})
        CHECK_FALSE(has(letters, letter));
}

TEST_CASE("Dutch IJ is one letter, as two characters or as one, and with accents") {
    CHECK(in("nl", "ĳzer") == Texts{"IJ", "Z", "E", "R"});
    CHECK(in("nl", "Ĳzer") == in("nl", "IJzer"));
    CHECK(in("nl", "bíj\u0301na") == Texts{"B", "ÍJ\u0301", "N", "A"});
    CHECK(spelled("ĳs", {"nl", LetterCase::lower}) == Texts{"ij", "s"});
    CHECK(spelled("ĳs", {"nl", LetterCase::upper, Digraphs::split}) == Texts{"I", "J", "S"});
    CHECK(in("en", "ĳs") == Texts{"Ĳ", "S"});
    // Likewise the characters that Unicode has for Croatian pairs.
    CHECK(in("hr", "ǆep") == in("hr", "džep"));
    CHECK(spelled("ǅep", {"hr", LetterCase::keep}) == Texts{"Dž", "e", "p"});
    CHECK(in("hr", "ǉ") == Texts{"LJ"});
    CHECK(in("en", "ǆ") == Texts{"Ǆ"});
}

TEST_CASE("an apostrophe that belongs to a letter stays with it, however it is typed") {
    for (const char* apostrophe : {"'", "’", "‘", "`", "ʼ", "ʻ"}) {
        CAPTURE(apostrophe);
        CHECK(in("uz", std::string("O") + apostrophe + "zbek") == Texts{"Oʻ", "Z", "B", "E", "K"});
        CHECK(in("br", std::string("c") + apostrophe + "hoar") == Texts{"CʼH", "O", "A", "R"});
        CHECK(in("cy", std::string("o") + apostrophe + "r") == Texts{"O", "R"});
        CHECK(in("uz", std::string("san") + apostrophe + "at") == Texts{"S", "A", "N", "A", "T"});
    }
    CHECK(has(main_letters({"uz"}), "Gʻ"));
    CHECK(has(main_letters({"br"}), "CʼH"));
}

TEST_CASE("a bar parts letters, and is neither shown nor hidden") {
    CHECK(in("cy", "Ban|gor") == Texts{"B", "A", "N", "G", "O", "R"});
    CHECK(in("cy", "Bangor") == Texts{"B", "A", "NG", "O", "R"});
    CHECK(in("nl", "bi|joux") == Texts{"B", "I", "J", "O", "U", "X"});
    CHECK(in("root", "|a||b|") == Texts{"A", "B"});
    CHECK(in("el", "ά|λφα") == Texts{"Α", "Λ", "Φ", "Α"});
    CHECK(in("hi", "\u0915\u094D|\u0937\u093F") == Texts{"\u0915\u094D", "\u0937\u093F"});
    // Casing does not see it: a sigma before a bar ends no word.
    CHECK(spelled("ΟΔΟΣ|Α", {"el", LetterCase::lower}) == spelled("ΟΔΟΣΑ", {"el", LetterCase::lower}));
    CHECK(spelled("ΟΔΟΣ|", {"el", LetterCase::lower}).back() == "ς");
    // What cannot be seen is no bar, with a bar beside it or without.
    CHECK(in("cy", "n\u2060g") == Texts{"NG"});
    CHECK(in("cy", "n\u200Cg") == Texts{"NG"});
    CHECK(in("cy", "a|bn\u2060g") == Texts{"A", "B", "NG"});
    // A mark cannot stand on one.
    CHECK(segmenter_of().spell("a|\u0301b").bad_position == 2);

    const auto list = spell(read_word_lines("Ban|gor\nllong\n", "").value(), segmenter_of("cy")).value();
    CHECK(list.words[0].shown == "Bangor");
    CHECK(list.words[0].letters == Texts{"B", "A", "N", "G", "O", "R"});
    CHECK(list.words[1].shown == "llong");
    CHECK(without_bars("|Ban||gor|") == "Bangor");
}

TEST_CASE("blanks, hyphens and punctuation part letters too") {
    CHECK(in("cy", "Llan-gadog") == Texts{"LL", "A", "N", "G", "A", "D", "O", "G"});
    CHECK(in("cy", "mab d da") == Texts{"M", "A", "B", "D", "D", "A"});
    CHECK(in("nl", "mini-jurk") == Texts{"M", "I", "N", "I", "J", "U", "R", "K"});
    CHECK(in("cy", "d'd") == Texts{"D", "D"});
}

TEST_CASE("split puts a character into each cell, in words and in the alphabet") {
    const TextRules split{"cy", LetterCase::upper, Digraphs::split};
    CHECK(spelled("llong", split) == Texts{"L", "L", "O", "N", "G"});
    for (const auto& letter : main_letters(split)) CHECK(has(main_letters({"cy"}), letter));
    CHECK_FALSE(has(main_letters(split), "LL"));
    CHECK(main_letters(split).size() + 8 == main_letters({"cy"}).size());
    CHECK(spelled("asszony", {"hu", LetterCase::upper, Digraphs::split}).size() == 7);
}

TEST_CASE("a word with a bar is shown without it, pinned with it, and keeps its place in a new puzzle") {
    Recipe recipe = recipe_of({"Ban|gor", "llong", "chwarae"}, Size{8, 8});
    recipe.text.locale = "cy";
    recipe.pins = {{"Ban|gor", {{0, 0}, Direction::right}}};
    const Puzzle puzzle = make(recipe).value();
    CHECK(puzzle.words[0].shown == "Bangor");
    CHECK(puzzle.words[0].placed == Placement{{0, 0}, Direction::right});
    CHECK(puzzle_text(puzzle).find("\nBangor\n") != std::string::npos);
    CHECK(puzzle_text(puzzle).find('|') == std::string::npos);
    CHECK(key_text(puzzle).find('|') == std::string::npos);
    CHECK(audit_text(puzzle.audit).find('|') == std::string::npos);

    Recipe again = recipe_of({"Ban|gor", "llong", "chwarae"}, Size{8, 8}, 2);
    again.text.locale = "cy";
    again.earlier = earlier_of(puzzle, false);
    CHECK(make(again).value().words[0].placed == puzzle.words[0].placed);
}

TEST_CASE("a grid with wide letters stands in columns") {
    Recipe recipe = recipe_of({"llong", "chwarae", "rhosyn"}, Size{8, 8});
    recipe.text.locale = "cy";
    const Puzzle puzzle = make(recipe).value();
    const std::string text = grid_text(puzzle.grid.grid, puzzle.grid.alphabet);
    const auto read = read_grid(text, "", segmenter_of("cy")).value();
    CHECK(grid_text(read.grid, read.alphabet) == text);
    CHECK(audit(read, recipe).value().certified);
    // Every column begins at the same place of each line.
    std::string rest = text;
    while (!rest.empty()) {
        const auto end = rest.find('\n');
        const std::string line = rest.substr(0, end);
        rest.erase(0, end + 1);
        const Texts clusters = segmenter_of("cy").clusters(line);
        for (std::size_t column = 0; column < 8; ++column) {
            CHECK(clusters.at(3 * column) != " ");
            if (column > 0) CHECK(clusters.at(3 * column - 1) == " ");
        }
    }
    CHECK(grid_text(lettered({"AB", "C."}).grid, a_to_z()) == "A B\nC .\n");
}
