#include "art/measure.hpp"

#include <charconv>

#include <letterlode/art.hpp>

#include "art/number.hpp"

namespace lode {

namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::string quoted(std::string_view text) {
    return "\"" + std::string(text.substr(0, 60)) + "\"";
}

}  // namespace

std::string_view without_blanks(std::string_view text) {
    while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
    return text;
}

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

std::optional<double> take_unit(std::string_view& text) {
    for (const auto& [unit, millimetres] : length_units) {
        if (!text.starts_with(unit)) continue;
        const std::string_view rest = text.substr(unit.size());
        if (!rest.empty() && is_letter(rest[0]) && rest[0] != 'x' && rest[0] != 'X') continue;
        text = rest;
        return millimetres;
    }
    return std::nullopt;
}

bool take_by(std::string_view& text) {
    for (const std::string_view by : {"x", "X", "×"})
        if (text.starts_with(by)) {
            text.remove_prefix(by.size());
            return true;
        }
    return false;
}

Outcome<double> read_length(std::string_view text, double least_mm, double most_mm) {
    std::string_view rest = without_blanks(text);
    const auto number = take_number(rest);
    rest = without_blanks(rest);
    const auto unit = number ? take_unit(rest) : std::nullopt;
    if (number && unit && rest.empty()) {
        const double length = *number * *unit;
        if (length >= least_mm && length <= most_mm) return length;
    }
    Refusal refusal;
    refusal.message =
        quoted(text) + " is no length from " + both_units(least_mm) + " to " + both_units(most_mm);
    refusal.advice = {"Write a number and a unit: 6mm, 0.25in, 1cm or 12pt."};
    return refusal;
}

Outcome<double> read_distance(std::string_view text) {
    std::string_view rest = without_blanks(text);
    const auto number = take_number(rest);
    rest = without_blanks(rest);
    constexpr std::array<UnitName, 5> distances{
        {{"m", 1'000.0}, {"cm", 10.0}, {"mm", 1.0}, {"ft", 304.8}, {"in", 25.4}}};
    Refusal refusal;
    refusal.message = quoted(text) + " is no distance from 10 cm to 100 m";
    refusal.advice = {"Write a number and a unit: 1.5m, 60cm, 400mm, 5ft or 24in."};
    if (!number) return refusal;
    for (const auto& [unit, millimetres] : distances) {
        const double distance = *number * millimetres;
        if (rest == unit && distance >= least_viewing_mm && distance <= most_viewing_mm) return distance;
    }
    return refusal;
}

std::string both_units(double mm) {
    return decimal(mm, 2) + " mm (" + decimal(mm / 25.4, 3) + " in)";
}

std::string both_units(BlankSize size) {
    return decimal(size.width_mm, 2) + " x " + decimal(size.height_mm, 2) + " mm (" +
           decimal(size.width_mm / 25.4, 3) + " x " + decimal(size.height_mm / 25.4, 3) + " in)";
}

}  // namespace lode
