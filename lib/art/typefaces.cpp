#include "art/typefaces.hpp"

#include <algorithm>

#include "art/font.hpp"

namespace lode {

namespace {

// By eye: a stroke as strong as that of a bold sans, and counters as open.
constexpr double best_stroke = 0.15;
constexpr double best_gap = 0.15;
// More than asked for by a hair, so that rounding in a file takes nothing of it away.
constexpr double hair = 1.002;

Outcome<OpenedTypeface> open_font(const std::string& asked) {
    auto file = find_font(asked);
    if (!file) return file.refusal();
    OpenedTypeface opened;
    opened.notes = file->notes;
    auto font = Font::open(*std::move(file));
    if (!font) return font.refusal();
    opened.typeface = std::make_unique<Font>(*std::move(font));
    return opened;
}

}  // namespace

bool may_be_constructed(const std::string& font) {
    return font.empty() || font == constructed_alphabet;
}

std::vector<std::string> not_constructed(const std::vector<std::string>& texts) {
    std::vector<std::string> lacking;
    for (const std::string& text : texts)
        for (const std::string& letter : ConstructedTypeface::lacking(text))
            if (std::find(lacking.begin(), lacking.end(), letter) == lacking.end()) lacking.push_back(letter);
    return lacking;
}

ConstructedStyle constructed_style(double cap_mm, double least_stroke_mm, double least_gap_mm) {
    const double stroke =
        std::clamp(std::max(best_stroke, hair * least_stroke_mm / cap_mm), least_stroke, most_stroke);
    const double gap = std::max(best_gap, hair * least_gap_mm / cap_mm);
    return {stroke, std::min(gap, largest_gap(stroke))};
}

Outcome<OpenedTypeface> open_typeface(std::string_view what, const std::string& font,
                                      const std::vector<std::string>& texts, const ConstructedStyle& style) {
    if (!may_be_constructed(font)) return open_font(font);
    const std::vector<std::string> lacking = not_constructed(texts);
    if (lacking.empty() || font == constructed_alphabet) {
        OpenedTypeface opened;
        opened.typeface = std::make_unique<ConstructedTypeface>(style);
        opened.constructed = true;
        return opened;
    }
    auto opened = open_font(std::string(fallback_font));
    if (!opened) return opened.refusal();
    std::string names;
    constexpr std::size_t most_named = 8;
    for (std::size_t i = 0; i < std::min(lacking.size(), most_named); ++i)
        names += (i ? ", " : "") + lacking[i];
    if (lacking.size() > most_named) names += " and " + std::to_string(lacking.size() - most_named) + " more";
    opened->notes.push_back(std::string(what) + " set in " + opened->typeface->name() +
                            ", since the constructed alphabet lacks " + names +
                            ". Another font is named with --font.");
    return opened;
}

}  // namespace lode
