#include "demand_options.hpp"

#include <algorithm>
#include <charconv>

#include <letterlode/files.hpp>

namespace lode::cli {
namespace {

std::vector<std::string> parts_of(const std::string& text, char separator) {
    std::vector<std::string> parts;
    std::size_t start = 0;
    for (std::size_t end = 0; end != std::string::npos; start = end + 1) {
        end = text.find(separator, start);
        parts.push_back(text.substr(start, end == std::string::npos ? end : end - start));
    }
    return parts;
}

std::optional<Refusal> set_crossings(Recipe& recipe, const std::string& value) {
    constexpr std::string_view least = "at-least ";
    recipe.crossings = {};
    if (value == "any") return std::nullopt;
    if (value == "none") {
        recipe.crossings.most = 0;
        return std::nullopt;
    }
    if (value.starts_with(least)) {
        const auto count = whole_number("crossings", value.substr(least.size()));
        if (!count) return count.refusal();
        recipe.crossings.least = *count;
        return std::nullopt;
    }
    return unusable_value("crossings", value, "Give none, any, or at-least and a number.");
}

std::optional<int> number_from_one(const std::string& text) {
    int number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc() || end != text.data() + text.size() || number < 1 || number > max_side)
        return std::nullopt;
    return number;
}

std::optional<Refusal> add_pin(Recipe& recipe, const std::string& value) {
    const Refusal refusal = unusable_value(
        "pin", value,
        "Write WORD@row,column,direction, as in Thyme@3,1,right; rows and columns count from 1.");
    const auto at = value.rfind('@');
    if (at == std::string::npos || at == 0) return refusal;
    const auto parts = parts_of(value.substr(at + 1), ',');
    if (parts.size() != 3) return refusal;
    const auto row = number_from_one(parts[0]);
    const auto column = number_from_one(parts[1]);
    const auto direction = direction_named(parts[2]);
    if (!row || !column || !direction) return refusal;
    recipe.pins.push_back({value.substr(0, at), {{*row - 1, *column - 1}, *direction}});
    return std::nullopt;
}

std::optional<Refusal> set_shares(Recipe& recipe, const std::string& value) {
    recipe.equal_shares = value == "equal";
    recipe.weights.reset();
    if (recipe.equal_shares) return std::nullopt;
    DirectionWeights weights{};
    for (const auto& part : parts_of(value, ',')) {
        const auto sides = parts_of(part, '=');
        const auto direction = direction_named(sides.front());
        std::uint32_t weight = 0;
        if (sides.size() == 2) {
            const auto& text = sides[1];
            const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), weight);
            if (error != std::errc() || end != text.data() + text.size()) weight = max_weight + 1;
        }
        if (!direction || sides.size() != 2 || weight > max_weight)
            return unusable_value("shares", value,
                                  "Give equal, or directions with their weights, as in right=2,down=1.");
        weights[static_cast<unsigned>(*direction)] = weight;
    }
    recipe.weights = weights;
    return std::nullopt;
}

}  // namespace

void add_demand_options(po::options_description& options) {
    using Text = std::string;
    using Texts = std::vector<std::string>;
    options.add_options()  //
        ("pin", po::value<Texts>()->value_name("WORD@R,C,DIR"),
         "a word's place: row, column and direction, as in Thyme@3,1,right. May be given again")  //
        ("crossings", offered_value("HOW", {.words = {"none", "any", "at-least"}}),
         "none: words share no cells; any (default); at-least N: so many cells at the least")  //
        ("spacing", po::value<Text>()->value_name("N"),
         "cells that lie between any two words at the least (default 0)")  //
        ("shares", offered_value("equal|LIST", {.words = {"equal"}}),
         "words in equal shares of the directions, or by weight: right=2,down=1")                          //
        ("backward", po::value<Text>()->value_name("N"), "words that read backward, at the most")          //
        ("leftover", po::value<Text>()->value_name("N"), "leave exactly so many cells outside all words")  //
        ("message", po::value<Text>()->value_name("TEXT"),
         "what the cells outside all words spell, row by row; there are as many as it has letters")  //
        ("message-then", offered_value("WHAT", {.words = {"filler", "nothing"}}),
         "filler: letters of the filler take what cells the message leaves; nothing (default): it leaves "
         "none")  //
        ("from", offered_value("PUZZLE", {.files = true}),
         "an earlier puzzle in JSON: take its recipe, and move as few of its words as can be")  //
        ("keep", offered_value("filler", {.words = {"filler"}}),
         "with --from: keep the letters between the words too, where they can stay");
}

Outcome<Recipe> with_demand_options(Recipe recipe, const Values& values) {
    const auto set_number = [&](const char* option, const auto& set) -> std::optional<Refusal> {
        if (!values.has(option)) return std::nullopt;
        const auto number = whole_number(option, values.text(option));
        if (!number) return number.refusal();
        set(*number);
        return std::nullopt;
    };
    for (const auto& pin : values.texts("pin"))
        if (auto refusal = add_pin(recipe, pin)) return std::move(*refusal);
    if (values.has("crossings"))
        if (auto refusal = set_crossings(recipe, values.text("crossings"))) return std::move(*refusal);
    if (values.has("shares"))
        if (auto refusal = set_shares(recipe, values.text("shares"))) return std::move(*refusal);
    if (auto refusal = set_number("spacing", [&](std::uint64_t cells) {
            recipe.spacing = static_cast<std::uint32_t>(std::min<std::uint64_t>(cells, max_spacing + 1));
        }))
        return std::move(*refusal);
    if (auto refusal = set_number("backward", [&](std::uint64_t words) { recipe.most_backward = words; }))
        return std::move(*refusal);
    if (auto refusal = set_number("leftover", [&](std::uint64_t cells) { recipe.leftover = cells; }))
        return std::move(*refusal);
    if (values.has("message")) recipe.message = values.text("message");
    if (values.has("message-then")) {
        const std::string what = values.text("message-then");
        if (what != "filler" && what != "nothing")
            return unusable_value("message-then", what, "Give filler or nothing.");
        recipe.filler_after_message = what == "filler";
    }
    return recipe;
}

Outcome<Recipe> recipe_from_earlier(const Values& values) {
    if (values.has("keep") && values.text("keep") != "filler")
        return unusable_value("keep", values.text("keep"), "Only filler can be kept: --keep filler.");
    if (values.has("recipe"))
        return unusable_value("from", values.text("from"), "Give a recipe or an earlier puzzle, not both.");
    const std::string name = values.text("from");
    const auto json = read_file(name);
    if (!json) return json.refusal();
    const auto puzzle = puzzle_from_json(*json, name);
    if (!puzzle) return puzzle.refusal();
    Recipe recipe = puzzle->recipe;
    recipe.earlier = earlier_of(*puzzle, values.has("keep"));
    return recipe;
}

namespace {

// A palindrome may be read from its other end.
bool stands_there(const PlacedWord& word, const Placement& place) {
    return word.placed == place ||
           (same_cells(word.placed, place, static_cast<int>(word.letters.size())) &&
            std::equal(word.letters.begin(), word.letters.end(), word.letters.rbegin()));
}

}  // namespace

std::string moved_words(const Puzzle& puzzle) {
    if (!puzzle.recipe.earlier) return {};
    std::string names;
    for (const Pin& stood : puzzle.recipe.earlier->words)
        for (const PlacedWord& word : puzzle.words)
            if (word.shown == stood.word && !stands_there(word, stood.placed))
                names += (names.empty() ? "" : ", ") + word.shown;
    return names.empty() ? "Every word that was there stands where it stood." : "Moved: " + names + ".";
}

}  // namespace lode::cli
