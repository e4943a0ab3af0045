#include "c/lent.hpp"

#include "c/control.hpp"
#include "c/handles.hpp"

namespace lode::c {

const Recipe& recipe_in(const lode_recipe& handle) noexcept {
    return handle.recipe;
}

const Puzzle& puzzle_in(const lode_puzzle& handle) noexcept {
    return handle.puzzle;
}

lode_recipe* new_handle(Recipe recipe) {
    return new lode_recipe{std::move(recipe), {}};
}

lode_refusal* new_handle(Refusal refusal) {
    return new lode_refusal{std::move(refusal), {}};
}

lode_rating* new_handle(Rating rating) {
    return new lode_rating{std::move(rating), {}, {}};
}

MakeControl control_of(const lode_control* control) {
    return make_control(control);
}

}  // namespace lode::c
