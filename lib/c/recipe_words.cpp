// A recipe's words, and those that it avoids.

#include "c/recipe_change.hpp"
#include "puzzle/band_words.hpp"

using namespace lode::c;

namespace {

constexpr std::array nested_rules{lode::Nested::inside, lode::Nested::separate};

}  // namespace

std::int32_t lode_recipe_set_words_text(lode_recipe* recipe, const char* given, const char* source,
                                        lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.words = taken(lode::read_word_lines(text(given, "text"), source_name(source)));
    });
}

std::int32_t lode_recipe_add_word(lode_recipe* recipe, const char* given, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.words.words.push_back({word(given, "word"), 0});
    });
}

std::int32_t lode_recipe_add_listed_word(lode_recipe* recipe, const char* given, std::int32_t line,
                                         const char* band, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        lode::ListedWord listed{word(given, "word"), line, band ? word(band, "band") : std::string()};
        if (line < 0) throw BrokenCall(std::to_string(line) + " is no line");
        if (auto fault = lode::fault_in_bands({its.words.source, {listed}})) throw Unusable{*fault};
        its.words.words.push_back(std::move(listed));
    });
}

std::int32_t lode_recipe_set_words_source(lode_recipe* recipe, const char* source, lode_error** error) {
    return changed(__func__, recipe, error,
                   [&](lode::Recipe& its) { its.words.source = source_name(source); });
}

std::int32_t lode_recipe_clear_words(lode_recipe* recipe, lode_error** error) {
    return changed(__func__, recipe, error, [](lode::Recipe& its) { its.words.words.clear(); });
}

std::size_t lode_recipe_word_count(const lode_recipe* recipe) {
    return recipe ? recipe->recipe.words.words.size() : 0;
}

const char* lode_recipe_word(const lode_recipe* recipe, std::size_t word) {
    const auto* listed = recipe ? at(recipe->recipe.words.words, word) : nullptr;
    return listed ? listed->shown.c_str() : nullptr;
}

std::int32_t lode_recipe_set_nested(lode_recipe* recipe, const char* rule, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.nested = named(rule, "rule for nested words", lode::nested_named, nested_rules);
    });
}

std::int32_t lode_recipe_set_default_avoid_list(lode_recipe* recipe, std::int32_t on, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) { its.default_avoid_list = on != 0; });
}

std::int32_t lode_recipe_add_avoided(lode_recipe* recipe, const char* given, lode_error** error) {
    return changed(__func__, recipe, error,
                   [&](lode::Recipe& its) { its.avoid.push_back(word(given, "word")); });
}

std::int32_t lode_recipe_clear_avoided(lode_recipe* recipe, lode_error** error) {
    return changed(__func__, recipe, error, [](lode::Recipe& its) { its.avoid.clear(); });
}

std::int32_t lode_recipe_allow(lode_recipe* recipe, const char* given, lode_error** error) {
    return changed(__func__, recipe, error,
                   [&](lode::Recipe& its) { its.allow.push_back(word(given, "word")); });
}

std::int32_t lode_recipe_clear_allowed(lode_recipe* recipe, lode_error** error) {
    return changed(__func__, recipe, error, [](lode::Recipe& its) { its.allow.clear(); });
}
