// What recipes have in common is worked out once: each must make what it makes by itself, and be refused as
// it is by itself, whatever the other one was.

#include <catch2/catch.hpp>

#include <letterlode/puzzle.hpp>

#include "support/recipes.hpp"

using namespace lode;
using namespace lode::test;
using Texts = std::vector<std::string>;

namespace {

Recipe recipe_in(const std::string& locale, const Texts& words) {
    Recipe recipe = recipe_of(words, Size{12, 11}, 5);
    recipe.text.locale = locale;
    recipe.default_avoid_list = true;
    return recipe;
}

Recipe changed(Recipe recipe, void (*change)(Recipe&)) {
    change(recipe);
    return recipe;
}

const Texts beds{"Thyme", "Sage", "Chervil", "Lovage", "Borage", "Rocket"};
const Texts welsh{"Llwyn", "Rhosyn", "Ffenigl", "Teim", "Dŵr", "Cennin"};

// In several languages, with every rule that avoided words depend on, and some that are refused.
std::vector<Recipe> recipes() {
    const Recipe english = recipe_in("en", beds), in_welsh = recipe_in("cy", welsh);
    return {
        english,
        recipe_in("en", {"Turnip", "Carrot", "Leek", "Jalapeño", "Quince"}),
        recipe_in("root", beds),
        recipe_in("de", {"Möhre", "Rübe", "Grünkohl", "Weißkohl", "Salat"}),
        recipe_in("nl", {"IJsbloem", "Radijs", "Prei", "Tijm"}),
        recipe_in("hu", {"Zsálya", "Dísznövény", "Cseresznye", "Gyömbér"}),
        recipe_in("ar", {"زعتر", "نعناع", "ريحان"}),
        in_welsh,
        changed(in_welsh,
                [](Recipe& it) {
                    it.avoid = {"chwyn", "drain"};
                }),
        changed(in_welsh,
                [](Recipe& it) {
                    it.avoid = {"chwyn", "drain"}, it.allow = {"Chwyn"};
                }),
        changed(in_welsh, [](Recipe& it) { it.avoid = {"chwyn"}, it.text.digraphs = Digraphs::split; }),
        changed(english, [](Recipe& it) { it.default_avoid_list = false; }),
        changed(english, [](Recipe& it) { it.text.letters = LetterCase::keep; }),
        changed(english, [](Recipe& it) { it.text.letters = LetterCase::lower; }),
        changed(english, [](Recipe& it) { it.filler = FillerWay::only_words; }),
        changed(english, [](Recipe& it) { it.filler = FillerWay::language; }),
        // An avoided word in a listed one, one that is none, and no language.
        changed(english, [](Recipe& it) { it.avoid = {"rag"}; }),
        changed(english, [](Recipe& it) { it.avoid = {"rag"}, it.allow = {"Rag"}; }),
        changed(english, [](Recipe& it) { it.avoid = {"x"}; }),
        changed(english, [](Recipe& it) { it.allow = {"€"}; }),
        changed(english, [](Recipe& it) { it.text.locale = "nowhere"; }),
    };
}

// What comes of a checked recipe, or why there is none.
std::string result_of(const Outcome<CheckedRecipe>& checked) {
    if (!checked) return to_json(checked.refusal());
    const auto puzzle = checked->make();
    return puzzle ? to_json(*puzzle) : to_json(puzzle.refusal());
}

}  // namespace

TEST_CASE("by another recipe's groundwork each recipe makes what it makes by itself") {
    const auto all = recipes();
    std::vector<std::string> alone;
    for (const Recipe& recipe : all) alone.push_back(result_of(CheckedRecipe::open(recipe)));
    std::size_t refused = 0;
    for (const auto& result : alone) refused += result.find("letterlode-refusal") != std::string::npos;
    CHECK(refused == 4);

    for (std::size_t other = 0; other < all.size(); ++other) {
        Groundwork groundwork;
        if (const auto checked = CheckedRecipe::open(all[other])) groundwork = checked->groundwork();
        for (std::size_t one = 0; one < all.size(); ++one)
            if (const auto result = result_of(CheckedRecipe::open(all[one], groundwork));
                result != alone[one]) {
                CAPTURE(other, one);
                CHECK(result == alone[one]);
            }
    }
}

TEST_CASE("groundwork is handed on from recipe to recipe, and outlives them") {
    const auto all = recipes();
    Groundwork groundwork;
    for (const Recipe& recipe : all) {
        const auto checked = CheckedRecipe::open(recipe, groundwork);
        CHECK(result_of(checked) == result_of(CheckedRecipe::open(recipe)));
        if (checked) groundwork = checked->groundwork();
    }
}
