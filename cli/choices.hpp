#pragma once
// Options whose value is one of some names. Such an option has one table: by it the value is read and
// refused, and from it a shell completes the value. The library says what the names are. Where it lists the
// choices itself (all_shapes), that is the table.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include <letterlode/art.hpp>
#include <letterlode/paper.hpp>
#include <letterlode/print.hpp>
#include <letterlode/puzzle.hpp>

#include "options.hpp"

namespace lode::cli {

inline constexpr std::array letter_cases{LetterCase::upper, LetterCase::lower, LetterCase::keep};
inline constexpr std::array digraph_rules{Digraphs::join, Digraphs::split};
inline constexpr std::array sharp_s_rules{SharpS::doubled, SharpS::keep};
inline constexpr std::array mark_rules{Marks::keep, Marks::strip};
inline constexpr std::array final_rules{Finals::keep, Finals::fold};
inline constexpr std::array nested_rules{Nested::inside, Nested::separate};
inline constexpr std::array surfaces{Surface::first, Surface::second};
inline constexpr std::array papers{Paper::a4, Paper::letter};
inline constexpr std::array list_orders{ListOrder::alphabetical, ListOrder::given, ListOrder::length};
inline constexpr std::array grid_line_kinds{GridLines::none, GridLines::light, GridLines::full};
inline constexpr std::array key_mark_kinds{KeyMarks::rings, KeyMarks::lines, KeyMarks::greyed};

// Their names, and those of what is no value of theirs ("none", for a border).
template <class Choices>
[[nodiscard]] std::vector<std::string> names_of(const Choices& choices,
                                                std::vector<std::string> others = {}) {
    std::vector<std::string> names;
    for (const auto choice : choices) names.emplace_back(name(choice));
    names.insert(names.end(), others.begin(), others.end());
    return names;
}

// Small letters are what names have; A4 is taken for a4 all the same.
[[nodiscard]] std::string in_small_letters(std::string text);

template <class Choices>
[[nodiscard]] std::optional<typename Choices::value_type> choice_named(const Choices& choices,
                                                                       const std::string& text) {
    const std::string wanted = in_small_letters(text);
    for (const auto choice : choices)
        if (name(choice) == wanted) return choice;
    return std::nullopt;
}

// "line, double or dotted"
[[nodiscard]] std::string enumerated(const std::vector<std::string>& names);

// Sets the field where the option is given. Refused as unusable, naming the choices: a value that is none of
// them.
template <class Field, class Choices>
[[nodiscard]] std::optional<Refusal> set_choice(Field& field, const Values& values, const char* option,
                                                const Choices& choices,
                                                const std::vector<std::string>& others = {}) {
    if (!values.has(option)) return std::nullopt;
    const std::string value = values.text(option);
    const auto choice = choice_named(choices, value);
    if (!choice) return unusable_value(option, value, "Give " + enumerated(names_of(choices, others)) + ".");
    field = *choice;
    return std::nullopt;
}

}  // namespace lode::cli
