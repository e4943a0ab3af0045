#pragma once
// What stands behind the opaque handles.

#include <atomic>

#include <letterlode/letterlode.h>
#include <letterlode/puzzle.hpp>

#include "c/error.hpp"
#include "c/list.hpp"

struct lode_recipe {
    lode::Recipe recipe;
    lode::c::KeptText json;  // void once the recipe changes
};

struct lode_control {
    std::atomic<bool> cancelled{false};
    lode_progress progress = nullptr;
    void* user = nullptr;
};

struct lode_puzzle {
    lode::Puzzle puzzle;
    lode::c::KeptText json;
    lode::c::KeptText text;
    lode::c::KeptText key_text;
};

struct lode_refusal {
    lode::Refusal refusal;
    lode::c::KeptText json;
};

struct lode_audit {
    lode::Audit audit;
    lode::c::KeptText json;
    lode::c::KeptText text;
};

struct lode_rating {
    lode::Rating rating;
    lode::c::KeptText json;
    lode::c::KeptText text;
};

namespace lode::c {

// Throws BrokenCall for a number that is no direction.
inline Direction need_direction(std::int32_t direction) {
    if (direction < LODE_RIGHT || direction > LODE_DOWN_LEFT)
        throw BrokenCall(std::to_string(direction) + " is no direction");
    return static_cast<Direction>(direction);
}

// Hands out a text that the handle keeps, written at the first call.
template <class Handle, class Write>
std::int32_t give_kept(const char* function, const char** result, const char* result_name,
                       const Handle* handle, const char* handle_name, const KeptText Handle::*kept,
                       lode_error** error, const Write& write) {
    clear(result);
    return guarded(function, error, [&] {
        auto& text = need(result, result_name);
        const Handle& owner = need(handle, handle_name);
        text = (owner.*kept).get([&] { return write(owner); });
        return LODE_OK;
    });
}

}  // namespace lode::c
