#pragma once
// What calls have in common that make something or are refused.

#include <variant>

#include "c/handles.hpp"

namespace lode::c {

template <class Handle>
using MadeOrRefused = std::variant<Handle*, Refusal>;

// What was asked for, as a new handle, or the refusal.
template <class T, class Wrap>
auto given(Outcome<T> outcome, const Wrap& wrap)
    -> MadeOrRefused<std::remove_pointer_t<decltype(wrap(std::declval<T>()))>> {
    if (!outcome) return outcome.refusal();
    return wrap(std::move(outcome).value());
}

// Sets one of two out parameters to what body() gives.
template <class Handle, class Body>
std::int32_t made_or_refused(const char* function, Handle** result, const char* result_name,
                             lode_refusal** refusal, lode_error** error, const Body& body) {
    clear(result);
    clear(refusal);
    return guarded(function, error, [&]() -> std::int32_t {
        auto& made = need(result, result_name);
        auto& refused = need(refusal, "refusal");
        MadeOrRefused<Handle> outcome = body();
        if (auto* const handle = std::get_if<Handle*>(&outcome)) {
            made = *handle;
            return LODE_OK;
        }
        refused = new lode_refusal{std::get<Refusal>(std::move(outcome)), {}};
        return LODE_REFUSED;
    });
}

inline lode_puzzle* new_puzzle(Puzzle puzzle) {
    return new lode_puzzle{std::move(puzzle), {}, {}, {}, {}};
}

}  // namespace lode::c
