// How a recipe's words are cut into letters.

#include "c/recipe_change.hpp"

using namespace lode::c;

namespace {

constexpr std::array letter_cases{lode::LetterCase::upper, lode::LetterCase::lower, lode::LetterCase::keep};
constexpr std::array digraphs_rules{lode::Digraphs::join, lode::Digraphs::split};
constexpr std::array sharp_s_rules{lode::SharpS::doubled, lode::SharpS::keep};
constexpr std::array marks_rules{lode::Marks::keep, lode::Marks::strip};
constexpr std::array finals_rules{lode::Finals::keep, lode::Finals::fold};

}  // namespace

std::int32_t lode_recipe_set_locale(lode_recipe* recipe, const char* tag, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        lode::TextRules rules = its.text;
        rules.locale = word(tag, "tag");
        its.text = taken(lode::Segmenter::open(rules)).rules();
    });
}

std::int32_t lode_recipe_set_letters(lode_recipe* recipe, const char* letter_case, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.text.letters = named(letter_case, "letter case", lode::letter_case_named, letter_cases);
    });
}

std::int32_t lode_recipe_set_digraphs(lode_recipe* recipe, const char* rule, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.text.digraphs = named(rule, "rule for digraphs", lode::digraphs_named, digraphs_rules);
    });
}

std::int32_t lode_recipe_set_sharp_s(lode_recipe* recipe, const char* rule, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.text.sharp_s = named(rule, "rule for the sharp s", lode::sharp_s_named, sharp_s_rules);
    });
}

std::int32_t lode_recipe_set_marks(lode_recipe* recipe, const char* rule, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.text.marks = named(rule, "rule for marks", lode::marks_named, marks_rules);
    });
}

std::int32_t lode_recipe_set_finals(lode_recipe* recipe, const char* rule, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.text.finals = named(rule, "rule for final letters", lode::finals_named, finals_rules);
    });
}
