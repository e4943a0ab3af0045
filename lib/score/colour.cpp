#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>
#include <optional>

#include <letterlode/colour.hpp>

#include "score/colour_keywords.hpp"

namespace lode {
namespace {

using Three = std::array<double, 3>;
using Matrix = std::array<Three, 3>;

Three product(const Matrix& matrix, const Three& values) {
    Three result{};
    for (std::size_t row = 0; row < 3; ++row)
        result[row] = matrix[row][0] * values[0] + matrix[row][1] * values[1] + matrix[row][2] * values[2];
    return result;
}

double linear(std::uint8_t value) {
    const double share = value / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

Three linear(Colour colour) {
    return {linear(colour.red), linear(colour.green), linear(colour.blue)};
}

std::uint8_t encoded(double value) {
    const double held = std::clamp(value, 0.0, 1.0);
    const double share = held <= 0.0031308 ? 12.92 * held : 1.055 * std::pow(held, 1 / 2.4) - 0.055;
    return static_cast<std::uint8_t>(std::lround(255 * share));
}

// Keywords are the same in capitals.
std::optional<std::uint32_t> rgb_named(std::string_view text) {
    std::string small(text.substr(0, 40));
    for (char& c : small)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    const auto found = std::lower_bound(
        colour_keywords.begin(), colour_keywords.end(), small,
        [](const ColourKeyword& keyword, const std::string& name) { return keyword.name < name; });
    if (found == colour_keywords.end() || found->name != small) return std::nullopt;
    return found->rgb;
}

}  // namespace

Outcome<Colour> read_colour(std::string_view text) {
    Refusal refusal;
    refusal.message = "\"" + std::string(text.substr(0, 40)) + "\" is no colour";
    refusal.advice = {
        "Write a colour as #rrggbb, two hexadecimal digits each for red, green and blue (#243f3a), or by a "
        "keyword of CSS such as gold or seagreen."};
    if (const auto rgb = rgb_named(text))
        return Colour{static_cast<std::uint8_t>(*rgb >> 16), static_cast<std::uint8_t>(*rgb >> 8),
                      static_cast<std::uint8_t>(*rgb)};
    if (text.size() != 7 || text[0] != '#') return refusal;
    std::array<std::uint8_t, 3> parts{};
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const char* from = text.data() + 1 + 2 * i;
        const auto read = std::from_chars(from, from + 2, parts[i], 16);
        if (read.ec != std::errc{} || read.ptr != from + 2) return refusal;
    }
    return Colour{parts[0], parts[1], parts[2]};
}

std::string to_text(Colour colour) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text = "#";
    for (const unsigned part : {colour.red, colour.green, colour.blue}) {
        text += digits[part / 16];
        text += digits[part % 16];
    }
    return text;
}

double relative_luminance(Colour colour) {
    const Three rgb = linear(colour);
    return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
}

double contrast_ratio(Colour one, Colour other) {
    const double first = relative_luminance(one);
    const double second = relative_luminance(other);
    return (std::max(first, second) + 0.05) / (std::min(first, second) + 0.05);
}

Lab lab_of(Colour colour) {
    // IEC 61966-2-1, linear sRGB to XYZ; the white is what (1, 1, 1) gives.
    constexpr Matrix to_xyz{{{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}}};
    const Three xyz = product(to_xyz, linear(colour));
    const Three white = product(to_xyz, {1, 1, 1});
    const auto f = [&](std::size_t at) {
        constexpr double delta = 6.0 / 29;
        const double share = xyz[at] / white[at];
        return share > delta * delta * delta ? std::cbrt(share) : share / (3 * delta * delta) + 4.0 / 29;
    };
    return {116 * f(1) - 16, 500 * (f(0) - f(1)), 200 * (f(1) - f(2))};
}

double colour_difference(const Lab& one, const Lab& other) {
    constexpr double degree = std::numbers::pi / 180;
    const auto to_the_7th = [](double value) { return std::pow(value, 7); };
    const auto weight_of_chroma = [&](double chroma) {
        const double power = to_the_7th(chroma);
        return std::sqrt(power / (power + to_the_7th(25)));
    };
    const double mean_chroma = (std::hypot(one.a, one.b) + std::hypot(other.a, other.b)) / 2;
    const double stretch = 1 + 0.5 * (1 - weight_of_chroma(mean_chroma));
    const double a1 = one.a * stretch;
    const double a2 = other.a * stretch;
    const double chroma1 = std::hypot(a1, one.b);
    const double chroma2 = std::hypot(a2, other.b);
    // In degrees from 0 to 360; 0 for grey.
    const auto hue_of = [&](double a, double b) {
        if (a == 0 && b == 0) return 0.0;
        const double angle = std::atan2(b, a) / degree;
        return angle < 0 ? angle + 360 : angle;
    };
    const double hue1 = hue_of(a1, one.b);
    const double hue2 = hue_of(a2, other.b);
    const bool is_grey = chroma1 * chroma2 == 0;

    double turn = is_grey ? 0 : hue2 - hue1;
    if (turn > 180) turn -= 360;
    if (turn < -180) turn += 360;
    double mean_hue = hue1 + hue2;
    if (!is_grey) {
        if (std::abs(hue1 - hue2) <= 180)
            mean_hue /= 2;
        else
            mean_hue = mean_hue < 360 ? (mean_hue + 360) / 2 : (mean_hue - 360) / 2;
    }
    const double lightness = other.lightness - one.lightness;
    const double chroma = chroma2 - chroma1;
    const double hue = 2 * std::sqrt(chroma1 * chroma2) * std::sin(turn / 2 * degree);

    const double mean_lightness = (one.lightness + other.lightness) / 2;
    const double mean = (chroma1 + chroma2) / 2;
    const double t = 1 - 0.17 * std::cos((mean_hue - 30) * degree) + 0.24 * std::cos(2 * mean_hue * degree) +
                     0.32 * std::cos((3 * mean_hue + 6) * degree) -
                     0.20 * std::cos((4 * mean_hue - 63) * degree);
    const double off_middle = (mean_lightness - 50) * (mean_lightness - 50);
    const double by_lightness = 1 + 0.015 * off_middle / std::sqrt(20 + off_middle);
    const double by_chroma = 1 + 0.045 * mean;
    const double by_hue = 1 + 0.015 * mean * t;
    const double blue = (mean_hue - 275) / 25;
    const double rotation = -std::sin(60 * std::exp(-blue * blue) * degree) * 2 * weight_of_chroma(mean);
    const double l = lightness / by_lightness;
    const double c = chroma / by_chroma;
    const double h = hue / by_hue;
    return std::sqrt(l * l + c * c + h * h + rotation * c * h);
}

std::string_view name(Vision vision) {
    constexpr std::array<std::string_view, 4> names{"usual", "protan", "deutan", "tritan"};
    return names[static_cast<std::size_t>(vision)];
}

Colour as_seen(Colour colour, Vision vision) {
    if (vision == Vision::usual) return colour;
    constexpr std::array<Matrix, 3> seen{
        {{{{0.152286, 1.052583, -0.204868},
           {0.114503, 0.786281, 0.099216},
           {-0.003882, -0.048116, 1.051998}}},
         {{{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
         {{{1.255528, -0.076749, -0.178779},
           {-0.078411, 0.930809, 0.147602},
           {0.004733, 0.691367, 0.303900}}}}};
    const Three rgb = product(seen[static_cast<std::size_t>(vision) - 1], linear(colour));
    return {encoded(rgb[0]), encoded(rgb[1]), encoded(rgb[2])};
}

}  // namespace lode
