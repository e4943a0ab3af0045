// What a maker is told when the cells between the words cannot be filled: it names what stands in the way,
// and its advice is tried.

#include <catch2/catch.hpp>

#include "puzzle/job.hpp"
#include "random/random.hpp"
#include "support/naive.hpp"
#include "support/recipes.hpp"
#include "support/slowed.hpp"

using namespace lode;
using namespace lode::test;
using Catch::Matchers::Contains;

namespace {

Refusal refusal_of(const Recipe& recipe) {
    const auto made = make(recipe);
    REQUIRE(!made);
    return made.refusal();
}

bool holds(const std::vector<std::string>& texts, const std::string& text) {
    return std::find(texts.begin(), texts.end(), text) != texts.end();
}

// Follows the advice, if it is one of those that were tried.
std::optional<Recipe> advised(Recipe recipe, const std::string& advice) {
    if (advice.find("they can be filled") == std::string::npos) return std::nullopt;
    const auto has = [&](const std::string& option) { return advice.find(option) != std::string::npos; };
    for (const FillerWay way : all_filler_ways)
        if (has("--filler " + std::string(name(way)) + " ")) recipe.filler = way;
    if (has("--longest-run 0")) recipe.longest_run = 0;
    if (has("--look-alikes anywhere")) recipe.look_alikes_apart = false;
    return recipe;
}

}  // namespace

TEST_CASE("a cell that can hold no letter is named with what each letter would spell") {
    Recipe recipe = recipe_of({"AB"}, Size{1, 3});
    recipe.filler = FillerWay::only_words;
    recipe.pins = {{"AB", {{0, 0}, Direction::right}}};
    recipe.avoid = {"bb"};
    const Refusal refusal = refusal_of(recipe);
    CHECK(refusal.reason == Refusal::Reason::impossible);
    CHECK_THAT(refusal.message, Contains("Row 1, column 3") && Contains("A would spell 'AB' once more") &&
                                    Contains("B would spell the avoided word 'bb'"));
    CHECK(refusal.words == std::vector<std::string>{"AB", "bb"});
    CHECK(holds(refusal.advice, "With --filler words they can be filled."));
    recipe.filler = FillerWay::words;
    CHECK(make(recipe));
    recipe.filler = FillerWay::only_words;
    recipe.allow = {"bb"};
    CHECK(make(recipe));
}

TEST_CASE("where several cells are to blame, the words and rules are, and no more of them than must be") {
    // Two cells between closed ones: with A and B alone, AA and BB are ruled out by the cap, AB and BA are
    // copies.
    Recipe recipe = recipe_of({"AB"});
    recipe.mask = read_mask("OO.OO", "").value();
    recipe.filler = FillerWay::only_words;
    recipe.longest_run = 1;
    recipe.avoid = {"bab"};
    recipe.pins = {{"AB", {{0, 0}, Direction::right}}};
    const Refusal refusal = refusal_of(recipe);
    CHECK(refusal.reason == Refusal::Reason::impossible);
    CHECK(refusal.words == std::vector<std::string>{"AB"});
    CHECK_THAT(refusal.message, Contains("'AB' once more") &&
                                    Contains("more than 1 equal letters in a row") &&
                                    Contains("Any one of these allowed"));
    CHECK(holds(refusal.advice, "With --longest-run 0 they can be filled."));
    recipe.longest_run = 0;
    CHECK(make(recipe));
}

TEST_CASE(
    "where words may stand elsewhere, it is not called impossible, and it says how many ways were tried") {
    Recipe recipe = recipe_of({"AB"}, Size{4, 4});
    recipe.filler = FillerWay::only_words;
    const Refusal refusal = refusal_of(recipe);
    CHECK(refusal.reason == Refusal::Reason::unfinished);
    CHECK_THAT(refusal.message, Contains("50 ways"));
    CHECK(refusal.words == std::vector<std::string>{"AB"});
}

TEST_CASE("letters that no language adds to are asked for") {
    Recipe recipe = recipe_of({"12"}, Size{1, 3});
    recipe.pins = {{"12", {{0, 0}, Direction::right}}};
    recipe.avoid = {"22"};
    const Refusal refusal = refusal_of(recipe);
    CHECK_THAT(refusal.advice.back(), Contains("--locale"));
    recipe.text.locale = "en";
    CHECK(make(recipe));
}

TEST_CASE("impossible fillings agree with brute force, and advice that was tried helps") {
    Random chance(71);
    int impossible = 0;
    int followed = 0;
    for (int round = 0; round < 1500 / slowed; ++round) {
        Recipe recipe = recipe_of({"COG", "HM"}, Size{3, 3}, 1 + chance.below(50));
        recipe.words.words.resize(1 + chance.below(2));
        recipe.filler = FillerWay::only_words;
        recipe.pins = {{"COG", {{static_cast<int>(chance.below(3)), 0}, Direction::right}}};
        if (recipe.words.words.size() == 2) {
            const int row = (recipe.pins[0].placed.first.row + 1) % 3;
            recipe.pins.push_back({"HM", {{row, static_cast<int>(chance.below(2))}, Direction::right}});
        }
        recipe.longest_run = chance.below(3);
        recipe.look_alikes_apart = chance.below(2) == 0;
        for (const char* word : {"CC", "OO", "HC", "GMO", "HO", "MM"})
            if (chance.below(3) == 0) recipe.avoid.emplace_back(word);
        const auto job = check(recipe);
        if (!job) continue;

        Grid placed({3, 3});
        for (std::size_t word = 0; word < recipe.pins.size(); ++word)
            for (std::size_t at = 0; at < job->words[word].size(); ++at)
                placed[moved(recipe.pins[word].placed.first, Direction::right, static_cast<int>(at))] =
                    job->words[word][at];
        std::vector<Letters> forbidden = job->words;
        for (const auto& word : recipe.avoid) {
            Letters letters;
            bool known = true;
            for (const char letter : word) {
                const auto number = job->alphabet.find(std::string(1, letter));
                known = known && number;
                letters.push_back(number.value_or(0));
            }
            if (known) forbidden.push_back(letters);
        }
        // As they are written in a reading test: C O G and H M.
        NaiveRules rules{static_cast<int>(recipe.longest_run), {}};
        if (recipe.look_alikes_apart)
            for (const std::string group : {"COG", "HM"})
                for (const char one : group)
                    for (const char other : group) {
                        const auto a = job->alphabet.find(std::string(1, one));
                        const auto b = job->alphabet.find(std::string(1, other));
                        if (one != other && a && b) rules.alike.insert({*a, *b});
                    }
        Letters allowed;
        for (std::size_t letter = 0; letter < job->filler_weights.size(); ++letter)
            if (job->filler_weights[letter] > 0) allowed.push_back(static_cast<Letter>(letter));

        // What the words' own letters spell is no matter of filler.
        const bool placeable = std::all_of(forbidden.begin(), forbidden.end(), [&](const Letters& word) {
            const bool listed = std::find(job->words.begin(), job->words.end(), word) != job->words.end();
            return naive_copies(placed, word).size() == (listed ? 1u : 0u);
        });
        if (!placeable) continue;

        const auto made = make(recipe);
        CAPTURE(round, recipe.longest_run, recipe.look_alikes_apart, recipe.avoid, recipe.words.words.size());
        const bool exists = naive_can_fill(placed, forbidden, allowed, rules);
        REQUIRE(static_cast<bool>(made) == exists);
        if (made) {
            CHECK(naive_filling_fault(placed, made->grid.grid, forbidden, rules).empty());
            continue;
        }
        ++impossible;
        REQUIRE(made.refusal().reason == Refusal::Reason::impossible);
        REQUIRE_FALSE(made.refusal().advice.empty());
        for (const auto& advice : made.refusal().advice)
            if (const auto other = advised(recipe, advice)) {
                CAPTURE(advice);
                REQUIRE(make(*other));
                ++followed;
            }
    }
    CHECK(impossible > 200 / slowed);
    CHECK(followed > 200 / slowed);
}
