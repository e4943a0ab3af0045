// The names of what a printed puzzle can be asked for.

#include <array>

#include <letterlode/print.hpp>

namespace lode {

namespace {

constexpr std::array<std::string_view, 3> list_orders{"alphabetical", "given", "length"};
constexpr std::array<std::string_view, 3> kinds_of_grid_lines{"none", "light", "full"};
constexpr std::array<std::string_view, 3> kinds_of_key_marks{"rings", "lines", "greyed"};

template <class Choice>
std::optional<Choice> choice_named(const std::array<std::string_view, 3>& names, std::string_view name) {
    for (std::size_t i = 0; i < names.size(); ++i)
        if (names[i] == name) return static_cast<Choice>(i);
    return std::nullopt;
}

}  // namespace

std::string_view name(ListOrder order) {
    return list_orders.at(static_cast<std::size_t>(order));
}
std::optional<ListOrder> list_order_named(std::string_view name) {
    return choice_named<ListOrder>(list_orders, name);
}

std::string_view name(GridLines lines) {
    return kinds_of_grid_lines.at(static_cast<std::size_t>(lines));
}
std::optional<GridLines> grid_lines_named(std::string_view name) {
    return choice_named<GridLines>(kinds_of_grid_lines, name);
}

std::string_view name(KeyMarks marks) {
    return kinds_of_key_marks.at(static_cast<std::size_t>(marks));
}
std::optional<KeyMarks> key_marks_named(std::string_view name) {
    return choice_named<KeyMarks>(kinds_of_key_marks, name);
}

}  // namespace lode
