#include "art/lettering.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include <letterlode/art.hpp>

#include "art/font.hpp"

namespace lode {

namespace {

// Shares of a cell, by eye: what no letter goes beyond.
constexpr double most_width = 0.84;
constexpr double most_height = 0.90;
// Where the widest plain letter (a W) does not fit, all letters shrink with it, but no further than this.
constexpr double most_common_shrinking = 0.7;
// Letters share a baseline unless their tails or marks leave this lane about the middle of the row.
constexpr double lane = 0.43;

Path joined(const std::vector<SetLetter>& letters) {
    Path path;
    for (const SetLetter& letter : letters)
        path.contours.insert(path.contours.end(), letter.path.contours.begin(), letter.path.contours.end());
    return path;
}

bool is_one_code_point(const std::string& text) {
    return std::count_if(text.begin(), text.end(),
                         [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }) == 1;
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>((values.size() - 1) / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

struct Missing {
    std::string text;
    std::string place;
};

Refusal lacks(const Typeface& typeface, const std::vector<Missing>& missing) {
    Refusal refusal;
    refusal.message = "font \"" + typeface.name() + "\" has no glyph for ";
    constexpr std::size_t most_named = 8;
    for (std::size_t i = 0; i < std::min(missing.size(), most_named); ++i) {
        refusal.message += (i ? ", " : "") + ("\"" + missing[i].text + "\" (" + missing[i].place + ")");
        refusal.words.push_back(missing[i].text);
    }
    if (missing.size() > most_named)
        refusal.message += " and " + std::to_string(missing.size() - most_named) + " more";
    std::string all;
    for (const Missing& one : missing) all += one.text;
    std::string families;
    for (const std::string& family : families_with(all)) families += (families.empty() ? "" : ", ") + family;
    refusal.advice = {families.empty()
                          ? "No installed font has all of these; install one that does, or name its file."
                          : "Installed fonts that have them: " + families + "."};
    return refusal;
}

std::string place_of(const Grid& grid, Letter letter) {
    const auto& letters = grid.letters();
    const auto at =
        static_cast<std::size_t>(std::find(letters.begin(), letters.end(), letter) - letters.begin());
    const auto columns = static_cast<std::size_t>(grid.size().columns);
    return "row " + std::to_string(at / columns + 1) + ", column " + std::to_string(at % columns + 1);
}

// A letter of the grid as the font draws it, in font units.
struct Drawn {
    Letter letter;
    std::string text;
    Path path;
    Box box;
};

Outcome<std::vector<Drawn>> draw_each(Typeface& typeface, const LetteredGrid& grid) {
    std::vector<bool> used(grid.alphabet.size());
    for (const Letter letter : grid.grid.letters())
        if (letter < used.size()) used[letter] = true;

    std::vector<Drawn> drawn;
    std::vector<Missing> missing;
    for (std::size_t i = 0; i < used.size(); ++i) {
        if (!used[i]) continue;
        const auto letter = static_cast<Letter>(i);
        const std::string& text = grid.alphabet.text(letter);
        const auto line = typeface.set_line(text);
        if (!line) return line.refusal();
        Path path = joined(line->letters);
        if (!line->missing.empty() || path.empty()) {
            missing.push_back({text, place_of(grid.grid, letter)});
            continue;
        }
        const Box box = bounds(path);
        drawn.push_back({letter, text, std::move(path), box});
    }
    if (!missing.empty()) return lacks(typeface, missing);
    return drawn;
}

// Cells a font unit, the same for all letters that fit their cells with it.
double common_scale(const std::vector<Drawn>& drawn, double cap_height) {
    const double nominal = cap_share / cap_height;
    double scale = nominal;
    for (const Drawn& one : drawn)
        if (is_one_code_point(one.text))
            scale = std::min({scale, most_width / one.box.width(), most_height / one.box.height()});
    return std::max(scale, most_common_shrinking * nominal);
}

}  // namespace

Outcome<Lettering> set_letters(Typeface& typeface, const LetteredGrid& grid) {
    const auto drawn = draw_each(typeface, grid);
    if (!drawn) return drawn.refusal();

    double cap_height = typeface.cap_height();
    std::vector<double> tops;
    std::vector<double> bottoms;
    double tallest = 0;
    for (const Drawn& one : *drawn) {
        tops.push_back(one.box.top);
        bottoms.push_back(one.box.bottom);
        tallest = std::max(tallest, one.box.height());
    }
    if (!(cap_height > 0)) cap_height = tallest;

    Lettering lettering;
    lettering.letters.resize(grid.alphabet.size());
    if (drawn->empty()) return lettering;
    const double scale = common_scale(*drawn, cap_height);
    lettering.cap_height = scale * cap_height;
    // Half way up the common run of letters; capitals and small letters, or a script without either, all have
    // one.
    const double middle = (median(tops) + median(bottoms)) / 2;

    for (const Drawn& one : *drawn) {
        const double own = std::min({scale, most_width / one.box.width(), most_height / one.box.height()});
        if (own < scale) lettering.shrunk.push_back(one.text);
        double shift = -own * middle;
        const double above = -lane - (own * one.box.top + shift);
        const double below = own * one.box.bottom + shift - lane;
        if (own * one.box.height() >= 2 * lane)
            shift = -own * one.box.centre().y;
        else if (above > 0)
            shift += above;
        else if (below > 0)
            shift -= below;
        lettering.letters[one.letter] = transformed(one.path, own, {-own * one.box.centre().x, shift});
    }
    return lettering;
}

namespace {

Refusal no_heading(const std::string& fault) {
    Refusal refusal;
    refusal.message = "heading: " + fault;
    return refusal;
}

}  // namespace

std::vector<std::string> heading_lines(std::string_view text) {
    std::vector<std::string> lines;
    std::string line;
    for (const char c : std::string(text) + "\n") {
        if (c != '\n') {
            line += c == '\t' || c == '\r' ? ' ' : c;
            continue;
        }
        const std::size_t first = line.find_first_not_of(' ');
        if (first != std::string::npos)
            lines.push_back(line.substr(first, line.find_last_not_of(' ') - first + 1));
        line.clear();
    }
    return lines;
}

Outcome<Heading> set_heading(Typeface& typeface, const std::string& text) {
    if (text.size() > max_heading_bytes)
        return no_heading("it is longer than " + std::to_string(max_heading_bytes) + " bytes");
    const auto normal = normalised(text);
    if (!normal) return no_heading("it is no valid UTF-8");
    const std::vector<std::string> lines = heading_lines(*normal);
    if (lines.size() > max_heading_lines)
        return no_heading("it has more than " + std::to_string(max_heading_lines) + " lines");

    Heading heading;
    std::vector<Missing> missing;
    for (const std::string& line : lines) {
        const std::string place = "heading, line " + std::to_string(heading.lines.size() + 1);
        if (std::any_of(line.begin(), line.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; }))
            return no_heading("line " + std::to_string(heading.lines.size() + 1) +
                              " holds a control character");
        auto set = typeface.set_line(line);
        if (!set) return set.refusal();
        for (std::string& lacking : set->missing) missing.push_back({std::move(lacking), place});
        if (set->letters.empty()) continue;

        const Box box = bounds(joined(set->letters));
        const double cap_height = typeface.cap_height() > 0 ? typeface.cap_height() : box.height();
        HeadingLine placed;
        for (const SetLetter& letter : set->letters)
            placed.letters.push_back(
                {letter.text, transformed(letter.path, 1 / cap_height, {-box.centre().x / cap_height, 0})});
        placed.box = {-box.width() / 2 / cap_height, box.top / cap_height, box.width() / 2 / cap_height,
                      box.bottom / cap_height};
        heading.lines.push_back(std::move(placed));
        heading.text += (heading.text.empty() ? "" : "\n") + line;
    }
    if (!missing.empty()) return lacks(typeface, missing);
    return heading;
}

}  // namespace lode
