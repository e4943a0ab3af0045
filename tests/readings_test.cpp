// Avoided words stand nowhere, whichever of their letters are joined.

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include <letterlode/puzzle.hpp>

#include "support/grids.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Texts = std::vector<std::string>;

namespace {

// Each reading as its letters, parted by blanks, without case and marks.
std::set<std::string> ways(const std::string& word, const TextRules& rules) {
    const auto segmenter = Segmenter::open(rules).value();
    std::set<std::string> all;
    for (const auto& reading : segmenter.readings(word)) {
        const auto spelling = segmenter.spell(reading);
        CHECK(spelling.bad == "");
        std::string letters;
        for (const auto& letter : spelling.letters) (letters += letters.empty() ? "" : " ") += folded(letter);
        all.insert(letters);
    }
    return all;
}

std::set<std::string> ways(const std::string& word, const std::string& locale) {
    return ways(word, TextRules{locale});
}

Audit audit_of(const std::string& grid, const Recipe& recipe) {
    return audit(read_grid(grid, "", Segmenter::open(recipe.text).value()).value(), recipe).value();
}

Recipe welsh(const Texts& avoided) {
    Recipe recipe = recipe_of({"llong", "rhosyn"});
    recipe.text.locale = "cy";
    recipe.avoid = avoided;
    return recipe;
}

}  // namespace

TEST_CASE("a word has a reading for every way to join its letters") {
    CHECK(ways("chwd", "cy") == std::set<std::string>{"ch w d", "c h w d"});
    CHECK(ways("c|hwd", "cy") == ways("chwd", "cy"));
    CHECK(ways("c hwd", "cy") == ways("chwd", "cy"));
    CHECK(ways("chwll", "cy") == std::set<std::string>{"ch w ll", "c h w ll", "ch w l l", "c h w l l"});
    CHECK(ways("asszo", "hu") == std::set<std::string>{"a ssz o", "a s sz o", "a s s z o"});
    CHECK(ways("lll", "cy") == std::set<std::string>{"ll l", "l ll", "l l l"});
    // Marks do not count, so dz and dž are one here.
    CHECK(ways("dzep", "hr") == std::set<std::string>{"dz e p", "d z e p"});
    CHECK(ways("džep", "hr") == ways("dzep", "hr"));
    CHECK(ways("o'zbek", "uz") == std::set<std::string>{"oʻ z b e k", "o z b e k"});
    CHECK(ways("ijs", "nl") == std::set<std::string>{"ij s", "i j s"});
}

TEST_CASE("a word has one reading where its language joins nothing in it") {
    CHECK(segmenter_of("en").readings("chwd") == Texts{"chwd"});
    CHECK(segmenter_of("cy").readings("café") == Texts{"café"});
    CHECK(Segmenter::open({"cy", LetterCase::upper, Digraphs::split}).value().readings("chwd") ==
          Texts{"chwd"});
    CHECK(segmenter_of("cy").readings("") == Texts{""});
}

TEST_CASE("a sharp s that has one cell is read as two letters too") {
    TextRules rules{"de"};
    CHECK(ways("Masse", rules) == std::set<std::string>{"m a s s e"});
    rules.sharp_s = SharpS::keep;
    CHECK(ways("Masse", rules) == std::set<std::string>{"m a s s e", "m a ss e"});
    CHECK(ways("Maße", rules) == ways("Masse", rules));
    rules = {"de", LetterCase::lower};
    CHECK(ways("Maße", rules) == std::set<std::string>{"m a s s e", "m a ss e"});
}

TEST_CASE("of very many readings so many are given, and the split one; a very long word takes no more time") {
    const auto segmenter = segmenter_of("cy");
    std::string word;
    for (int pair = 0; pair < 10; ++pair) word += "ch";
    const auto readings = segmenter.readings(word);
    CHECK(readings.size() == 66);
    CHECK(segmenter.spell(readings.back()).letters.size() == 20);
    CHECK(segmenter.readings(word, 0).size() == 2);
    CHECK(segmenter.readings(word, 2'000).size() == 1'026);
    while (word.size() < 100'000) word += word;
    CHECK(segmenter.readings(word).size() == 66);
}

TEST_CASE("an avoided word is found whether its letters have one cell or two") {
    const Recipe recipe = welsh({"chwd"});
    const std::string words = "LL O NG . . .\nRH O S Y N .\n";
    CHECK(audit_of(words, recipe).certified);
    for (const char* row :
         {"CH W D E E E\n", "C H W D E E\n", "c h W d E E\n", "E D W CH E E\n", "E E D W H C\n"}) {
        CAPTURE(row);
        const Audit audit = audit_of(words + row, recipe);
        CHECK_FALSE(audit.certified);
        REQUIRE(audit.avoided.size() == 1);
        CHECK(audit.avoided.front().word == "chwd");
    }
    // Allowed, it may stand in either way, however it is written.
    Recipe allowing = recipe;
    allowing.allow = {"CHWD"};
    for (const char* row : {"CH W D E E E\n", "C H W D E E\n"}) {
        const Audit audit = audit_of(words + row, allowing);
        CHECK(audit.certified);
        REQUIRE(audit.allowed.size() == 1);
        CHECK(audit.allowed.front().word == "chwd");
    }
}

TEST_CASE("final letters do not hide an avoided word") {
    Recipe recipe = recipe_of({"גינה"});
    recipe.text.locale = "he";
    recipe.avoid = {"שלום"};
    for (const char* row : {"ש ל ו ם\n", "ש ל ו מ\n"}) {
        CAPTURE(row);
        CHECK(audit_of(std::string("ג י נ ה\n") + row, recipe).avoided.size() == 1);
    }
}

TEST_CASE("a listed word that holds an avoided one in another reading is refused") {
    // "ffcho" holds "fch" where CH is joined; the list parts c and h.
    Recipe recipe = welsh({"fch"});
    recipe.words = list_of({"efc|ho", "llong"});
    const auto made = make(recipe);
    REQUIRE_FALSE(made);
    CHECK(made.refusal().reason == Refusal::Reason::unusable);
    CHECK(made.refusal().words == Texts{"efcho", "fch"});
    recipe.allow = {"fch"};
    CHECK(make(recipe));
}

TEST_CASE("no puzzle holds an avoided word in any reading") {
    // Few letters, so that filler would soon spell it.
    long looked_at = 0;
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
        Recipe recipe = recipe_of({"call", "halo"}, Size{7, 7}, seed);
        recipe.text.locale = "cy";
        recipe.avoid = {"cha"};
        const Puzzle puzzle = make(recipe).value();
        const Grid& grid = puzzle.grid.grid;
        const auto text = [&](Cell cell) { return puzzle.grid.alphabet.text(grid[cell]); };
        for (int row = 0; row < 7; ++row)
            for (int column = 0; column < 7; ++column)
                for (const Direction direction : all_directions) {
                    std::string read = text({row, column});
                    for (int step = 1; step < 3; ++step) {
                        const Cell next = moved({row, column}, direction, step);
                        if (!grid.inside(next)) break;
                        read += text(next);
                        ++looked_at;
                        if (read == "CHA") CHECK(read != "CHA");
                    }
                }
    }
    CHECK(looked_at > 10'000);
}
