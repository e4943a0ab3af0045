// Grids as people write them: packed, with blanks, as a table; closed cells in every way; lists underneath.

#include <catch2/catch.hpp>

#include <letterlode/grid.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/unicode_files.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;

namespace {

const Segmenter& upper() {
    static const Segmenter segmenter = segmenter_of("root");
    return segmenter;
}

Refusal refused_grid(const std::string& text) {
    const auto grid = read_grid(text, "bed.txt", upper());
    REQUIRE_FALSE(grid);
    CHECK(grid.refusal().reason == Refusal::Reason::unusable);
    CHECK_FALSE(grid.refusal().advice.empty());
    return grid.refusal();
}

// A grid in each way to write it, `closed` being how a closed cell is written where letters stand apart.
std::string written(const LetteredGrid& grid, const std::string& between, const std::string& closed,
                    const std::string& line_end = "\n", const std::string& quote = "") {
    std::string text;
    for (int row = 0; row < grid.grid.size().rows; ++row) {
        for (int column = 0; column < grid.grid.size().columns; ++column) {
            const Letter letter = grid.grid[{row, column}];
            if (column > 0) text += between;
            text += quote + (letter == closed_cell ? closed : grid.alphabet.text(letter)) + quote;
        }
        text += line_end;
    }
    return text;
}

// Editors take blanks off the ends of lines.
std::string without_blanks_at_ends(std::string text) {
    for (auto at = text.find(" \n"); at != std::string::npos; at = text.find(" \n")) text.erase(at, 1);
    return text;
}

LetteredGrid random_grid(const Mask& mask, Random& random) {
    LetteredGrid grid{{}, Grid(mask.size(), closed_cell)};
    for (int row = 0; row < mask.size().rows; ++row)
        for (int column = 0; column < mask.size().columns; ++column)
            if (mask.open({row, column}))
                grid.grid[{row, column}] =
                    grid.alphabet.add(std::string(1, static_cast<char>('A' + random.below(26))));
    return grid;
}

std::string read_again(const std::string& text) {
    CAPTURE(text);
    const auto grid = read_grid(text, "", upper());
    if (!grid) return grid.refusal().message;
    return grid_text(grid->grid, grid->alphabet);
}

}  // namespace

TEST_CASE("a grid of any shape is read alike however its cells are set apart") {
    Random random(11);
    for (const Shape shape : all_shapes)
        for (const Size size : {Size{9, 9}, Size{10, 14}, Size{15, 11}}) {
            const LetteredGrid grid = random_grid(shape_mask(shape, size), random);
            const std::string plain = grid_text(grid.grid, grid.alphabet);
            for (const char* closed : {".", "#", "\u00B7"}) {
                CHECK(read_again(written(grid, "", closed)) == plain);
                CHECK(read_again(written(grid, " ", closed)) == plain);
                CHECK(read_again(written(grid, "   ", closed)) == plain);
                CHECK(read_again(written(grid, "; ", closed)) == plain);
            }
            for (const char* separator : {"\t", ";", ",", " , ", "\t "})
                for (const char* closed : {"", ".", " "}) {
                    CHECK(read_again(written(grid, separator, closed)) == plain);
                    CHECK(read_again("\xEF\xBB\xBF\r\n" + written(grid, separator, closed, "\r\n", "\"")) ==
                          plain);
                    // A table that begins in the second column of its sheet, or ends in separators.
                    CHECK(read_again(written(grid, separator, closed, "\n" + std::string(separator))
                                         .insert(0, separator)) == plain);
                    CHECK(read_again(written(grid, separator, closed, std::string(separator) + "\n")) ==
                          plain);
                }
            // Blanks for closed cells: packed, with a blank between, and indented.
            CHECK(read_again(written(grid, "", " ")) == plain);
            CHECK(read_again(without_blanks_at_ends(written(grid, "", " "))) == plain);
            CHECK(read_again(written(grid, " ", " ")) == plain);
            CHECK(read_again(without_blanks_at_ends(written(grid, " ", " "))) == plain);
            CHECK(read_again("   " + written(grid, "", " ", "\n   ")) == plain);
        }
}

TEST_CASE("a hole that blanks draw is closed, and a row that ends early is not") {
    CHECK(read_again("ABC\nD F\nGHI") == "A B C\nD . F\nG H I\n");
    CHECK(read_again("A B C\nD   F\nG H I") == "A B C\nD . F\nG H I\n");
    CHECK(read_again(" B\nDEF\n H") == ". B .\nD E F\n. H .\n");
    CHECK_THAT(read_again("ABC\nDE\nGHI"), Contains("row 2 has 2 cells"));
    CHECK_THAT(read_again("A B C\nD E\nG H I"), Contains("row 2 has 2 cells"));
    CHECK_THAT(read_again("A,B,C\nD,E\nG,H,I"), Contains("row 2 has 2 cells"));
}

TEST_CASE("what can be read in two ways is refused, with the row and a way out") {
    const auto refused = [](const std::string& text, int line, const std::string& fault) {
        CAPTURE(text);
        const Refusal refusal = refused_grid(text);
        CHECK(refusal.line == line);
        CHECK_THAT(refusal.message, Contains("bed.txt:" + std::to_string(line) + ": ") && Contains(fault));
    };
    refused("ABC\n DEF\nGHI", 2, "row 2: this row does not begin in the same column");
    refused("A B C\n  D E F\nG H I", 2, "row 2: this row does not begin in the same column");
    refused("A B C\nD EF\nG H I", 2, "row 2: letter 2 touches the next, and row 1 has a blank after each");
    refused("\nAB C\nDE F\n", 2, "row 1: its blanks may part letters of several characters");
    refused("A B C   D E F\nG H I   J K L\n", 1, "row 1: its wider gaps may be closed cells");
    refused("B   LL  A\nA   C   W\n", 1, "row 1: its blanks may part letters of several characters");
    refused("ABC\nD,F\nGHI", 2, "row 2, column 2 holds ','");
    refused("ABC\nD\tF\nGHI", 2, "row 2, column 2 holds '<U+0009>'");
    refused("ß A\nB C\n", 1, "row 1, column 1 holds 'ß', which is 2 letters (S S)");
    refused("A,B\nC,D!\n", 2, "row 2, column 2 holds 'D!', which is no letter");
}

TEST_CASE("text after the grid is named by its line, a second grid as one") {
    Refusal refusal = refused_grid("ABC\nDEF\n\n \nGHI\nJKL\n");
    CHECK(refusal.line == 5);
    CHECK_THAT(refusal.message, Contains("after row 2") && Contains("a second grid of 2 rows begins here"));
    CHECK_THAT(refusal.advice.front(), Contains("--words -"));
    refusal = refused_grid("A,B\nC,D\n,\nfound words: none\n");
    CHECK(refusal.line == 4);
    CHECK_THAT(refusal.message, Contains("more text follows"));
}

TEST_CASE(
    "marks of a line's direction are passed over, and letters keep the columns that they are written in") {
    CHECK(read_again("\u202D\u05D0 \u05D1\u202C\n\u202D\u05D2 \u05D3\u202C\n") ==
          read_again("\u05D1 \u05D0\n\u2066\u05D3 \u05D2\u2069\n"));
    // The first letter of a right-to-left line is its rightmost cell; a row without letters goes with the
    // others.
    const auto grid = read_grid("\u05D0\u05D1.\n..7\n", "", upper());
    REQUIRE(grid);
    CHECK(grid->grid[{0, 0}] == closed_cell);
    CHECK(grid->alphabet.text(grid->grid[{0, 2}]) == "\u05D0");
    CHECK(grid->alphabet.text(grid->grid[{1, 0}]) == "7");
    CHECK_THAT(refused_grid("AB\n\u05D0C\n").message, Contains("row 2 has letters that run from the left"));
}

TEST_CASE(
    "letters of several characters have a cell each where something parts the cells, and else blanks are "
    "asked for") {
    const Segmenter welsh = segmenter_of("cy");
    for (const char* text : {"LL A\nN LL\n", "ll;a\nn;ll\n", "LL   A\nN    LL\n"}) {
        const auto grid = read_grid(text, "", welsh);
        REQUIRE(grid);
        CHECK(grid->grid.size() == Size{2, 2});
        CHECK(grid->alphabet.text(grid->grid[{0, 0}]) == "LL");
        // As it is written, it is read again.
        const auto again = read_grid(grid_text(grid->grid, grid->alphabet), "", welsh);
        REQUIRE(again);
        CHECK(again->grid.letters() == grid->grid.letters());
    }
    const auto packed = read_grid("ABO\nLLA\n", "bed.txt", welsh);
    REQUIRE_FALSE(packed);
    CHECK(packed.refusal().line == 2);
    CHECK_THAT(packed.refusal().message, Contains("row 2 can be read in two ways: 'LL' is one letter"));
    CHECK(read_grid("ABO\nL.L\n", "", welsh));  // nothing joins across a closed cell
    // A single column has no place for blanks.
    CHECK(read_grid("LL\nCH\nDD\n", "", welsh)->grid.size() == Size{3, 1});
    const Segmenter split = std::move(Segmenter::open({"cy", LetterCase::upper, Digraphs::split})).value();
    CHECK(read_grid("ABO\nLLA\n", "", split)->grid.size() == Size{2, 3});
    CHECK(read_grid("ABO\nLLA\n", "", upper())->grid.size() == Size{2, 3});
}

TEST_CASE("words of a list are read without marks of direction") {
    const auto list = read_word_lines("\u2068\u05D2\u05DF\u2069\n\u200E\u2068\u2069\nrose\n", "w.txt");
    REQUIRE(list);
    REQUIRE(list->words.size() == 2);
    CHECK(list->words[0].shown == "\u05D2\u05DF");
    CHECK(list->words[1].shown == "rose");
    CHECK(list->words[1].line == 3);
}

TEST_CASE("a list that is printed under a grid is read with it") {
    for (const char* text :
         {"KALE\nXYZW\n\nkale\nwhite beet\n", "K,A,L,E\nX,Y,Z,W\n,,,\nkale,white beet,,\n",
          "\n\nK A L E\r\nX Y Z W\r\n\r\n\r\nkale   white beet\r\n",
          "KALE\nXYZW\n \n# find\nkale;white beet\n", "KALE\nXYZW\n\n\"kale\"\t\"white beet\"\n"}) {
        CAPTURE(text);
        const auto read = read_grid_with_list(text, "page.txt", upper());
        REQUIRE(read);
        CHECK(grid_text(read->grid.grid, read->grid.alphabet) == "K A L E\nX Y Z W\n");
        REQUIRE(read->words.words.size() == 2);
        CHECK(read->words.source == "page.txt");
        CHECK(read->words.words[0].shown == "kale");
        CHECK(read->words.words[1].shown == "white beet");
    }
    const auto read = read_grid_with_list("KALE\n\n\nkale\n\nelak\n", "page.txt", upper());
    REQUIRE(read);
    CHECK(read->words.words[0].line == 4);
    CHECK(read->words.words[1].line == 6);

    const auto refused = [](const char* text, int line, const char* fault) {
        CAPTURE(text);
        const auto none = read_grid_with_list(text, "page.txt", upper());
        REQUIRE_FALSE(none);
        CHECK(none.refusal().line == line);
        CHECK_THAT(none.refusal().message, Contains(fault));
    };
    refused("KALE\nXYZW\n\n", 2, "no list of words follows the grid");
    refused("KALE\nXYZ\n\nkale\n", 2, "row 2 has 3 cells");
    refused("KALE\n\nka\x07le\n", 3, "control character");
}

TEST_CASE("a grid drawn as text is read as it was written") {
    Random random(8);
    const std::vector<std::string> letters{"A", "É", "Ω", "א", "Ñ", "7", "क्ष"};
    for (int round = 0; round < 50; ++round) {
        const Size size{1 + static_cast<int>(random.below(9)), 2 + static_cast<int>(random.below(9))};
        LetteredGrid grid{{}, Grid(size)};
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                grid.grid[{row, column}] =
                    random.below(5) == 0
                        ? closed_cell
                        : grid.alphabet.add(
                              letters[random.below(static_cast<std::uint32_t>(letters.size()))]);
        const std::string text = grid_text(grid.grid, grid.alphabet);
        CAPTURE(text);
        const auto read = read_grid(text, "", upper());
        REQUIRE(read);
        CHECK(read->grid.size() == size);
        CHECK(grid_text(read->grid, read->alphabet) == text);
    }
}

TEST_CASE("letters of a grid may stand with blanks between or without, in either case") {
    const std::string right = grid_text(read_grid("A B C\nD E F\n", "", upper())->grid,
                                        read_grid("A B C\nD E F\n", "", upper())->alphabet);
    for (const char* text :
         {"ABC\nDEF", "abc\ndef\n", "  A B C  \n D E F", "A\tB\tC\nD\tE\tF\n", "\n\nABC\nDEF\n\n \n",
          "\xEF\xBB\xBF"
          "ABC\r\nDEF\r\n",
          "A  B C\nD E   F", "ABC \nDEF"}) {
        CAPTURE(text);
        const auto grid = read_grid(text, "", upper());
        REQUIRE(grid);
        CHECK(grid_text(grid->grid, grid->alphabet) == right);
    }
}

TEST_CASE("three marks draw a closed cell") {
    const auto grid = read_grid("A.B\n#CD\nE\u00B7F", "", upper());
    REQUIRE(grid);
    CHECK(grid->grid[{0, 1}] == closed_cell);
    CHECK(grid->grid[{1, 0}] == closed_cell);
    CHECK(grid->grid[{2, 1}] == closed_cell);
    CHECK(grid_text(grid->grid, grid->alphabet) == "A . B\n. C D\nE . F\n");
}

TEST_CASE("a grid of more different letters than an alphabet has room for is refused") {
    std::string text;
    unsigned letters = 0;
    for (const auto& [first, last] :
         {std::pair{0x4E00u, 0x9FFBu}, std::pair{0x3400u, 0x4DBEu}, std::pair{0x20000u, 0x2A6DDu}})
        for (unsigned point = first; point <= last; ++point) {
            text += utf8_of(point);
            if (++letters % 1000 == 0) text += '\n';
        }
    REQUIRE(letters > max_letters + 1000);
    text.resize(text.rfind('\n'));
    const Refusal refusal = refused_grid(text);
    CHECK_THAT(refusal.message, Contains("65520 different letters"));
    CHECK(refusal.line == 66);
}

TEST_CASE("a grid that cannot be read is refused with its file, line, row and column") {
    Refusal refusal = refused_grid("ABC\nDE\nFGH\n");
    CHECK(refusal.line == 2);
    CHECK(refusal.source == "bed.txt");
    CHECK_THAT(refusal.message,
               Contains("bed.txt:2: ") && Contains("row 2") && Contains("2 cells") && Contains("3"));

    refusal = refused_grid("\n\nABC\nD!F\n");
    CHECK(refusal.line == 4);
    CHECK_THAT(refusal.message, Contains("row 2, column 2") && Contains("'!'"));

    refusal = refused_grid("ABC\n\nDEF\n");
    CHECK(refusal.line == 3);
    CHECK_THAT(refusal.message, Contains("blank line") && Contains("after row 1"));

    refusal = refused_grid(
        "ABC\nD\xFF"
        "F\n");
    CHECK(refusal.line == 2);
    CHECK_THAT(refusal.message, Contains("UTF-8"));

    CHECK_THAT(refused_grid("").message, Contains("bed.txt: ") && Contains("nothing"));
    CHECK_THAT(refused_grid(" \n\t\n").message, Contains("nothing"));
    CHECK_THAT(refused_grid(std::string("A\0B", 3)).message, Contains("column 2"));
    CHECK_THAT(refused_grid("A\x1B[31m").message, Contains("column 2"));
    CHECK_THAT(refused_grid("A☃").message, Contains("column 2") && Contains("☃"));
    CHECK_THAT(refused_grid(std::string(20'001, 'A')).message, Contains("too large"));
}
