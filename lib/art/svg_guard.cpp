#include "art/svg_guard.hpp"

#include <algorithm>

namespace lode {

namespace {

constexpr std::ptrdiff_t most_tags = 1'000'000;

std::string lower(std::string_view text) {
    std::string result(text);
    for (char& c : result)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return result;
}

std::string_view local(std::string_view name) {
    const std::size_t colon = name.rfind(':');
    return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

std::string_view trimmed(std::string_view text) {
    const auto drop = [](char c) { return static_cast<unsigned char>(c) <= ' '; };
    while (!text.empty() && drop(text.front())) text.remove_prefix(1);
    while (!text.empty() && drop(text.back())) text.remove_suffix(1);
    return text;
}

std::string quoted(std::string_view text) {
    return "'" + std::string(text.substr(0, 40)) + "'";
}

// Of a property or of a whole style sheet.
std::optional<std::string> refused_style(const std::string& text) {
    if (text.find("@import") != std::string::npos) return "imports a style sheet";
    for (std::size_t at = text.find("url("); at != std::string::npos; at = text.find("url(", at + 1)) {
        const std::size_t end = std::min(text.find(')', at), text.size());
        std::string_view target = trimmed(std::string_view(text).substr(at + 4, end - at - 4));
        if (target.starts_with('"') || target.starts_with('\'')) target.remove_prefix(1);
        if (!trimmed(target).starts_with('#')) return "refers to " + quoted(target) + ", which is outside it";
    }
    return std::nullopt;
}

std::optional<std::string> refused_attribute(const pugi::xml_attribute& attribute) {
    const std::string name = lower(attribute.name());
    const std::string value = lower(attribute.value());
    if (name.size() > 2 && name.starts_with("on") && name.find(':') == std::string::npos)
        return "holds a handler, " + quoted(name);
    if (local(name) == "href" || name == "src") {
        // What a program would skip in an address does not hide what it is.
        std::string target;
        for (const char c : value)
            if (static_cast<unsigned char>(c) > ' ') target += c;
        if (target.starts_with("javascript:")) return "holds a script in a reference";
        if (!target.empty() && target[0] != '#')
            return "refers to " + quoted(target) + ", which is outside it";
    }
    return refused_style(value);
}

std::optional<std::string> refused_node(const pugi::xml_node& node) {
    switch (node.type()) {
        case pugi::node_doctype:
            if (lower(node.value()).find("<!entity") != std::string::npos) return "declares entities";
            return std::nullopt;
        case pugi::node_pi:
            if (lower(node.name()) == "xml-stylesheet") return "asks for a style sheet of another file";
            return std::nullopt;
        case pugi::node_pcdata:
        case pugi::node_cdata:
            if (local(node.parent().name()) == "style") return refused_style(lower(node.value()));
            return std::nullopt;
        case pugi::node_element:
            if (lower(local(node.name())) == "script") return "holds a script";
            for (const pugi::xml_attribute& attribute : node.attributes())
                if (auto refused = refused_attribute(attribute)) return refused;
            return std::nullopt;
        default:
            return std::nullopt;
    }
}

}  // namespace

std::optional<SvgFault> refused_bytes(std::string_view bytes) {
    if (std::count(bytes.begin(), bytes.end(), '<') > most_tags ||
        std::count(bytes.begin(), bytes.end(), '=') > most_tags)
        return SvgFault{"has more elements than an outline needs", 0};
    return std::nullopt;
}

std::optional<SvgFault> refused_content(const pugi::xml_document& document) {
    int depth = 0;
    pugi::xml_node node = document.first_child();
    while (node) {
        if (auto refused = refused_node(node)) return SvgFault{*refused, node.offset_debug()};
        if (node.first_child()) {
            node = node.first_child();
            if (++depth > max_svg_depth)
                return SvgFault{"is nested more than " + std::to_string(max_svg_depth) + " deep",
                                node.offset_debug()};
            continue;
        }
        while (node && !node.next_sibling()) {
            node = node.parent();
            --depth;
        }
        if (node) node = node.next_sibling();
    }
    return std::nullopt;
}

}  // namespace lode
