#pragma once
// The one guard around every entry of the C API: what is thrown inside becomes a status and an error, and
// nothing passes it. The art library guards its own entries with it: what is marked LODE_API here is exported
// for that library alone, and no public header declares it.

#include <cstddef>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

#include <letterlode/letterlode.h>
#include <letterlode/export.hpp>
#include <letterlode/outcome.hpp>

struct lode_error {
    std::int32_t code = LODE_OK;
    lode::Refusal what;  // its reason says nothing here
};

namespace lode::c {

// Inside a guard, input that cannot be used.
struct LODE_API Unusable {
    Refusal refusal;
};

// Inside a guard, a fault of the calling program.
struct LODE_API BrokenCall : std::invalid_argument {
    using std::invalid_argument::invalid_argument;
};

// Turns the exception that is being handled into a status, and into an error where the caller wants one.
LODE_API std::int32_t report(const char* function, lode_error** error) noexcept;

// body() returns LODE_OK or LODE_REFUSED, or throws.
template <class Body>
std::int32_t guarded(const char* function, lode_error** error, const Body& body) noexcept {
    if (error) *error = nullptr;
    try {
        return body();
    } catch (...) {
        return report(function, error);
    }
}

// Sets an out parameter to what a failure leaves in it.
template <class T>
void clear(T* result) noexcept {
    if (result) *result = T{};
}

// Throws BrokenCall for NULL.
template <class T>
T& need(T* pointer, const char* name) {
    if (!pointer) throw BrokenCall(std::string(name) + " is NULL");
    return *pointer;
}

// Throws BrokenCall for a place beyond the list's end.
template <class List>
const auto& need_at(const List& list, std::size_t index, const char* name) {
    if (index >= list.size())
        throw BrokenCall("there is no " + std::string(name) + " " + std::to_string(index) + " among " +
                         std::to_string(list.size()) + ", counted from 0");
    return list[index];
}

// What the refused call would have given, or its refusal thrown.
template <class T>
T taken(Outcome<T> outcome) {
    if (!outcome) throw Unusable{outcome.refusal()};
    return std::move(outcome).value();
}

// Text whose faults are found line by line, where it is read. Throws BrokenCall for NULL.
[[nodiscard]] LODE_API std::string_view text(const char* given, const char* name);

// A word, a name or a tag, normalised. Throws BrokenCall for NULL, Unusable for what is no UTF-8.
[[nodiscard]] LODE_API std::string word(const char* given, const char* name);

// A name for messages. NULL gives none; bytes that are no UTF-8, which a file's name may hold, are replaced.
[[nodiscard]] LODE_API std::string source_name(const char* given);

}  // namespace lode::c
