// What one can choose among, by the names of the command line.

#include <algorithm>
#include <array>

#include <letterlode/art.hpp>
#include <letterlode/paper.hpp>
#include <letterlode/print.hpp>

#include "c/art/handles.hpp"
#include "c/art/values.hpp"

namespace lode::c {
namespace {

template <class... Choice>
std::array<std::string_view, sizeof...(Choice)> names(Choice... choice) {
    return {name(choice)...};
}

template <class Choice, std::size_t count>
std::array<std::string_view, count + 1> names_or_none(const std::array<Choice, count>& all) {
    std::array<std::string_view, count + 1> result{};
    std::transform(all.begin(), all.end(), result.begin(), [](Choice choice) { return name(choice); });
    result.back() = "none";
    return result;
}

}  // namespace

std::span<const std::string_view> choices_of(std::string_view option) {
    static const auto surfaces = names(Surface::first, Surface::second);
    static const auto bands = names(BandKind::capsule, BandKind::brush, BandKind::ring, BandKind::none);
    static const auto inlays = names(Inlay::none, Inlay::bands, Inlay::all);
    static const auto borders = names_or_none(all_border_styles);
    static const auto ornaments = names_or_none(all_ornaments);
    static constexpr std::array<std::string_view, 5> layers{"letters", "bands", "heading", "text", "border"};
    static constexpr std::array<std::string_view, 3> formats{"svg", "pdf", "dxf"};
    static const auto papers = names(Paper::a4, Paper::letter);
    static const auto orders = names(ListOrder::alphabetical, ListOrder::given, ListOrder::length);
    static const auto grid_lines = names(GridLines::none, GridLines::light, GridLines::full);
    static const auto keys = names_or_none(std::array{KeyMarks::rings, KeyMarks::lines, KeyMarks::greyed});
    if (option == "surface") return surfaces;
    if (option == "band") return bands;
    if (option == "inlay") return inlays;
    if (option == "border") return borders;
    if (option == "ornament") return ornaments;
    if (option == "colour") return layers;
    if (option == "format") return formats;
    if (option == "paper" || option == "page") return papers;
    if (option == "list") return orders;
    if (option == "grid-lines") return grid_lines;
    if (option == "key") return keys;
    return {};
}

}  // namespace lode::c

std::size_t lode_choice_count(const char* option) {
    return option ? lode::c::choices_of(option).size() : 0;
}

const char* lode_choice(const char* option, std::size_t index) {
    if (!option) return nullptr;
    const auto all = lode::c::choices_of(option);
    return index < all.size() ? all[index].data() : nullptr;
}
