#include "c/handles.hpp"

using namespace lode::c;

std::int32_t lode_rate_puzzle(lode_rating** rating, const lode_puzzle* puzzle, lode_error** error) {
    clear(rating);
    return guarded(__func__, error, [&] {
        auto& result = need(rating, "rating");
        result = new lode_rating{taken(lode::rate(need(puzzle, "puzzle").puzzle)), {}, {}};
        return LODE_OK;
    });
}

std::int32_t lode_rate_grid_text(lode_rating** rating, const char* grid, const char* source,
                                 const lode_recipe* recipe, lode_error** error) {
    clear(rating);
    return guarded(__func__, error, [&] {
        auto& result = need(rating, "rating");
        const std::string_view drawn = text(grid, "grid");
        const lode::Recipe& rules = need(recipe, "recipe").recipe;
        const auto segmenter = taken(lode::Segmenter::open(rules.text));
        const auto lettered = taken(lode::read_grid(drawn, source_name(source), segmenter));
        result = new lode_rating{taken(lode::rate(lettered, rules)), {}, {}};
        return LODE_OK;
    });
}

double lode_rating_fixations(const lode_rating* rating) {
    return rating ? rating->rating.difficulty.fixations : 0;
}

const char* lode_rating_level(const lode_rating* rating) {
    return rating ? lode::name(rating->rating.difficulty.level).data() : nullptr;
}

std::int32_t lode_rating_json(const char** json, const lode_rating* rating, lode_error** error) {
    return give_kept(__func__, json, "json", rating, "rating", &lode_rating::json, error,
                     [](const lode_rating& its) { return lode::to_json(its.rating); });
}

std::int32_t lode_rating_text(const char** text, const lode_rating* rating, lode_error** error) {
    return give_kept(__func__, text, "text", rating, "rating", &lode_rating::text, error,
                     [](const lode_rating& its) { return lode::rating_text(its.rating); });
}

void lode_rating_free(lode_rating* rating) {
    delete rating;
}
