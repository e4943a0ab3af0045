#pragma once
// How the setters of a recipe change it.

#include <algorithm>
#include <array>
#include <cstdint>
#include <limits>
#include <string>

#include "c/handles.hpp"
#include "c/range.hpp"

namespace lode::c {

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

// One of few things by its name, or a refusal that lists the names.
template <class Named, class All>
auto named(const char* given, const char* what, Named find, const All& all) {
    const std::string wanted = word(given, what);
    const auto found = find(wanted);
    if (found) return *found;
    std::string names;
    for (const auto one : all) names += std::string(names.empty() ? "" : ", ") + std::string(name(one));
    refuse("'" + wanted + "' is no " + what + ".", "Give one of these: " + names + ".", wanted);
}

// Which of two names it is: true for the first.
inline bool one_of(const char* given, const char* what, const char* yes, const char* no) {
    const std::string wanted = word(given, what);
    if (wanted == yes || wanted == no) return wanted == yes;
    refuse("'" + wanted + "' is no " + what + ".", "Give one of these: " + std::string(yes) + ", " + no + ".",
           wanted);
}

// A number that may be LODE_ANY_NUMBER.
inline std::optional<std::size_t> number_or_any(std::uint64_t given) {
    if (given == LODE_ANY_NUMBER) return std::nullopt;
    return static_cast<std::size_t>(std::min<std::uint64_t>(given, std::numeric_limits<std::size_t>::max()));
}

}  // namespace lode::c
