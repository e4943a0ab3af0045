#include "art/svg_style.hpp"

#include <algorithm>
#include <array>

namespace lode {

namespace {

constexpr std::array<std::string_view, 13> drawing_properties{
    "display",        "visibility", "fill", "stroke", "fill-rule",    "opacity",           "fill-opacity",
    "stroke-opacity", "clip-path",  "mask", "clip",   "stroke-width", "content-visibility"};
// CSS may set these for a shape; as attributes they are read elsewhere.
constexpr std::array<std::string_view, 17> shaping_properties{
    "transform", "translate", "rotate", "scale", "offset", "offset-path", "d",      "cx",  "cy",
    "r",         "rx",        "ry",     "x",     "y",      "width",       "height", "zoom"};

template <class Names>
bool one_of(const Names& names, std::string_view name) {
    return std::find(names.begin(), names.end(), name) != names.end();
}

bool is_blank(char c) {
    return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && is_blank(text.front())) text.remove_prefix(1);
    while (!text.empty() && is_blank(text.back())) text.remove_suffix(1);
    return text;
}

std::string lower(std::string_view text) {
    std::string result(text);
    for (char& c : result)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return result;
}

bool has_word(std::string_view words, std::string_view word) {
    while (!words.empty()) {
        words = trimmed(words);
        std::size_t size = 0;
        while (size < words.size() && !is_blank(words[size])) ++size;
        if (words.substr(0, size) == word) return true;
        words.remove_prefix(size);
    }
    return false;
}

bool is_name_character(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '_' || static_cast<unsigned char>(c) >= 0x80;
}

// Without comments, and without the marks that once hid style from programs that knew none.
std::string without_comments(std::string_view text) {
    std::string result;
    while (!text.empty()) {
        if (text.starts_with("/*")) {
            const std::size_t end = text.find("*/", 2);
            text.remove_prefix(end == std::string_view::npos ? text.size() : end + 2);
            result += ' ';
        } else if (text.starts_with("<!--")) {
            text.remove_prefix(4);
        } else if (text.starts_with("-->")) {
            text.remove_prefix(3);
        } else {
            result += text.front();
            text.remove_prefix(1);
        }
    }
    return result;
}

// The byte after the brace that closes the block which starts here.
std::size_t end_of_block(std::string_view text, std::size_t open) {
    int depth = 0;
    for (std::size_t i = open; i < text.size(); ++i) {
        if (text[i] == '{') ++depth;
        if (text[i] == '}' && --depth == 0) return i + 1;
    }
    return text.size();
}

bool zero(std::string_view value) {
    return value == "0" || value == "0%" || value == "0.0" || value == ".0";
}
bool no_paint(std::string_view value) {
    return value == "none" || value == "transparent";
}

}  // namespace

int StyleSheet::Rule::specificity() const {
    return (id.empty() ? 0 : 10'000) + 100 * static_cast<int>(std::min<std::size_t>(classes.size(), 90)) +
           (element.empty() ? 0 : 1);
}

bool StyleSheet::Rule::matches(const StyledElement& styled) const {
    if (!element.empty() && element != styled.name) return false;
    if (!id.empty() && id != styled.id) return false;
    return std::all_of(classes.begin(), classes.end(),
                       [&](const std::string& name) { return has_word(styled.classes, name); });
}

std::vector<StyleSheet::Declaration> StyleSheet::declarations_of(std::string_view text) {
    std::vector<Declaration> declarations;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(';'), text.size());
        const std::string_view one = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        const std::size_t colon = one.find(':');
        if (colon == std::string_view::npos) continue;
        std::string property = lower(trimmed(one.substr(0, colon)));
        if (!one_of(drawing_properties, property) && !one_of(shaping_properties, property)) continue;
        std::string value = lower(trimmed(one.substr(colon + 1)));
        const std::size_t mark = value.find('!');
        const bool important = mark != std::string::npos;
        if (important) value = std::string(trimmed(std::string_view(value).substr(0, mark)));
        declarations.push_back({std::move(property), std::move(value), important});
    }
    return declarations;
}

std::optional<StyleSheet::Rule> StyleSheet::simple_selector(std::string_view text) {
    Rule rule;
    std::size_t at = 0;
    const auto name = [&] {
        const std::size_t start = at;
        while (at < text.size() && is_name_character(text[at])) ++at;
        return std::string(text.substr(start, at - start));
    };
    if (text.starts_with('*'))
        ++at;
    else
        rule.element = name();
    while (at < text.size()) {
        const char mark = text[at++];
        const std::string named = name();
        if (named.empty()) return std::nullopt;
        if (mark == '.')
            rule.classes.push_back(named);
        else if (mark == '#' && rule.id.empty())
            rule.id = named;
        else
            return std::nullopt;
    }
    return text.empty() ? std::nullopt : std::optional(std::move(rule));
}

std::optional<std::string> StyleSheet::add(std::string_view source) {
    const std::string text = without_comments(source);
    const std::string_view all = text;
    std::size_t at = 0;
    while (at < all.size()) {
        const std::size_t stop = all.find_first_of("{;", at);
        if (stop == std::string_view::npos) break;
        const std::string_view head = trimmed(all.substr(at, stop - at));
        if (all[stop] == ';') {  // a statement such as @charset or @namespace
            at = stop + 1;
            continue;
        }
        const std::size_t end = end_of_block(all, stop);
        const std::string_view body = all.substr(stop + 1, end - stop - 1 - (all[end - 1] == '}' ? 1 : 0));
        at = end;
        if (head.starts_with('@')) {
            if (head.starts_with("@font-face") || head.starts_with("@page")) continue;
            return std::string(head.substr(0, 40));
        }
        const auto declarations = std::make_shared<const std::vector<Declaration>>(declarations_of(body));
        if (declarations->empty()) continue;
        std::string_view selectors = head;
        while (!selectors.empty()) {
            const std::size_t comma = std::min(selectors.find(','), selectors.size());
            const std::string_view selector = trimmed(selectors.substr(0, comma));
            selectors.remove_prefix(std::min(comma + 1, selectors.size()));
            auto rule = simple_selector(selector);
            if (!rule || rules_.size() == max_rules) return std::string(selector.substr(0, 40));
            rule->declarations = declarations;
            rules_.push_back(std::move(*rule));
        }
    }
    return std::nullopt;
}

ElementStyle StyleSheet::style_of(const StyledElement& element, const Inherited& parent) const {
    // The winner of each property, by weight; among equals the later one.
    struct Winner {
        std::string_view property;
        std::string_view value;
        int weight;
    };
    std::vector<Winner> winners;
    const auto offer = [&](std::string_view property, std::string_view value, int weight) {
        for (Winner& winner : winners)
            if (winner.property == property) {
                if (weight >= winner.weight) winner = {property, value, weight};
                return;
            }
        winners.push_back({property, value, weight});
    };
    constexpr int inline_weight = 1'000'000;
    constexpr int important_weight = 10'000'000;
    for (const auto& [property, value] : element.attributes)
        if (one_of(drawing_properties, property)) offer(property, trimmed(value), -1);
    for (const Rule& rule : rules_) {
        if (!rule.matches(element)) continue;
        for (const Declaration& d : *rule.declarations)
            offer(d.property, d.value, rule.specificity() + (d.important ? important_weight : 0));
    }
    const std::string own = without_comments(element.style);
    const std::vector<Declaration> declared = declarations_of(own);
    for (const Declaration& d : declared)
        offer(d.property, d.value, inline_weight + (d.important ? important_weight : 0));

    ElementStyle style{parent, true, false, {}};
    bool fill_shows = true, stroke_shows = true;
    for (const auto& [property, value, weight] : winners) {
        if (value == "inherit" || value == "unset") continue;
        if (property == "display")
            style.displayed = style.displayed && value != "none";
        else if (property == "visibility")
            style.inherited.visible = value == "visible" || value == "initial";
        else if (property == "fill")
            style.inherited.filled = !no_paint(value);
        else if (property == "stroke")
            style.inherited.stroked = !no_paint(value) && value != "initial";
        else if (property == "fill-rule")
            style.inherited.evenodd = value == "evenodd";
        else if (property == "opacity")
            style.displayed = style.displayed && !zero(value);
        else if (property == "fill-opacity")
            fill_shows = !zero(value);
        else if (property == "stroke-opacity" || property == "stroke-width")
            stroke_shows = stroke_shows && !zero(value);
        else if (property == "clip-path" || property == "mask")
            style.clipped = style.clipped || value != "none";
        else if (one_of(shaping_properties, property) && value != "none" && value != "auto")
            style.reshaped_by = property;
    }
    style.inherited.filled = style.inherited.filled && fill_shows;
    style.inherited.stroked = style.inherited.stroked && stroke_shows;
    return style;
}

}  // namespace lode
