// Letters as they hang on a wall.

#include <letterlode/colour.hpp>

#include "c/handles.hpp"
#include "c/range.hpp"

using namespace lode::c;

namespace {

constexpr double longest = 1e6;  // mm

std::int32_t set_length(const char* function, lode_seen* seen, double lode::LettersSeen::*length, double mm,
                        lode_error** error) {
    return guarded(function, error, [&] {
        lode_seen& handle = need(seen, "seen");
        // So that what is no number is refused too.
        if (!(mm >= 0 && mm <= longest))
            refuse("The length is not between 0 and 1000000 mm.",
                   "Give it in mm, or 0 where it is not known.");
        handle.seen.*length = mm;
        return LODE_OK;
    });
}

std::optional<lode::Colour> colour_of(const char* given, const char* name) {
    if (!given) return std::nullopt;
    return taken(lode::read_colour(word(given, name)));
}

}  // namespace

std::int32_t lode_seen_create(lode_seen** seen, lode_error** error) {
    clear(seen);
    return guarded(__func__, error, [&] {
        auto& result = need(seen, "seen");
        result = new lode_seen;
        return LODE_OK;
    });
}

std::int32_t lode_seen_set_cap_height(lode_seen* seen, double mm, lode_error** error) {
    return set_length(__func__, seen, &lode::LettersSeen::cap_height, mm, error);
}

std::int32_t lode_seen_set_viewing(lode_seen* seen, double mm, lode_error** error) {
    return set_length(__func__, seen, &lode::LettersSeen::viewing, mm, error);
}

std::int32_t lode_seen_set_baseline(lode_seen* seen, double mm, lode_error** error) {
    return set_length(__func__, seen, &lode::LettersSeen::baseline, mm, error);
}

std::int32_t lode_seen_set_stroke(lode_seen* seen, double mm, lode_error** error) {
    return set_length(__func__, seen, &lode::LettersSeen::stroke, mm, error);
}

std::int32_t lode_seen_set_o_width(lode_seen* seen, double mm, lode_error** error) {
    return set_length(__func__, seen, &lode::LettersSeen::o_width, mm, error);
}

std::int32_t lode_seen_set_letter_gap(lode_seen* seen, double mm, lode_error** error) {
    return set_length(__func__, seen, &lode::LettersSeen::letter_gap, mm, error);
}

std::int32_t lode_seen_set_line_pitch(lode_seen* seen, double mm, lode_error** error) {
    return set_length(__func__, seen, &lode::LettersSeen::line_pitch, mm, error);
}

std::int32_t lode_seen_set_colours(lode_seen* seen, const char* letters, const char* bands, const char* blank,
                                   lode_error** error) {
    return guarded(__func__, error, [&] {
        lode_seen& handle = need(seen, "seen");
        const auto of_letters = colour_of(letters, "colour of letters");
        const auto of_bands = colour_of(bands, "colour of bands");
        const auto of_blank = colour_of(blank, "colour of the blank");
        handle.seen.letters = of_letters;
        handle.seen.bands = of_bands;
        handle.seen.blank = of_blank;
        return LODE_OK;
    });
}

void lode_seen_free(lode_seen* seen) {
    delete seen;
}
