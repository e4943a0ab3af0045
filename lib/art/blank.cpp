// What a maker writes about a piece: its size, its surface, its colours.

#include <array>
#include <charconv>
#include <utility>

#include <letterlode/art.hpp>

namespace lode {

namespace {

constexpr std::array<std::pair<std::string_view, double>, 4> units{
    {{"in", 25.4}, {"mm", 1.0}, {"cm", 10.0}, {"pt", 25.4 / 72}}};

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

std::string_view without_blanks(std::string_view text) {
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
    return text;
}

// Takes digits with at most one point among them from the front: no sign, no exponent, none of the names of
// no number.
std::optional<double> take_number(std::string_view& text) {
    std::size_t size = 0;
    std::size_t digits = 0;
    bool point = false;
    for (; size < text.size(); ++size) {
        if (is_digit(text[size]))
            ++digits;
        else if (text[size] == '.' && !point)
            point = true;
        else
            break;
    }
    if (digits == 0 || size > 30) return std::nullopt;
    double value = 0;
    const auto read = std::from_chars(text.data(), text.data() + size, value, std::chars_format::fixed);
    if (read.ec != std::errc{} || read.ptr != text.data() + size) return std::nullopt;
    text.remove_prefix(size);
    return value;
}

bool take_by(std::string_view& text) {
    for (const std::string_view by : {"x", "X", "×"})
        if (text.starts_with(by)) {
            text.remove_prefix(by.size());
            return true;
        }
    return false;
}

Refusal no_blank(std::string_view text, const std::string& fault) {
    Refusal refusal;
    refusal.message = "blank \"" + std::string(text.substr(0, 60)) + "\": " + fault;
    refusal.advice = {"Write width x height and one unit: 8x10in, 203x254mm, 20.3x25.4cm or 576x720pt."};
    return refusal;
}

}  // namespace

Outcome<BlankSize> read_blank(std::string_view text) {
    std::string_view rest = without_blanks(text);
    const auto width = take_number(rest);
    rest = without_blanks(rest);
    if (!width || !take_by(rest)) return no_blank(text, "this is no width x height");
    rest = without_blanks(rest);
    const auto height = take_number(rest);
    if (!height) return no_blank(text, "the height is no number");
    rest = without_blanks(rest);
    if (rest.empty()) return no_blank(text, "the unit is missing");
    for (const auto& [unit, millimetres] : units) {
        if (rest != unit) continue;
        const BlankSize size{*width * millimetres, *height * millimetres};
        for (const double side : {size.width_mm, size.height_mm})
            if (!(side >= least_blank_mm && side <= most_blank_mm))
                return no_blank(text, "each side must measure from 10 mm to 5000 mm (0.4 in to 196.8 in)");
        return size;
    }
    return no_blank(text, "\"" + std::string(rest.substr(0, 20)) + "\" is no unit that is known here");
}

Outcome<double> read_distance(std::string_view text) {
    std::string_view rest = without_blanks(text);
    const auto number = take_number(rest);
    rest = without_blanks(rest);
    constexpr std::array<std::pair<std::string_view, double>, 5> distances{
        {{"m", 1'000.0}, {"cm", 10.0}, {"mm", 1.0}, {"ft", 304.8}, {"in", 25.4}}};
    Refusal refusal;
    refusal.message = "\"" + std::string(text.substr(0, 60)) + "\" is no distance from 10 cm to 100 m";
    refusal.advice = {"Write a number and a unit: 1.5m, 60cm, 400mm, 5ft or 24in."};
    if (!number) return refusal;
    for (const auto& [unit, millimetres] : distances) {
        const double distance = *number * millimetres;
        if (rest == unit && distance >= least_viewing_mm && distance <= most_viewing_mm) return distance;
    }
    return refusal;
}

std::string_view name(Surface surface) {
    return surface == Surface::first ? "first" : "second";
}

std::optional<Surface> surface_named(std::string_view text) {
    for (const Surface surface : {Surface::first, Surface::second})
        if (name(surface) == text) return surface;
    return std::nullopt;
}

}  // namespace lode
