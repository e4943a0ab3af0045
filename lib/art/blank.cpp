// What a maker writes about a piece: its size, its outline, its surface.

#include <cmath>
#include <filesystem>
#include <system_error>

#include <letterlode/art.hpp>
#include <letterlode/files.hpp>

#include "art/blank_shapes.hpp"
#include "art/measure.hpp"

namespace lode {

namespace {

Refusal no_blank(std::string_view text, const std::string& fault) {
    Refusal refusal;
    refusal.message = "blank \"" + std::string(text.substr(0, 60)) + "\": " + fault;
    refusal.advice = {
        "Write width x height and a unit: 8x10in, 203x254mm, 20.3x25.4cm or 576x720pt. A shape may stand "
        "before them (" +
        blank_shape_names() + "), as in heart 8x8in, or the name of an SVG file."};
    return refusal;
}

// One length, or two: with their own units, or with one behind both.
struct Measures {
    double first = 0;
    std::optional<double> second;
};

Outcome<Measures> read_measures(std::string_view text, std::string_view whole) {
    std::string_view rest = without_blanks(text);
    const auto first = take_number(rest);
    rest = without_blanks(rest);
    if (!first) return no_blank(whole, "this is no width x height");
    const auto first_unit = take_unit(rest);
    rest = without_blanks(rest);
    if (rest.empty() && first_unit) return Measures{*first * *first_unit, {}};
    if (!take_by(rest)) return no_blank(whole, "this is no width x height");
    rest = without_blanks(rest);
    const auto second = take_number(rest);
    if (!second) return no_blank(whole, "the height is no number");
    rest = without_blanks(rest);
    if (rest.empty()) return no_blank(whole, "the unit is missing");
    const std::string unit(rest.substr(0, 20));
    const auto second_unit = take_unit(rest);
    if (!second_unit || !rest.empty())
        return no_blank(whole, "\"" + unit + "\" is no unit that is known here");
    return Measures{*first * first_unit.value_or(*second_unit), *second * *second_unit};
}

std::optional<Refusal> out_of_bounds(BlankSize size, std::string_view whole) {
    for (const double side : {size.width_mm, size.height_mm})
        if (!(side >= least_blank_mm && side <= most_blank_mm))
            return no_blank(whole, "each side must measure from 10 mm to 5000 mm (0.4 in to 196.8 in)");
    return std::nullopt;
}

Outcome<Blank> read_shape(const BlankShape& shape, std::string_view measures, std::string_view whole) {
    const auto read = read_measures(measures, whole);
    if (!read) return read.refusal();
    if (!read->second && shape.proportion == 0) return no_blank(whole, "the height is missing");
    const BlankSize size{read->first, read->second.value_or(read->first * shape.proportion)};
    if (auto refusal = out_of_bounds(size, whole)) return std::move(*refusal);
    if (shape.name == "circle" && size.width_mm != size.height_mm)
        return no_blank(whole, "a circle is as high as it is wide; what is not is an oval");
    return shaped_blank(shape.name, size);
}

Path stretched(const Path& path, double across, double down) {
    const auto map = [&](Point p) { return Point{p.x * across, p.y * down}; };
    Path result;
    for (const Contour& contour : path.contours) {
        result.contours.push_back({map(contour.start), {}});
        for (const Segment& s : contour.segments)
            result.contours.back().segments.push_back(
                {s.curved, map(s.control1), map(s.control2), map(s.to)});
    }
    return result;
}

Outcome<Blank> read_outline(const std::string& file, std::string_view measures, std::string_view whole) {
    // A pipe without a writer would be waited for without end. What is not there, reading tells.
    std::error_code none;
    const auto status = std::filesystem::status(file, none);
    if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status) && file != "/dev/stdin")
        return no_blank(whole, "'" + file + "' is no regular file");
    const auto bytes = read_file(file, max_outline_bytes);
    if (!bytes) return bytes.refusal();
    auto blank = svg_outline(*bytes, file);
    if (!blank || measures.empty()) return blank;
    const auto read = read_measures(measures, whole);
    if (!read) return read.refusal();
    const double proportion = blank->height_mm / blank->width_mm;
    const BlankSize size{read->first, read->second.value_or(read->first * proportion)};
    if (auto refusal = out_of_bounds(size, whole)) return std::move(*refusal);
    const double off = size.height_mm / size.width_mm / proportion;
    if (!(off > 0.99 && off < 1 / 0.99))
        return no_blank(whole, "the outline measures " + both_units(*blank) +
                                   ", and this size would distort it by more than 1 percent");
    blank->outline =
        stretched(blank->outline, size.width_mm / blank->width_mm, size.height_mm / blank->height_mm);
    static_cast<BlankSize&>(*blank) = size;
    return blank;
}

// Where the name of an SVG file ends, or 0 where the text does not start with one.
std::size_t end_of_file_name(std::string_view text) {
    for (std::size_t end = text.size(); end >= 5; --end) {
        const bool stops = end == text.size() || text[end] == ' ' || text[end] == ':';
        const std::string_view ending = text.substr(end - 4, 4);
        if (stops && (ending == ".svg" || ending == ".SVG")) return end;
    }
    return 0;
}

std::string_view after_separator(std::string_view text) {
    text = without_blanks(text);
    if (text.starts_with(':')) text.remove_prefix(1);
    return without_blanks(text);
}

}  // namespace

Outcome<Blank> read_blank(std::string_view text) {
    const std::string_view said = without_blanks(text);
    if (const std::size_t end = end_of_file_name(said))
        return read_outline(std::string(said.substr(0, end)), after_separator(said.substr(end)), text);
    std::size_t word = 0;
    while (word < said.size() && said[word] >= 'a' && said[word] <= 'z') ++word;
    if (word == 0 || said.substr(0, word) == "x") return read_shape({"rectangle", 0}, said, text);
    const auto shape = blank_shape_named(said.substr(0, word));
    if (!shape)
        return no_blank(text, "\"" + std::string(said.substr(0, std::min<std::size_t>(word, 20))) +
                                  "\" is no shape that is known here");
    return read_shape(*shape, after_separator(said.substr(word)), text);
}

}  // namespace lode
