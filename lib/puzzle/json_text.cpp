#include "puzzle/json_text.hpp"

#include <algorithm>

#include <nlohmann/json.hpp>

namespace lode {
namespace {

// The elements, with text before each, after each but the last, and after the last.
std::string joined(const std::vector<std::string>& elements, std::string_view before,
                   std::string_view between, std::string_view after) {
    std::size_t size = 0;
    for (const auto& element : elements) size += before.size() + element.size() + between.size();
    std::string text;
    text.reserve(size + after.size() + 2);
    for (std::size_t at = 0; at < elements.size(); ++at) {
        text += before;
        text += elements[at];
        text += at + 1 < elements.size() ? between : after;
    }
    return text;
}

// Single values, unlike arrays and objects, need no memory to be taken down.
std::string dumped(const nlohmann::json& value) {
    return value.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

std::vector<std::string> named(const JsonMembers& members, std::string_view colon) {
    std::vector<std::string> all;
    all.reserve(members.size());
    for (const auto& member : members) {
        all.push_back(json_string(member.name));
        all.back() += colon;
        all.back() += member.value;
    }
    return all;
}

}  // namespace

std::string json_string(std::string_view text) {
    if (!std::all_of(text.begin(), text.end(), is_plain_in_json))
        return dumped(nlohmann::json(std::string(text)));
    std::string json;
    json.reserve(text.size() + 2);
    json += '"';
    json += text;
    json += '"';
    return json;
}

std::string json_number(double number) {
    return dumped(nlohmann::json(number));
}

std::string json_bool(bool value) {
    return value ? "true" : "false";
}

std::string json_strings(const std::vector<std::string>& texts) {
    std::vector<std::string> all;
    all.reserve(texts.size());
    for (const auto& text : texts) all.push_back(json_string(text));
    return json_array(all);
}

std::string json_object(const JsonMembers& members) {
    return "{" + joined(named(members, ":"), "", ",", "") + "}";
}

std::string json_array(const std::vector<std::string>& elements) {
    return "[" + joined(elements, "", ",", "") + "]";
}

std::string json_array_in_lines(const std::vector<std::string>& elements) {
    return "[" + joined(elements, "\n  ", ",", "\n ") + "]";
}

std::string json_document(const JsonMembers& members) {
    return "{" + joined(named(members, ": "), "\n ", ",", "\n") + "}\n";
}

}  // namespace lode
