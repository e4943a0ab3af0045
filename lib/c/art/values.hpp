#pragma once
// Values as a caller hands them in: names, texts, colours, numbers. All throw BrokenCall for NULL and
// Unusable for what cannot be used, naming the option and a way out.

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/colour.hpp>
#include <letterlode/drawing.hpp>
#include <letterlode/outcome.hpp>

namespace lode::c {

// What an option can be; empty for one that is none.
[[nodiscard]] std::span<const std::string_view> choices_of(std::string_view option);

[[noreturn]] void throw_unusable(std::string message, std::string advice);
// As is said of a name that the option does not have.
[[noreturn]] void throw_no_choice(const std::string& name, std::string_view option);

// One of the option's names.
[[nodiscard]] std::string choice(const char* given, std::string_view option);

template <class Choice>
Choice chosen(const char* given, std::string_view option, std::optional<Choice> (*named)(std::string_view)) {
    const std::string name = choice(given, option);
    if (const auto found = named(name)) return *found;
    throw_no_choice(name, option);
}

// UTF-8, and else as it was given: a file's name need not be normalised.
[[nodiscard]] std::string raw_text(const char* given, const char* name);
// The same of a label or a title: refused where it has more bytes than a page has room for.
[[nodiscard]] std::string page_text(const char* given, const char* option);

// "gold,seagreen": one or more.
[[nodiscard]] std::vector<Colour> read_colours(std::string_view text);

// From least to most, both among them.
[[nodiscard]] double within(double value, double least, double most, std::string_view option,
                            std::string_view unit);

// The drawing as "svg", "pdf" or "dxf". Checked before anything is drawn.
using Format = std::string (*)(const Drawing& drawing);
[[nodiscard]] Format format_named(const char* given);

}  // namespace lode::c
