// Dictionary words that stand in a grid by chance.

#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <set>

#include <letterlode/puzzle.hpp>

#include "find/covered_lines.hpp"
#include "random/random.hpp"
#include "support/grids.hpp"
#include "support/lines.hpp"
#include "support/naive.hpp"

using namespace lode;
using namespace lode::test;

namespace {

std::vector<std::string> english_words() {
    std::ifstream file(LODE_ENGLISH_WORDS);
    std::vector<std::string> words;
    for (std::string word; std::getline(file, word);) words.push_back(word);
    if (words.size() < 50'000) throw std::runtime_error("no English words: install the package wamerican");
    return words;
}

LetteredGrid random_letters(Size size, Random& random) {
    // Common letters, so that words come about.
    constexpr std::string_view common = "EEEETTTAAAOOOIIINNNSSSRRRHLLDCUMP";
    LetteredGrid grid{{}, Grid(size)};
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column)
            grid.grid[{row, column}] = grid.alphabet.add(
                std::string(1, common[random.below(static_cast<std::uint32_t>(common.size()))]));
    return grid;
}

Audit checked(const LetteredGrid& grid, const std::vector<std::string>& words, const AuditRules& rules,
              LetterCase letters = LetterCase::upper) {
    const Segmenter segmenter = segmenter_of("root", letters);
    std::vector<AuditedWord> judged;
    for (const auto& word : words) judged.push_back({word, segmenter.spell(word).letters});
    return audit(grid, judged, rules, segmenter);
}

std::vector<std::string> told(const Audit& audit) {
    std::vector<std::string> words;
    for (const auto& finding : audit.chance) words.push_back(finding.word);
    return words;
}

}  // namespace

// std::string::find over the lines of the grid, with a list of English words (package wamerican).
TEST_CASE("chance words are those that a plain search along all lines finds, longest first") {
    std::set<std::string>
        plain_words;  // without apostrophes and in one case, so that each is its own letters
    for (std::string word : english_words()) {
        std::transform(word.begin(), word.end(), word.begin(),
                       [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
        if (word.size() >= 4 && word.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") == std::string::npos)
            plain_words.insert(word);
    }
    AuditRules rules;
    rules.dictionary.assign(plain_words.begin(), plain_words.end());
    Random random(21);
    std::size_t copies = 0;
    for (int round = 0; round < 2; ++round) {
        const LetteredGrid grid = random_letters({14, 17}, random);
        const auto lines = lines_of(grid);
        std::set<std::pair<std::string, CellSet>> expected;
        for (const auto& word : plain_words) {
            std::vector<std::string> letters;
            for (const char letter : word) letters.emplace_back(1, letter);
            for (const auto& cells : copies_by_string_find(lines, letters)) expected.emplace(word, cells);
        }
        const Audit audit = checked(grid, {}, rules);
        std::set<std::pair<std::string, CellSet>> found;
        for (const auto& finding : audit.chance) found.emplace(finding.word, cells_of(finding.copy));
        CHECK(found.size() == audit.chance.size());
        CHECK(found == expected);
        CHECK(std::is_sorted(audit.chance.begin(), audit.chance.end(),
                             [](const auto& a, const auto& b) { return a.copy.length > b.copy.length; }));
        copies += found.size();

        // Of a list that is cut, the longest stay.
        AuditRules few = rules;
        few.most = 7;
        const Audit cut = checked(grid, {}, few);
        CHECK(cut.cut_short);
        CHECK(cut.certified);
        REQUIRE(cut.chance.size() == 7);
        for (std::size_t at = 0; at < 7; ++at) {
            CHECK(cut.chance[at].word == audit.chance[at].word);
            CHECK(cut.chance[at].copy == audit.chance[at].copy);
        }
    }
    CHECK(copies > 100);
}

TEST_CASE("a part of a listed word stands there by no chance, and a longer word around it does") {
    const LetteredGrid grid = lettered({"DAMSONS", "XXXXXXX", "XSMADXX"});
    AuditRules rules;
    rules.dictionary = {"damson", "damsons", "sons", "nosmad", "dams", "mads", "smad", "amso"};
    const Audit audit = checked(grid, {"Damson"}, rules);
    CHECK(audit.certified);
    // DAMS and AMSO lie in DAMSON; DAMSONS and SONS reach beyond it, and the third row is chance alone.
    CHECK(told(audit) == std::vector<std::string>{"damsons", "sons", "smad", "dams"});
    rules.shortest_by_chance = 5;
    CHECK(told(checked(grid, {"Damson"}, rules)) == std::vector<std::string>{"damsons"});
}

TEST_CASE("a dictionary's case does not matter, its marks do, and of two spellings the shorter is told") {
    AuditRules rules;
    rules.dictionary = {"do\u00F1a", "won't", "Wont", "rose/MS"};
    const LetteredGrid grid = lettered({"DONAX", "WONTX", "ROSEX"});
    CHECK(told(checked(grid, {}, rules)) == std::vector<std::string>{"Wont"});
    const auto read = read_dictionary(
        "\xEF\xBB\xBF"
        "3\ndo\u00F1a\r\nrose/MS\nwont\tverb\n\n \n\xFF\n",
        "d.txt");
    REQUIRE(read);
    CHECK(*read == std::vector<std::string>{"3", "do\u00F1a", "rose", "wont"});
    rules.dictionary = *read;
    CHECK(told(checked(grid, {}, rules)) == std::vector<std::string>{"wont", "rose"});

    // Where letters are kept as they are written, too.
    LetteredGrid mixed{{}, Grid({1, 4})};
    for (int column = 0; column < 4; ++column)
        mixed.grid[{0, column}] = mixed.alphabet.add(std::string(1, "rOsE"[column]));
    rules.dictionary = {"Rose"};
    CHECK(told(checked(mixed, {}, rules, LetterCase::keep)) == std::vector<std::string>{"Rose"});
}

TEST_CASE("a dictionary without a word is refused") {
    const auto none = read_dictionary(" \n\n/x\n", "d.txt");
    REQUIRE_FALSE(none);
    CHECK(none.refusal().source == "d.txt");
    CHECK(none.refusal().message.find("no word") != std::string::npos);
}

TEST_CASE("a copy is covered where one other holds all its cells in its line") {
    Random random(5);
    const Size size{7, 9};
    const auto any_copy = [&](int longest) {
        for (;;) {
            Copy copy{{static_cast<int>(random.below(7)), static_cast<int>(random.below(9))},
                      all_directions[random.below(8)],
                      1 + static_cast<int>(random.below(static_cast<std::uint32_t>(longest)))};
            const Cell last = copy.last();
            if (last.row >= 0 && last.row < size.rows && last.column >= 0 && last.column < size.columns)
                return copy;
        }
    };
    int held = 0;
    for (int round = 0; round < 200; ++round) {
        std::vector<Copy> copies;
        for (int count = static_cast<int>(random.below(12)); count > 0; --count)
            copies.push_back(any_copy(7));
        const CoveredLines covered(copies);
        for (int one = 0; one < 60; ++one) {
            // Of one letter alone the line is not known: it is asked for in words of two or more.
            const Copy asked = any_copy(5);
            if (asked.length < 2) continue;
            const auto inner = cells_of(asked);
            const bool expected = std::any_of(copies.begin(), copies.end(), [&](const Copy& copy) {
                const auto outer = cells_of(copy);
                return std::includes(outer.begin(), outer.end(), inner.begin(), inner.end());
            });
            CHECK(covered.holds(asked) == expected);
            held += expected;
        }
    }
    CHECK(held > 200);
}
