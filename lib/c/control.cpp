#include "c/control.hpp"

#include "c/handles.hpp"
#include "c/range.hpp"

using namespace lode::c;

// lode_control_cancel may run in a signal handler.
static_assert(std::atomic<bool>::is_always_lock_free);

namespace lode::c {
namespace {

void tell(lode_progress progress, void* user, std::uint64_t done, std::uint64_t all) {
    try {
        progress(user, done, all);
    } catch (...) {
        throw BrokenCall("the progress function threw");
    }
}

}  // namespace

MakeControl make_control(const lode_control* control) {
    MakeControl made;
    if (!control) return made;
    made.cancel = &control->cancelled;
    made.threads = control->threads;
    if (control->progress)
        made.progress = [progress = control->progress, user = control->user](std::uint64_t spent,
                                                                             std::uint64_t effort) {
            tell(progress, user, spent, effort);
        };
    return made;
}

SearchControl search_control(const lode_control* control) {
    SearchControl made;
    if (!control) return made;
    made.cancel = &control->cancelled;
    made.threads = control->threads;
    if (control->progress)
        made.progress = [progress = control->progress, user = control->user](long long done, long long rows) {
            tell(progress, user, static_cast<std::uint64_t>(done), static_cast<std::uint64_t>(rows));
        };
    return made;
}

}  // namespace lode::c

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

std::int32_t lode_control_set_threads(lode_control* control, std::int32_t threads, lode_error** error) {
    return guarded(__func__, error, [&] {
        lode_control& handle = need(control, "control");
        handle.threads =
            static_cast<unsigned>(in_range<std::int64_t>(threads, "number of threads", 1, lode::max_threads));
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
