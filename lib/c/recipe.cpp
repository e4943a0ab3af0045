#include "c/handles.hpp"

using namespace lode::c;

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

std::int32_t lode_recipe_json(const char** json, const lode_recipe* recipe, lode_error** error) {
    return give_kept(__func__, json, "json", recipe, "recipe", &lode_recipe::json, error,
                     [](const lode_recipe& its) { return lode::to_json(its.recipe); });
}

std::uint64_t lode_recipe_seed(const lode_recipe* recipe) {
    return recipe ? recipe->recipe.seed : 0;
}

void lode_recipe_free(lode_recipe* recipe) {
    delete recipe;
}
