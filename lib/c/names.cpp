// Versions, and names for numbers.

#include <string_view>

#include <letterlode/grid.hpp>
#include <letterlode/version.hpp>

#include "c/handles.hpp"

using namespace lode::c;

#define LODE_AS_TEXT(number) #number
#define LODE_VERSION_OF(major, minor, patch) \
    LODE_AS_TEXT(major) "." LODE_AS_TEXT(minor) "." LODE_AS_TEXT(patch)
// The header's numbers and its text say the same; a test compares them with the version that the build hands
// in.
static_assert(std::string_view(LODE_VERSION) ==
              LODE_VERSION_OF(LODE_VERSION_MAJOR, LODE_VERSION_MINOR, LODE_VERSION_PATCH));

namespace {

template <int Number>
constexpr bool is(lode::Direction direction) {
    return Number == static_cast<int>(direction);
}
using enum lode::Direction;
static_assert(is<LODE_RIGHT>(right) && is<LODE_DOWN>(down) && is<LODE_DOWN_RIGHT>(down_right) &&
              is<LODE_UP_RIGHT>(up_right) && is<LODE_LEFT>(left) && is<LODE_UP>(up) &&
              is<LODE_UP_LEFT>(up_left) && is<LODE_DOWN_LEFT>(down_left));

}  // namespace

const char* lode_version() {
    return lode::version().data();
}

const char* lode_status_text(std::int32_t status) {
    switch (status) {
        case LODE_OK:
            return "done";
        case LODE_REFUSED:
            return "there is no puzzle, and the refusal says why";
        case LODE_UNUSABLE:
            return "the input cannot be used";
        case LODE_BROKEN_CALL:
            return "the library was called wrongly";
        case LODE_OUT_OF_MEMORY:
            return "memory ran out";
        case LODE_FAULT:
            return "a fault of the library";
        case LODE_CANCELLED:
            return "you cancelled before the end";
        case LODE_DISK_FAULT:
            return "the machine would not write";
        default:
            return "a status that this version does not know";
    }
}

const char* lode_direction_name(std::int32_t direction) {
    if (direction < LODE_RIGHT || direction > LODE_DOWN_LEFT) return nullptr;
    return lode::name(static_cast<lode::Direction>(direction)).data();
}

std::int32_t lode_direction_step(std::int32_t* row, std::int32_t* column, std::int32_t direction,
                                 lode_error** error) {
    for (auto* result : {row, column}) clear(result);
    return guarded(__func__, error, [&] {
        need(row, "row");
        need(column, "column");
        const lode::Cell by = lode::step(need_direction(direction));
        *row = by.row;
        *column = by.column;
        return LODE_OK;
    });
}
