// Lengths and sizes as a person writes them.

#include <letterlode/art.hpp>
#include <letterlode/plan.hpp>

#include "c/art/handles.hpp"

using namespace lode::c;

std::int32_t lode_read_length(double* mm, const char* given, lode_error** error) {
    clear(mm);
    return guarded(__func__, error, [&] {
        constexpr double most_length_mm = 10'000;
        auto& result = need(mm, "mm");
        result = taken(lode::read_length(word(given, "text"), 0, most_length_mm));
        return LODE_OK;
    });
}

std::int32_t lode_read_distance(double* mm, const char* given, lode_error** error) {
    clear(mm);
    return guarded(__func__, error, [&] {
        auto& result = need(mm, "mm");
        result = taken(lode::read_distance(word(given, "text")));
        return LODE_OK;
    });
}

std::int32_t lode_read_area(double* width_mm, double* height_mm, const char* given, lode_error** error) {
    clear(width_mm);
    clear(height_mm);
    return guarded(__func__, error, [&] {
        auto& width = need(width_mm, "width_mm");
        auto& height = need(height_mm, "height_mm");
        const lode::Area area = taken(lode::read_area(word(given, "text")));
        width = area.width_mm;
        height = area.height_mm;
        return LODE_OK;
    });
}
