// The names of what a maker chooses among.

#include <letterlode/art.hpp>

namespace lode {

namespace {

template <class Choice, std::size_t count>
std::optional<Choice> named(std::string_view text, const std::array<Choice, count>& all) {
    for (const Choice choice : all)
        if (text == name(choice)) return choice;
    return std::nullopt;
}

template <class Choice, std::size_t count>
std::string_view name_among(const std::array<std::string_view, count>& names, Choice choice) {
    return names.at(static_cast<std::size_t>(choice));
}

}  // namespace

std::string_view name(Surface surface) {
    return name_among(std::array<std::string_view, 2>{"first", "second"}, surface);
}
std::optional<Surface> surface_named(std::string_view text) {
    return named(text, std::array{Surface::first, Surface::second});
}

std::string_view name(BandKind kind) {
    return name_among(std::array<std::string_view, 4>{"capsule", "brush", "ring", "none"}, kind);
}
std::optional<BandKind> band_kind_named(std::string_view text) {
    return named(text, all_band_kinds);
}

std::string_view name(Inlay inlay) {
    return name_among(std::array<std::string_view, 3>{"none", "bands", "all"}, inlay);
}
std::optional<Inlay> inlay_named(std::string_view text) {
    return named(text, all_inlays);
}

std::string_view name(BorderStyle style) {
    return name_among(std::array<std::string_view, 5>{"line", "double", "rounded", "notched", "dotted"},
                      style);
}
std::optional<BorderStyle> border_style_named(std::string_view text) {
    return named(text, all_border_styles);
}

std::string_view name(Ornament ornament) {
    return name_among(std::array<std::string_view, 3>{"leaf", "curl", "diamond"}, ornament);
}
std::optional<Ornament> ornament_named(std::string_view text) {
    return named(text, all_ornaments);
}

}  // namespace lode
