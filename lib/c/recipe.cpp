#include "c/handles.hpp"

using namespace lode::c;

namespace {

// A setter works on what it was given first and writes to the recipe last, so that a failure changes nothing.
template <class Change>
std::int32_t changed(const char* function, lode_recipe* recipe, lode_error** error, const Change& change) {
    return guarded(function, error, [&] {
        lode_recipe& handle = need(recipe, "recipe");
        change(handle.recipe);
        handle.json.forget();
        return LODE_OK;
    });
}

// The name of one of few things, or a refusal that lists them.
template <class Named, class All>
auto named(const char* given, const char* what, Named find, const All& all) {
    const std::string wanted = word(given, what);
    const auto found = find(wanted);
    if (found) return *found;
    std::string names;
    for (const auto one : all) names += std::string(names.empty() ? "" : ", ") + std::string(name(one));
    throw Unusable{{lode::Refusal::Reason::unusable,
                    "'" + wanted + "' is no " + what + ".",
                    {wanted},
                    {"Give one of these: " + names + "."},
                    {},
                    0}};
}

constexpr std::array letter_cases{lode::LetterCase::upper, lode::LetterCase::lower, lode::LetterCase::keep};
constexpr std::array digraphs_rules{lode::Digraphs::join, lode::Digraphs::split};
constexpr std::array sharp_s_rules{lode::SharpS::doubled, lode::SharpS::keep};
constexpr std::array marks_rules{lode::Marks::keep, lode::Marks::strip};
constexpr std::array finals_rules{lode::Finals::keep, lode::Finals::fold};

}  // namespace

std::int32_t lode_recipe_create(lode_recipe** recipe, lode_error** error) {
    clear(recipe);
    return guarded(__func__, error, [&] {
        auto& result = need(recipe, "recipe");
        result = new lode_recipe;
        return LODE_OK;
    });
}

std::int32_t lode_recipe_from_json(lode_recipe** recipe, const char* json, const char* source,
                                   lode_error** error) {
    clear(recipe);
    return guarded(__func__, error, [&] {
        auto& result = need(recipe, "recipe");
        result = new lode_recipe{taken(lode::recipe_from_json(text(json, "json"), source_name(source))), {}};
        return LODE_OK;
    });
}

std::int32_t lode_recipe_copy(lode_recipe** copy, const lode_recipe* recipe, lode_error** error) {
    clear(copy);
    return guarded(__func__, error, [&] {
        auto& result = need(copy, "copy");
        result = new lode_recipe{need(recipe, "recipe").recipe, {}};
        return LODE_OK;
    });
}

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

std::int32_t lode_recipe_set_grid(lode_recipe* recipe, std::int32_t columns, std::int32_t rows,
                                  lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.size = taken(lode::checked_size(columns, rows));
        its.mask.reset();
    });
}

std::int32_t lode_recipe_set_grid_auto(lode_recipe* recipe, double aspect, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.aspect = taken(lode::checked_aspect(aspect));
        its.size.reset();
        its.mask.reset();
    });
}

std::int32_t lode_recipe_set_shape(lode_recipe* recipe, const char* name, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.shape = named(name, "shape", lode::shape_named, lode::all_shapes);
        its.mask.reset();
    });
}

std::int32_t lode_recipe_set_mask_text(lode_recipe* recipe, const char* given, const char* source,
                                       lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.mask = taken(lode::read_mask(text(given, "text"), source_name(source)));
    });
}

std::int32_t lode_recipe_set_directions(lode_recipe* recipe, const char* names, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.directions = taken(lode::read_directions(word(names, "names")));
    });
}

std::int32_t lode_recipe_set_seed(lode_recipe* recipe, std::uint64_t seed, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) { its.seed = seed; });
}

std::int32_t lode_recipe_set_effort(lode_recipe* recipe, std::uint64_t steps, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) { its.effort = steps; });
}

std::int32_t lode_recipe_set_default_avoid_list(lode_recipe* recipe, std::int32_t on, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) { its.default_avoid_list = on != 0; });
}

std::int32_t lode_recipe_add_avoided(lode_recipe* recipe, const char* given, lode_error** error) {
    return changed(__func__, recipe, error,
                   [&](lode::Recipe& its) { its.avoid.push_back(word(given, "word")); });
}

std::int32_t lode_recipe_allow(lode_recipe* recipe, const char* given, lode_error** error) {
    return changed(__func__, recipe, error,
                   [&](lode::Recipe& its) { its.allow.push_back(word(given, "word")); });
}

std::int32_t lode_recipe_set_filler(lode_recipe* recipe, const char* way, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.filler = named(way, "way to choose filler", lode::filler_way_named, lode::all_filler_ways);
    });
}

std::int32_t lode_recipe_json(const char** json, const lode_recipe* recipe, lode_error** error) {
    return give_kept(__func__, json, "json", recipe, "recipe", &lode_recipe::json, error,
                     [](const lode_recipe& its) { return lode::to_json(its.recipe); });
}

void lode_recipe_free(lode_recipe* recipe) {
    delete recipe;
}
