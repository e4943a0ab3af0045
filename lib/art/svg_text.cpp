#include "art/svg_text.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <utility>

namespace lode {

namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
bool is_blank(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
}

// Where the number at the front of the text ends, or 0.
std::size_t end_of_number(std::string_view text) {
    const auto at = [&](std::size_t i) { return i < text.size() ? text[i] : '\0'; };
    std::size_t end = at(0) == '+' || at(0) == '-' ? 1 : 0;
    bool digits = false;
    for (; is_digit(at(end)); ++end) digits = true;
    if (at(end) == '.' && is_digit(at(end + 1))) {
        digits = true;
        for (++end; is_digit(at(end));) ++end;
    }
    if (!digits) return 0;
    if (at(end) == 'e' || at(end) == 'E') {
        const std::size_t sign = at(end + 1) == '+' || at(end + 1) == '-' ? 1 : 0;
        if (is_digit(at(end + 1 + sign)))
            for (end += 1 + sign; is_digit(at(end));) ++end;
    }
    return end;
}

}  // namespace

bool SvgText::take(char c) {
    if (next() != c || ended()) return false;
    ++at_;
    return true;
}

void SvgText::skip_blanks() {
    while (is_blank(next())) ++at_;
}

void SvgText::skip_separator() {
    skip_blanks();
    if (take(',')) skip_blanks();
}

std::optional<double> SvgText::number() {
    const std::size_t size = end_of_number(rest());
    if (size == 0) return std::nullopt;
    std::string_view digits = rest().substr(0, size);
    if (digits[0] == '+') digits.remove_prefix(1);
    double value = 0;
    const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    if (read.ec != std::errc{} || read.ptr != digits.data() + digits.size()) return std::nullopt;
    if (!(std::abs(value) <= 1e12)) return std::nullopt;
    at_ += size;
    return value;
}

std::optional<bool> SvgText::flag() {
    if (take('0')) return false;
    if (take('1')) return true;
    return std::nullopt;
}

std::string_view SvgText::letters() {
    const std::size_t start = at_;
    while ((next() >= 'a' && next() <= 'z') || (next() >= 'A' && next() <= 'Z')) ++at_;
    return text_.substr(start, at_ - start);
}

std::optional<double> svg_length(std::string_view text, std::optional<double> whole) {
    SvgText read(text);
    read.skip_blanks();
    const auto number = read.number();
    if (!number) return std::nullopt;
    if (read.take('%')) {
        read.skip_blanks();
        if (!read.ended() || !whole) return std::nullopt;
        return *number / 100 * *whole;
    }
    const std::string_view unit = read.letters();
    read.skip_blanks();
    if (!read.ended()) return std::nullopt;
    constexpr std::array<std::pair<std::string_view, double>, 7> units{{{"", 1.0},
                                                                        {"px", 1.0},
                                                                        {"mm", 96 / 25.4},
                                                                        {"cm", 960 / 25.4},
                                                                        {"in", 96.0},
                                                                        {"pt", 96.0 / 72},
                                                                        {"pc", 16.0}}};
    for (const auto& [name, size] : units)
        if (unit == name) return *number * size;
    return std::nullopt;
}

std::optional<std::vector<double>> svg_numbers(std::string_view text) {
    std::vector<double> numbers;
    SvgText read(text);
    read.skip_blanks();
    while (!read.ended()) {
        const auto number = read.number();
        if (!number) return std::nullopt;
        numbers.push_back(*number);
        read.skip_separator();
    }
    return numbers;
}

namespace {

std::optional<Affine> one_transform(std::string_view name, const std::vector<double>& v) {
    const auto tangent = [](double degrees) {
        const AngleTurn turn = turn_of(degrees);
        return turn.sine / turn.cosine;
    };
    const std::size_t n = v.size();
    if (name == "matrix" && n == 6) return Affine{v[0], v[1], v[2], v[3], v[4], v[5]};
    if (name == "translate" && (n == 1 || n == 2)) return Affine{1, 0, 0, 1, v[0], n == 2 ? v[1] : 0};
    if (name == "scale" && (n == 1 || n == 2)) return Affine{v[0], 0, 0, v[n - 1], 0, 0};
    if (name == "skewX" && n == 1) return Affine{1, 0, tangent(v[0]), 1, 0, 0};
    if (name == "skewY" && n == 1) return Affine{1, tangent(v[0]), 0, 1, 0, 0};
    if (name == "rotate" && (n == 1 || n == 3)) {
        const AngleTurn turn = turn_of(v[0]);
        const Affine rotation{turn.cosine, turn.sine, -turn.sine, turn.cosine, 0, 0};
        if (n == 1) return rotation;
        return Affine{1, 0, 0, 1, v[1], v[2]} * (rotation * Affine{1, 0, 0, 1, -v[1], -v[2]});
    }
    return std::nullopt;
}

}  // namespace

std::optional<Affine> svg_transform(std::string_view text) {
    Affine all;
    SvgText read(text);
    read.skip_blanks();
    if (read.rest() == "none") return all;
    while (!read.ended()) {
        const std::string_view name = read.letters();
        read.skip_blanks();
        if (!read.take('(')) return std::nullopt;
        read.skip_blanks();
        std::vector<double> values;
        while (!read.take(')')) {
            const auto number = read.number();
            if (!number || values.size() == 6) return std::nullopt;
            values.push_back(*number);
            read.skip_separator();
        }
        const auto one = one_transform(name, values);
        if (!one) return std::nullopt;
        all = all * *one;
        read.skip_separator();
    }
    return all;
}

}  // namespace lode
