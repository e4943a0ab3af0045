// How often letters come in the filler, against published counts and by the rules of statistics.

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include <catch2/catch.hpp>

#include "fill/letter_draw.hpp"
#include "puzzle/job.hpp"
#include "puzzle/letter_shapes.hpp"
#include "support/naive.hpp"
#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;

namespace {

struct Published {
    char letter;
    double norvig;  // percent of the letters, "English Letter Frequency Counts", norvig.com/mayzner.html
    double lewand;  // percent, Lewand, Cryptological Mathematics, Mathematical Association of America, 2000
};
constexpr std::array<Published, 26> english{
    {{'A', 8.040, 8.167},   {'B', 1.484, 1.492}, {'C', 3.345, 2.782}, {'D', 3.816, 4.253},
     {'E', 12.493, 12.702}, {'F', 2.402, 2.228}, {'G', 1.869, 2.015}, {'H', 5.054, 6.094},
     {'I', 7.568, 6.966},   {'J', 0.160, 0.153}, {'K', 0.542, 0.772}, {'L', 4.069, 4.025},
     {'M', 2.512, 2.406},   {'N', 7.234, 6.749}, {'O', 7.641, 7.507}, {'P', 2.135, 1.929},
     {'Q', 0.121, 0.095},   {'R', 6.280, 5.987}, {'S', 6.513, 6.327}, {'T', 9.274, 9.056},
     {'U', 2.730, 2.758},   {'V', 1.052, 0.978}, {'W', 1.675, 2.361}, {'X', 0.236, 0.15},
     {'Y', 1.664, 1.974},   {'Z', 0.090, 0.074}}};

const std::vector<std::string> garden{"Thyme", "Parsley", "Beans", "Radish", "Marrow"};

Recipe recipe_by(FillerWay way, const std::vector<std::string>& words = garden) {
    Recipe recipe = recipe_of(words);
    recipe.text.locale = "en";
    recipe.filler = way;
    return recipe;
}

// By letter, its share of all weights in percent.
std::map<std::string, double> shares(const Recipe& recipe) {
    const auto job = check(recipe);
    REQUIRE(job);
    double all = 0;
    for (const auto weight : job->filler_weights) all += weight;
    std::map<std::string, double> by_letter;
    for (std::size_t letter = 0; letter < job->filler_weights.size(); ++letter)
        if (job->filler_weights[letter] > 0)
            by_letter[job->alphabet.text(static_cast<Letter>(letter))] =
                100 * job->filler_weights[letter] / all;
    return by_letter;
}

std::string text_of(const Puzzle& puzzle, Cell cell) {
    return puzzle.grid.alphabet.text(puzzle.grid.grid[cell]);
}

// The grid as it was before it was filled.
Grid placed_of(const Puzzle& puzzle) {
    Grid grid = puzzle.grid.grid;
    Grid placed(grid.size());
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column)
            placed[{row, column}] = grid[{row, column}] == closed_cell ? closed_cell : empty_cell;
    for (const auto& word : puzzle.words)
        for (int at = 0; at < static_cast<int>(word.letters.size()); ++at) {
            const Cell cell = moved(word.placed.first, word.placed.direction, at);
            placed[cell] = grid[cell];
        }
    return placed;
}

}  // namespace

TEST_CASE("English filler has letters as often as Norvig counted them, and nearly as often as Lewand did") {
    const auto by_letter = shares(recipe_by(FillerWay::language));
    CHECK(by_letter.size() == 26);
    for (const auto& [letter, norvig, lewand] : english) {
        CAPTURE(letter);
        const double share = by_letter.at(std::string(1, letter));
        CHECK(share == Approx(norvig).margin(0.003));
        CHECK(share == Approx(lewand).margin(1.1));
    }
    Recipe small = recipe_by(FillerWay::language);
    small.text.letters = LetterCase::lower;
    CHECK(shares(small).at("e") == by_letter.at("E"));
    small.text = {"root", LetterCase::upper};
    CHECK(shares(small) == by_letter);
}

TEST_CASE("letters are drawn as the table says: chi-square") {
    const auto job = check(recipe_by(FillerWay::language));
    REQUIRE(job);
    const LetterDraw draw(job->filler_weights);
    Random random(20);
    constexpr int draws = 1'000'000;
    std::map<std::string, int> counts;
    for (int at = 0; at < draws; ++at) ++counts[job->alphabet.text(draw.draw(random))];
    double chi_square = 0;
    for (const auto& [letter, share, lewand] : english) {
        const double expected = draws * share / 100;
        const double off = counts[std::string(1, letter)] - expected;
        chi_square += off * off / expected;
    }
    // The 0.1 percent point of chi-square with 25 degrees of freedom (NIST/SEMATECH e-Handbook of Statistical
    // Methods, table 1.3.6.7.4).
    CHECK(chi_square < 52.620);
    CHECK(chi_square > 5);  // nor is it too good to be chance
}

TEST_CASE("by the words, every letter of the language comes now and then, and by the words alone none does") {
    const auto by_words = shares(recipe_by(FillerWay::words));
    CHECK(by_words.size() == 26);
    const auto only = shares(recipe_by(FillerWay::only_words));
    CHECK(only.size() == 16);
    for (const auto& word : garden)
        for (const char letter : word)
            CHECK(only.count(std::string(1, static_cast<char>(std::toupper(letter)))) == 1);
    CHECK(only.count("Q") == 0);
    CHECK(by_words.at("R") > 3 * by_words.at("Q"));
}

TEST_CASE("a language without a table goes by the words, or by a text that is given") {
    CHECK(has_letter_table("en-GB"));
    CHECK_FALSE(has_letter_table("de"));
    CHECK_FALSE(has_letter_table("root"));
    Recipe german = recipe_of({"Möhre", "Kürbis", "Lauch"});
    german.text.locale = "de";
    const auto by_words = shares(german);
    german.filler = FillerWay::language;
    CHECK(shares(german) == by_words);
    CHECK(by_words.count("Ä") == 1);

    const auto segmenter = Segmenter::open(german.text);
    german.letter_counts = count_letters("Der Garten, 1 Beet;\n die Ähre €", *segmenter);
    CHECK(german.letter_counts.front() == LetterCount{"1", 1});
    const auto by_text = shares(german);
    CHECK(by_text.count("1") == 0);  // none of the language's letters, and none of the words'
    CHECK(by_text.at("E") == Approx(6 * by_text.at("Ä")));
    CHECK(by_text.at("E") == Approx(2 * by_text.at("R")));
    CHECK(by_text.count("Q") == 1);  // now and then
    CHECK(by_text.at("Q") < by_text.at("Ä"));
    CHECK(recipe_from_json(to_json(german), "")->letter_counts == german.letter_counts);

    german.filler = FillerWay::words;
    CHECK_THAT(make(german).refusal().message, Contains("'words'"));
    german.filler = FillerWay::language;
    german.letter_counts = {{"ab", 1}};
    CHECK_THAT(make(german).refusal().message, Contains("'ab'"));
    german.letter_counts = {{"A", max_letter_count + 1}};
    CHECK_THAT(make(german).refusal().message, Contains("too many"));
}

TEST_CASE("filler that is easy to weed has few counters, and all letters") {
    const auto counters = [](FillerWay way) {
        double all = 0;
        Recipe recipe = recipe_by(way);
        recipe.size = Size{15, 15};
        for (recipe.seed = 1; recipe.seed <= 20; ++recipe.seed) {
            const auto puzzle = make(recipe);
            REQUIRE(puzzle);
            const Grid placed = placed_of(*puzzle);
            for (int row = 0; row < 15; ++row)
                for (int column = 0; column < 15; ++column)
                    if (placed[{row, column}] == empty_cell)
                        all += counters_of(text_of(*puzzle, {row, column}));
        }
        return all / 20;
    };
    const double by_language = counters(FillerWay::language);
    const double easy = counters(FillerWay::easy_weeding);
    CAPTURE(by_language, easy, counters(FillerWay::words), counters(FillerWay::only_words));
    CHECK(easy < by_language / 5);
    const auto by_letter = shares(recipe_by(FillerWay::easy_weeding));
    CHECK(by_letter.size() == 26);
    double few = 0;
    for (const char letter : std::string("ABDOPQR")) few += by_letter.at(std::string(1, letter));
    CHECK(few < 5);
    CHECK(by_letter.at("E") < 25);  // and no letter takes over
}

TEST_CASE("made puzzles keep their runs short and look-alikes apart in every way and shape") {
    for (const FillerWay way : all_filler_ways)
        for (const std::uint32_t cap : {1u, 2u, 3u})
            for (const bool apart : {false, true}) {
                Recipe recipe = recipe_by(way);
                recipe.shape = Shape::heart;
                recipe.longest_run = cap;
                recipe.look_alikes_apart = apart;
                for (recipe.seed = 1; recipe.seed <= 5; ++recipe.seed) {
                    const auto puzzle = make(recipe);
                    REQUIRE(puzzle);
                    NaiveRules rules{static_cast<int>(cap), {}};
                    if (apart)
                        for (const std::string group : {"CDGOQ", "HKMNW"})
                            for (const char one : group)
                                for (const char other : group) {
                                    const auto a = puzzle->grid.alphabet.find(std::string(1, one));
                                    const auto b = puzzle->grid.alphabet.find(std::string(1, other));
                                    if (a && b && *a != *b) rules.alike.insert({*a, *b});
                                }
                    CAPTURE(name(way), cap, apart, recipe.seed);
                    CHECK(naive_filling_fault(placed_of(*puzzle), puzzle->grid.grid, {}, rules).empty());
                    CHECK(puzzle->audit.certified);
                }
            }
}

TEST_CASE("each way has a name that is read back, in JSON too") {
    for (const FillerWay way : all_filler_ways) {
        CHECK(filler_way_named(name(way)) == way);
        Recipe recipe = recipe_by(way);
        recipe.longest_run = 2;
        recipe.look_alikes_apart = true;
        recipe.filler_after_message = true;
        const auto read = recipe_from_json(to_json(recipe), "");
        REQUIRE(read);
        CHECK(read->filler == way);
        CHECK(read->longest_run == 2);
        CHECK(read->look_alikes_apart);
        CHECK(read->filler_after_message);
    }
    CHECK_FALSE(filler_way_named("at random"));
}

TEST_CASE("filler follows a message, and without it the refusal says which sizes fit") {
    Recipe recipe = recipe_by(FillerWay::words);
    recipe.message = "Well grown";
    recipe.filler_after_message = true;
    recipe.size = Size{12, 12};
    const auto puzzle = make(recipe);
    REQUIRE(puzzle);
    const Grid placed = placed_of(*puzzle);
    std::string left;
    for (int row = 0; row < 12; ++row)
        for (int column = 0; column < 12; ++column)
            if (placed[{row, column}] == empty_cell) left += text_of(*puzzle, {row, column});
    CHECK_THAT(left, Catch::Matchers::StartsWith("WELLGROWN"));
    CHECK(left.size() > 100);
    recipe.size.reset();
    CHECK(make(recipe));

    recipe.size = Size{12, 12};
    recipe.filler_after_message = false;
    const Refusal refusal = make(recipe).refusal();
    CHECK(refusal.reason == Refusal::Reason::impossible);
    // 29 letters of words, and 9 of the message.
    CHECK_THAT(refusal.message, Contains("106 cells too many"));
    REQUIRE_THAT(refusal.advice.front(), Contains("--grid 7x5"));
    recipe.size = Size{5, 7};
    CHECK(make(recipe));

    recipe.size = Size{4, 4};
    recipe.words.words.resize(1);
    recipe.message = "Everything grows";
    recipe.filler_after_message = true;
    recipe.words.words[0].shown = "Leek";
    CHECK_THAT(make(recipe).refusal().message, Contains("3 cells too few"));
}
