// The grid of a puzzle that is made for its panel.

#include <algorithm>
#include <cmath>

#include <letterlode/art.hpp>

#include "art/fit_inside.hpp"
#include "art/layout.hpp"
#include "art/lettering.hpp"
#include "art/setting.hpp"

namespace lode {

namespace {

// Of a mask's cells words take so many at first, as on other grids whose size is chosen; and each mask that
// does not hold them is followed by a larger one.
constexpr double first_density = 0.6;
constexpr double growth = 1.15;
constexpr int most_masks = 14;

// A heading in cells, before it is set: capitals so high, and so much of that wide and high for each letter
// and line.
constexpr double heading_cap = 1.5 * cap_share;
constexpr double letter_width = 0.85;
constexpr double line_height = 1.6;
constexpr double gap_below = 0.5;

// The box about the heading and all above it, where cells of such a size leave it room; nothing where it
// finds none.
std::optional<Box> above_grid(const Path& region, const ArtworkOptions& options, double cell) {
    const std::vector<std::string> lines = lines_of(options.heading);
    const Box box = bounds(region);
    double width = 0;
    for (const std::string& line : lines) {
        const auto letters = std::count_if(
            line.begin(), line.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
        width = std::max(width, static_cast<double>(letters) * letter_width * heading_cap * cell);
    }
    const double height = options.heading_area_mm.value_or(static_cast<double>(lines.size()) * line_height *
                                                           heading_cap * cell);
    const double middle = box.centre().x;
    // A heading that is too wide for every place becomes smaller later on.
    for (double share = 1; share > 0.3; share *= 0.85)
        for (double top = box.top; top + height < box.bottom; top += cell / 4) {
            const Box place{middle - share * width / 2, top, middle + share * width / 2,
                            top + share * height};
            if (holds(region, place))
                return Box{box.left, box.top, box.right, place.bottom + gap_below * cell};
        }
    return std::nullopt;
}

std::optional<Mask> mask_in(const Path& region, const ArtworkOptions& options, std::size_t cells) {
    std::vector<Box> kept_clear;
    if (!lines_of(options.heading).empty() || options.heading_area_mm) {
        // The size of the cells and the room for the heading depend on each other: two rounds are near
        // enough.
        auto found = cells_inside(region, cells);
        for (int round = 0; found && round < 2; ++round) {
            const auto above = above_grid(region, options, found->cell);
            if (!above) return std::nullopt;
            kept_clear = {*above};
            found = cells_inside(region, cells, kept_clear);
        }
        if (!found || found->cell < least_cell_mm) return std::nullopt;
        return found->mask;
    }
    const auto found = cells_inside(region, cells);
    if (!found || found->cell < least_cell_mm) return std::nullopt;
    return found->mask;
}

Refusal no_room(const ArtworkOptions& options) {
    Refusal refusal;
    refusal.message = "a blank of " + both_units(options.blank) +
                      " is too small for these words: cells that hold them would measure under " +
                      both_units(least_cell_mm);
    refusal.advice = {"Take a larger blank, fewer words, a shorter heading, or less margin and rebate."};
    return refusal;
}

}  // namespace

Outcome<Recipe> recipe_on_blank(Recipe recipe, const ArtworkOptions& options, const MakeControl& control) {
    if (recipe.size || recipe.mask) return recipe;
    const FreeRoom room = room_on(options);
    if (options.blank.is_rectangle()) {
        const Box box = room.box ? *room.box : bounds(options.blank.outline);
        if (box.width() > 0 && box.height() > 0)
            recipe.aspect =
                std::clamp(aspect_in(box, {lines_of(options.heading).size(), options.heading_area_mm,
                                           options.word_list ? recipe.words.words.size() : 0,
                                           lines_of(options.foot).size(), least_text_cap(options)}),
                           0.01, 100.0);
        return recipe;
    }
    if (recipe.shape != Shape::rectangle || recipe.tight) return recipe;

    const auto segmenter = Segmenter::open(recipe.text);
    if (!segmenter) return segmenter.refusal();
    const auto list = spell(recipe.words, *segmenter);
    if (!list) return list.refusal();
    std::size_t letters = 0;
    for (const Word& word : list->words) letters += word.letters.size();
    auto cells = static_cast<std::size_t>(std::ceil(static_cast<double>(letters) / first_density));
    if (room.region.empty()) return no_room(options);
    std::optional<Refusal> last;
    for (int tried = 0; tried < most_masks; ++tried) {
        auto mask = mask_in(room.region, options, cells);
        if (!mask) return last ? *last : no_room(options);
        recipe.mask = std::move(*mask);
        auto checked = CheckedRecipe::open(recipe);
        if (checked) {
            const auto puzzle = checked->make(control);
            if (puzzle) return recipe;
            last = puzzle.refusal();
        } else {
            last = checked.refusal();
        }
        if (control.cancel && *control.cancel) break;
        cells = static_cast<std::size_t>(std::ceil(static_cast<double>(cells) * growth));
    }
    return *last;
}

}  // namespace lode
