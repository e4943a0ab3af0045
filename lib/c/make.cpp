#include "c/handles.hpp"

using namespace lode::c;

// lode_control_cancel may run in a signal handler.
static_assert(std::atomic<bool>::is_always_lock_free);

namespace {

lode::MakeControl control_of(const lode_control* control) {
    if (!control) return {};
    lode::MakeControl made;
    made.cancel = &control->cancelled;
    if (control->progress)
        made.progress = [progress = control->progress, user = control->user](std::uint64_t spent,
                                                                             std::uint64_t effort) {
            try {
                progress(user, spent, effort);
            } catch (...) {
                throw BrokenCall("the progress function threw");
            }
        };
    return made;
}

}  // namespace

std::int32_t lode_control_create(lode_control** control, lode_error** error) {
    clear(control);
    return guarded(__func__, error, [&] {
        auto& result = need(control, "control");
        result = new lode_control;
        return LODE_OK;
    });
}

std::int32_t lode_control_set_progress(lode_control* control, lode_progress progress, void* user,
                                       lode_error** error) {
    return guarded(__func__, error, [&] {
        lode_control& handle = need(control, "control");
        handle.progress = progress;
        handle.user = user;
        return LODE_OK;
    });
}

void lode_control_cancel(lode_control* control) {
    if (control) control->cancelled.store(true, std::memory_order_relaxed);
}

void lode_control_reset(lode_control* control) {
    if (control) control->cancelled.store(false, std::memory_order_relaxed);
}

void lode_control_free(lode_control* control) {
    delete control;
}

std::int32_t lode_make(lode_puzzle** puzzle, lode_refusal** refusal, const lode_recipe* recipe,
                       const lode_control* control, lode_error** error) {
    clear(puzzle);
    clear(refusal);
    return guarded(__func__, error, [&]() -> std::int32_t {
        auto& made = need(puzzle, "puzzle");
        auto& refused = need(refusal, "refusal");
        auto outcome = lode::make(need(recipe, "recipe").recipe, control_of(control));
        if (outcome) {
            made = new lode_puzzle{std::move(*outcome), {}, {}, {}};
            return LODE_OK;
        }
        refused = new lode_refusal{outcome.refusal(), {}};
        return LODE_REFUSED;
    });
}
