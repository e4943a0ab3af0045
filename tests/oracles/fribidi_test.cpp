// How an editor or a terminal shows what is printed, by GNU FriBidi, an implementation of Unicode's
// bidirectional algorithm (UAX #9) that this project did not write.

#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

#include <fribidi.h>
#include <letterlode/puzzle.hpp>

#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/recipes.hpp"
#include "text/direction.hpp"

using namespace lode;
using namespace lode::test;
using Texts = std::vector<std::string>;

namespace {

// What stands on the screen from left to right, without invisible characters, in a paragraph that takes its
// direction from its text or has one given.
std::string seen(const std::string& line, FriBidiParType direction) {
    std::vector<FriBidiChar> characters(line.size() + 1);
    const auto length = fribidi_charset_to_unicode(
        FRIBIDI_CHAR_SET_UTF8, line.c_str(), static_cast<FriBidiStrIndex>(line.size()), characters.data());
    // Without shaping, which gives each Arabic letter the character of its isolated form.
    std::vector<FriBidiCharType> types(characters.size());
    std::vector<FriBidiLevel> levels(characters.size());
    fribidi_get_bidi_types(characters.data(), length, types.data());
    REQUIRE(fribidi_get_par_embedding_levels_ex(types.data(), nullptr, length, &direction, levels.data()) >
            0);
    REQUIRE(fribidi_reorder_line(FRIBIDI_FLAGS_DEFAULT, types.data(), length, 0, direction, levels.data(),
                                 characters.data(), nullptr) > 0);
    const auto left = fribidi_remove_bidi_marks(characters.data(), length, nullptr, nullptr, nullptr);
    std::vector<char> bytes(static_cast<std::size_t>(left) * 6 + 1);
    fribidi_unicode_to_charset(FRIBIDI_CHAR_SET_UTF8, characters.data(), left, bytes.data());
    return bytes.data();
}

Texts lines_of(const std::string& text) {
    std::istringstream all(text);
    Texts lines;
    for (std::string line; std::getline(all, line);) lines.push_back(line);
    return lines;
}

std::string row_of(const LetteredGrid& grid, int row) {
    std::string text;
    for (int column = 0; column < grid.grid.size().columns; ++column) {
        const Letter letter = grid.grid[{row, column}];
        text +=
            (column > 0 ? " " : "") + (letter == closed_cell ? std::string(".") : grid.alphabet.text(letter));
    }
    return text;
}

constexpr FriBidiParType paragraphs[] = {FRIBIDI_PAR_ON, FRIBIDI_PAR_LTR, FRIBIDI_PAR_RTL};

}  // namespace

TEST_CASE("without its marks a row of Hebrew letters would be turned round") {
    CHECK(seen("א ב ג", FRIBIDI_PAR_ON) == "ג ב א");
    CHECK(seen(in_columns("א ב ג"), FRIBIDI_PAR_ON) == "א ב ג");
    CHECK(in_columns("A B C . É") == "A B C . É");
    CHECK(isolated("Saint-Malo") == "Saint-Malo");
    CHECK(from_the_left("row 1") == "row 1");
    // Arabic digits turn the blanks between them round too.
    CHECK(seen("\u0661 \u0662", FRIBIDI_PAR_RTL) != "\u0661 \u0662");
    CHECK(seen(in_columns("\u0661 \u0662"), FRIBIDI_PAR_RTL) == "\u0661 \u0662");
}

TEST_CASE("every row of a grid is seen as it is cut, in a paragraph of any direction") {
    Random random(6);
    const Texts letters{"א", "ם", "ש", "ب", "م", "ء", "A", "É", "7", "٣", "۵", "LL", "ܐ", "ނ", "Ω"};
    for (int round = 0; round < 200; ++round) {
        const Size size{1 + static_cast<int>(random.below(4)), 2 + static_cast<int>(random.below(12))};
        // Some grids have a few of the letters alone.
        const auto some = 1 + random.below(static_cast<std::uint32_t>(letters.size()));
        LetteredGrid grid{{}, Grid(size)};
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column)
                grid.grid[{row, column}] =
                    random.below(6) == 0 ? closed_cell : grid.alphabet.add(letters[random.below(some)]);
        const auto lines = lines_of(grid_text(grid.grid, grid.alphabet));
        REQUIRE(lines.size() == static_cast<std::size_t>(size.rows));
        for (int row = 0; row < size.rows; ++row)
            for (const FriBidiParType direction : paragraphs) {
                const std::string& line = lines[static_cast<std::size_t>(row)];
                const bool has_marks = line.find("\u202D") != std::string::npos;
                // A line without marks has no right-to-left character: it stands as any English line does.
                if (!has_marks && direction == FRIBIDI_PAR_RTL) continue;
                std::string shown = seen(line, direction);
                std::string expected = row_of(grid, row);
                // Blanks may be more, where a letter is wide.
                for (std::string* text : {&shown, &expected})
                    text->erase(std::unique(text->begin(), text->end(),
                                            [](char a, char b) { return a == ' ' && b == ' '; }),
                                text->end());
                CAPTURE(line, direction);
                CHECK(shown == expected);
            }
    }
}

TEST_CASE("puzzles in Hebrew, Arabic and Persian are printed as they are cut, and read again") {
    const std::vector<std::pair<std::string, Texts>> lists{
        {"he", {"שלום", "גינה", "עץ תפוח", "פרחים"}},
        {"ar", {"حديقة", "زهرة", "شجرة", "ماء"}},
        {"fa", {"باغچه", "می‌کارم", "گل سرخ", "پروانه"}}};
    for (const auto& [locale, words] : lists) {
        CAPTURE(locale);
        Recipe recipe = recipe_of(words);
        recipe.text.locale = locale;
        recipe.directions.reset();
        const Puzzle puzzle = make(recipe).value();
        const auto lines = lines_of(puzzle_text(puzzle));
        for (int row = 0; row < puzzle.grid.grid.size().rows; ++row)
            CHECK(seen(lines.at(static_cast<std::size_t>(row)), FRIBIDI_PAR_ON) == row_of(puzzle.grid, row));
        const auto read = read_grid(grid_text(puzzle.grid.grid, puzzle.grid.alphabet), "",
                                    Segmenter::open(recipe.text).value());
        REQUIRE(read);
        CHECK(audit(*read, recipe).value().certified);

        // In the key the word stands first, at the left, in its own direction, and what follows is English.
        const auto key = lines_of(key_text(puzzle));
        for (std::size_t word = 0; word < words.size(); ++word) {
            const std::string alone = seen(words[word], FRIBIDI_PAR_ON);
            const std::string line = seen(key.at(word), FRIBIDI_PAR_ON);
            CHECK(line.starts_with(alone + " "));
            CHECK(line.find("row " + std::to_string(puzzle.words[word].placed.first.row + 1) + ", column ") !=
                  std::string::npos);
        }
    }
}
