#include <letterlode/grid.hpp>
#include <range/v3/range/conversion.hpp>
#include <range/v3/view/split.hpp>

namespace lode {
namespace {

constexpr std::array<std::string_view, 8> names{"right", "down", "down-right", "up-right",
                                                "left",  "up",   "up-left",    "down-left"};

Refusal no_direction(const std::string& part) {
    return {Refusal::Reason::unusable,
            "'" + part + "' is no direction.",
            {},
            {"Directions are right, left, down, up, down-right, up-left, down-left and up-right, with commas "
             "between and no blanks; or all."},
            {},
            0};
}

}  // namespace

std::string_view name(Direction direction) {
    return names[static_cast<unsigned>(direction)];
}

std::optional<Direction> direction_named(std::string_view wanted) {
    for (const Direction direction : all_directions)
        if (name(direction) == wanted) return direction;
    return std::nullopt;
}

Directions Directions::forward(bool right_to_left) {
    using enum Direction;
    Directions forward;
    if (right_to_left)
        for (const Direction direction : {left, down, down_left, up_left}) forward.insert(direction);
    else
        for (const Direction direction : {right, down, down_right, up_right}) forward.insert(direction);
    return forward;
}

Outcome<Directions> read_directions(std::string_view text) {
    if (text == "all") return Directions::all();
    Directions directions;
    // A comma at the end is followed by an empty part, which split() leaves out.
    if (text.ends_with(',')) return no_direction("");
    for (const auto& part : text | ranges::views::split(',') | ranges::to<std::vector<std::string>>()) {
        const auto direction = direction_named(part);
        if (!direction) return no_direction(part);
        directions.insert(*direction);
    }
    if (directions.empty())
        return Refusal{
            Refusal::Reason::unusable, "No direction is given.", {}, {"Name one or more, or all."}, {}, 0};
    return directions;
}

}  // namespace lode
