// What a browser makes of the page to solve a puzzle on: solve_page_judge.py drives Chromium.

#include <letterlode/print.hpp>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "../panels.hpp"
#include "../support/made.hpp"
#include "picture.hpp"

using namespace lode;
using namespace panels;

namespace {

using Json = nlohmann::json;

Json expected_of(const Worksheet& sheet, const PrintOptions& options) {
    const Puzzle& puzzle = sheet.puzzle;
    Json cells = Json::array();
    const auto [rows, columns] = puzzle.grid.grid.size();
    for (int row = 0; row < rows; ++row) {
        cells.push_back(Json::array());
        for (int column = 0; column < columns; ++column) {
            const Letter letter = puzzle.grid.grid[{row, column}];
            cells.back().push_back(letter == closed_cell ? Json() : Json(puzzle.grid.alphabet.text(letter)));
        }
    }
    Json words = Json::array();
    for (const PlacedWord& word : listed(puzzle, options.order)) {
        const Cell by = step(word.placed.direction);
        words.push_back({{"shown", word.shown},
                         {"letters", word.letters},
                         {"row", word.placed.first.row},
                         {"column", word.placed.first.column},
                         {"down", by.row},
                         {"across", by.column}});
    }
    const std::string& locale = puzzle.recipe.text.locale;
    return {{"title", sheet.title},
            {"lang", locale == "root" ? "" : locale},
            {"right_to_left", locale == "he" || locale == "ar"},
            {"key", options.key},
            {"cells", cells},
            {"words", words}};
}

bool judged_well(const Worksheet& sheet, const PrintOptions& options = {}) {
    const judge::Folder folder;
    return judge::run({"/usr/bin/python3", LODE_DATA "/../tests/oracles/solve_page_judge.py",
                       folder.write("puzzle.html", solve_page(sheet, options)),
                       folder.write("expected.json", expected_of(sheet, options).dump())}) == 0;
}

Puzzle made_of(const std::vector<std::string>& words, const std::string& locale, Size size,
               Directions directions = Directions::all()) {
    Recipe recipe;
    for (const std::string& word : words) recipe.words.words.push_back({word});
    recipe.text.locale = locale;
    recipe.size = size;
    recipe.directions = directions;
    return test::made(recipe);
}

}  // namespace

TEST_CASE("a puzzle is solved by mouse, finger and keyboard, and printed") {
    CHECK(judged_well({garden(), "Wrenbarrow garden"}));
}

TEST_CASE("a page without a key knows no places and is solved all the same") {
    PrintOptions options;
    options.key = false;
    options.order = ListOrder::length;
    options.colours = {{0xFF, 0xD7, 0x00}, {0x00, 0x00, 0x80}};
    CHECK(judged_well({garden(), "Wrenbarrow closed"}, options));
}

TEST_CASE("nested words, words turned round and palindromes are found in a grid with gaps") {
    using enum Direction;
    const Puzzle puzzle = of_rows({"..ANNE..",  //
                                   ".QSTARX.",  //
                                   "LEVELJKP",  //
                                   "MINT.BEE",  //
                                   "WUZD.FGA"},
                                  {{"ANNE", 0, 2, right},
                                   {"ANN", 0, 2, right},
                                   {"STAR", 1, 2, right},
                                   {"RATS", 1, 5, left},
                                   {"LEVEL", 2, 0, right},
                                   {"MINT", 3, 0, right},
                                   {"PEA", 2, 7, down},
                                   {"BEE", 3, 5, right}});
    CHECK(judged_well({puzzle, "Wrenbarrow gaps"}));
}

TEST_CASE("a browser runs nothing that a word, a letter or a title holds") {
    Puzzle puzzle = garden();
    puzzle.words[0].shown = "<script>document.title = 'LEEK'</script>";
    puzzle.words[1].shown = "\"><img src=\"x.png\" onerror=\"document.title = 'MINT'\"> &amp;";
    puzzle.words[2].shown = "Tomato; with a name so long that it must be broken: " + std::string(100, 'o');
    CHECK(judged_well({puzzle, "</title><b>Beds</b> & 'Borders'", "\"A\""}));
}

TEST_CASE("letters of several characters are found in Welsh") {
    CHECK(judged_well({made_of({"llysiau", "gardd", "rhosyn", "nyth", "cennin", "mefus", "llwybr", "buddug"},
                               "cy", {9, 10}),
                       "Gardd Wrenbarrow"}));
}

TEST_CASE("words are found that run from right to left") {
    CHECK(judged_well(
        {made_of({"שלום", "תפוח", "גינה", "פרחים", "מלפפון", "גזר"}, "he", {8, 9}, Directions::forward(true)),
         "גינה"}));
}

TEST_CASE("a large grid keeps usable on a small screen") {
    CHECK(judged_well({made_of({"Blossom", "Bumblebee", "Compost", "Earthworm", "Harvest", "Hedgehog",
                                "Ladybird", "Mulch", "Nectar", "Petal", "Pollen", "Raindrop"},
                               "en", {40, 40}),
                       "Wrenbarrow field"}));
}
