#include "c/control.hpp"
#include "c/handles.hpp"
#include "c/making.hpp"

using namespace lode::c;

std::int32_t lode_make(lode_puzzle** puzzle, lode_refusal** refusal, const lode_recipe* recipe,
                       const lode_control* control, lode_error** error) {
    return made_or_refused(__func__, puzzle, "puzzle", refusal, error, [&] {
        return given(lode::make(need(recipe, "recipe").recipe, make_control(control)), new_puzzle);
    });
}

std::int32_t lode_make_aimed(lode_puzzle** puzzle, std::size_t* tried, lode_refusal** refusal,
                             const lode_recipe* recipe, const char* aim, std::int32_t vary_filler,
                             const lode_control* control, lode_error** error) {
    clear(tried);
    return made_or_refused(__func__, puzzle, "puzzle", refusal, error, [&] {
        need(tried, "tried");
        const lode::Recipe& wanted = need(recipe, "recipe").recipe;
        lode::Aim nearest = taken(lode::read_aim(word(aim, "aim")));
        nearest.vary_filler = vary_filler != 0;
        return given(lode::make_aimed(wanted, nearest, make_control(control)), [&](lode::AimedPuzzle aimed) {
            lode_puzzle* const made = new_puzzle(std::move(aimed.puzzle));
            *tried = aimed.tried;
            return made;
        });
    });
}
