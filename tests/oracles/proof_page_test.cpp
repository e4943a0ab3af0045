// What a browser makes of the proof page: proof_page_judge.py drives Chromium.

#include <letterlode/art.hpp>

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "../panels.hpp"
#include "cut/proof_page.hpp"
#include "picture.hpp"

using namespace lode;
using namespace panels;

namespace {

bool judged_well(const Puzzle& puzzle, const Artwork& artwork, const std::string& heading) {
    nlohmann::json words = nlohmann::json::array();
    for (const PlacedWord& word : puzzle.words) {
        nlohmann::json cells = nlohmann::json::array();
        for (std::size_t i = 0; i < word.letters.size(); ++i) {
            const Cell cell = moved(word.placed.first, word.placed.direction, static_cast<int>(i));
            cells.push_back({cell.row + 1, cell.column + 1});
        }
        words.push_back({{"shown", word.shown},
                         {"row", word.placed.first.row + 1},
                         {"column", word.placed.first.column + 1},
                         {"cells", cells}});
    }
    const nlohmann::json expected{{"width", artwork.blank.width_mm},
                                  {"height", artwork.blank.height_mm},
                                  {"heading", heading},
                                  {"films", artwork.layers.size()},
                                  {"words", words}};
    const judge::Folder folder;
    return judge::run({"/usr/bin/python3", LODE_DATA "/../tests/oracles/proof_page_judge.py",
                       folder.write("proof.html", proof_html(artwork, puzzle)),
                       folder.write("expected.json", expected.dump())}) == 0;
}

}  // namespace

TEST_CASE("a browser shows films, sides and the key of the proof page, and prints it at true size") {
    const Puzzle puzzle = garden();
    CHECK(judged_well(puzzle, drawn(puzzle, options(Surface::second)), "The Tool Shed"));
}

TEST_CASE("a browser runs nothing that a word or a heading holds") {
    Puzzle puzzle = garden();
    puzzle.words[0].shown = "<script>document.title = 'LEEK'</script>";
    puzzle.words[1].shown = "\"><img src=\"x.png\" onerror=\"document.title = 'MINT'\"> &amp;";
    puzzle.words[2].shown = "Tomato; with a name so long that it must be broken: " + std::string(200, 'o');
    const std::string heading = "<b>Beds</b> & 'Borders'";
    ArtworkOptions wanted = options(Surface::first, heading);
    wanted.blank = rectangle(406.4, 203.2);
    CHECK(judged_well(puzzle, drawn(puzzle, wanted), heading));
}

TEST_CASE("words in all eight directions have their letters in their rings") {
    using enum Direction;
    const Puzzle puzzle = of_rows({"ABCDE", "FGHIJ", "KLMNO", "PQRST", "UVWXY"}, {{"MNO", 2, 2, right},
                                                                                  {"MRW", 2, 2, down},
                                                                                  {"MSY", 2, 2, down_right},
                                                                                  {"MIE", 2, 2, up_right},
                                                                                  {"MLK", 2, 2, left},
                                                                                  {"MHC", 2, 2, up},
                                                                                  {"MGA", 2, 2, up_left},
                                                                                  {"MQU", 2, 2, down_left}});
    ArtworkOptions wanted = options(Surface::second, "");
    wanted.band = BandKind::none;
    CHECK(judged_well(puzzle, drawn(puzzle, wanted), "Word grid"));
}
