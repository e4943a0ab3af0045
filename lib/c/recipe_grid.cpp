// A recipe's grid, and how long it is searched for.

#include "c/recipe_change.hpp"

using namespace lode::c;

namespace {

// A size that is chosen.
std::int32_t set_aspect(const char* function, lode_recipe* recipe, double aspect, bool tight,
                        lode_error** error) {
    return changed(function, recipe, error, [&](lode::Recipe& its) {
        its.aspect = taken(lode::checked_aspect(aspect));
        its.tight = tight;
        its.size.reset();
        its.mask.reset();
    });
}

}  // namespace

std::int32_t lode_recipe_set_grid(lode_recipe* recipe, std::int32_t columns, std::int32_t rows,
                                  lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.size = taken(lode::checked_size(columns, rows));
        its.tight = false;
        its.mask.reset();
    });
}

std::int32_t lode_recipe_set_grid_auto(lode_recipe* recipe, double aspect, lode_error** error) {
    return set_aspect(__func__, recipe, aspect, false, error);
}

std::int32_t lode_recipe_set_grid_tight(lode_recipe* recipe, double aspect, lode_error** error) {
    return set_aspect(__func__, recipe, aspect, true, error);
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

std::int32_t lode_recipe_clear_directions(lode_recipe* recipe, lode_error** error) {
    return changed(__func__, recipe, error, [](lode::Recipe& its) { its.directions.reset(); });
}

std::int32_t lode_recipe_set_seed(lode_recipe* recipe, std::uint64_t seed, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) { its.seed = seed; });
}

std::int32_t lode_recipe_set_effort(lode_recipe* recipe, std::uint64_t steps, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) { its.effort = steps; });
}

std::int32_t lode_recipe_set_choices(lode_recipe* recipe, std::int32_t count, lode_error** error) {
    return changed(__func__, recipe, error, [&](lode::Recipe& its) {
        its.choices = static_cast<std::size_t>(
            in_range<std::int64_t>(count, "number of choices", 1, lode::max_choices));
    });
}
