// Sizes of beds and film as a maker writes them.

#include <letterlode/blank.hpp>
#include <letterlode/plan.hpp>

namespace lode {

Outcome<Area> read_area(std::string_view text) {
    const auto explained = [&](Refusal refusal) {
        refusal.advice = {"Give width x height (12x12in, 305x305mm), or a roll's width alone (12in)."};
        return refusal;
    };
    // Neither a blank's shape nor its file is a rectangle's size.
    if (text.find(".svg") != std::string_view::npos ||
        (!text.empty() && text.front() >= 'a' && text.front() <= 'z')) {
        Refusal refusal;
        refusal.message = "'" + std::string(text) + "' is no size of a rectangle.";
        return explained(std::move(refusal));
    }
    if (text.find_first_of("xX") == std::string_view::npos) {
        const auto width = read_length(text, least_bed_mm, most_bed_mm);
        if (!width) return explained(width.refusal());
        return Area{*width, 0};
    }
    const auto size = read_blank(text);
    if (!size) return explained(size.refusal());
    return Area{size->width_mm, size->height_mm};
}

}  // namespace lode
