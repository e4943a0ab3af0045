#include "c/art/values.hpp"

#include <letterlode/print.hpp>

#include <algorithm>

#include "art/number.hpp"
#include "c/error.hpp"

namespace lode::c {

void throw_unusable(std::string message, std::string advice) {
    throw Unusable{
        {Refusal::Reason::unusable, std::move(message), {}, {std::move(advice)}, std::string(), 0}};
}

void throw_no_choice(const std::string& name, std::string_view option) {
    std::string names;
    for (const std::string_view one : choices_of(option))
        names += (names.empty() ? "" : ", ") + std::string(one);
    throw Unusable{{Refusal::Reason::unusable,
                    "'" + name + "' cannot be used for --" + std::string(option) + ".",
                    {name},
                    {"Give one of these: " + names + "."},
                    {},
                    0}};
}

std::string choice(const char* given, std::string_view option) {
    std::string name = word(given, std::string(option).c_str());
    const auto all = choices_of(option);
    if (std::find(all.begin(), all.end(), name) == all.end()) throw_no_choice(name, option);
    return name;
}

std::string raw_text(const char* given, const char* name) {
    static_cast<void>(word(given, name));
    return given;
}

std::string page_text(const char* given, const char* option) {
    std::string text = raw_text(given, option);
    if (text.size() > most_heading_bytes)
        throw_unusable("--" + std::string(option) + ": " + std::to_string(text.size()) +
                           " bytes are too long for a page.",
                       "Write at most " + std::to_string(most_heading_bytes) + ".");
    return text;
}

std::vector<Colour> read_colours(std::string_view text) {
    std::vector<Colour> colours;
    for (std::size_t from = 0; from <= text.size();) {
        const auto comma = std::min(text.find(',', from), text.size());
        colours.push_back(taken(read_colour(text.substr(from, comma - from))));
        from = comma + 1;
    }
    return colours;
}

double within(double value, double least, double most, std::string_view option, std::string_view unit) {
    if (value >= least && value <= most) return value;
    throw_unusable("--" + std::string(option) + " is out of bounds.",
                   "Give " + decimal(least, 2) + " to " + decimal(most, 2) + " " + std::string(unit) + ".");
}

Format format_named(const char* given) {
    const std::string name = choice(given, "format");
    return name == "svg" ? to_svg : name == "pdf" ? to_pdf : to_dxf;
}

}  // namespace lode::c
