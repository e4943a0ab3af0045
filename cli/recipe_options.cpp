#include "recipe_options.hpp"

#include <letterlode/files.hpp>

#include "choices.hpp"
#include "report.hpp"

namespace lode::cli {
namespace {

// A shape's name, or a file that draws a mask.
std::optional<Refusal> set_shape(Recipe& recipe, const std::string& value) {
    if (const auto shape = choice_named(all_shapes, value)) {
        recipe.shape = *shape;
        recipe.mask.reset();
        return std::nullopt;
    }
    const auto text = read_file(value);
    if (!text) {
        Refusal refusal = text.refusal();
        refusal.message = "--shape: no built-in shape has that name, and " + refusal.message;
        refusal.advice = {"Built-in shapes: " + enumerated(names_of(all_shapes)) +
                          "; or a file that draws a mask, 'O' for an open cell and '.' for a closed one."};
        return refusal;
    }
    auto mask = read_mask(*text, value);
    if (!mask) return mask.refusal();
    recipe.mask = std::move(*mask);
    return std::nullopt;
}

std::optional<Refusal> set_size(Recipe& recipe, const std::string& value) {
    recipe.tight = value == "tight";
    if (recipe.tight || value == "auto") {
        recipe.size.reset();
        return std::nullopt;
    }
    const auto size = read_size(value);
    if (!size) return size.refusal();
    recipe.size = *size;
    return std::nullopt;
}

}  // namespace

void add_text_options(po::options_description& options) {
    using Text = std::string;
    using Texts = std::vector<std::string>;
    options.add_options()  //
        ("locale", po::value<Text>()->value_name("TAG"),
         "language of the words: en, de, cy, sr-Latn ... (root: none in particular)")  //
        ("letters", offered_value("CASE", {.words = names_of(letter_cases)}),
         "upper (default), lower or keep")  //
        ("digraphs", offered_value("RULE", {.words = names_of(digraph_rules)}),
         "letters of several characters, such as LL in Welsh and IJ in Dutch: join (default) gives each a "
         "cell, split one a character")  //
        ("sharp-s", offered_value("RULE", {.words = names_of(sharp_s_rules)}),
         "the German sharp s: double (default in upper case) gives SS in two cells, keep one cell")  //
        ("marks", offered_value("RULE", {.words = names_of(mark_rules)}),
         "keep (default) them on letters, or strip those that can be taken off: CAFE for CAF\u00C9")  //
        ("finals", offered_value("RULE", {.words = names_of(final_rules)}),
         "Hebrew final letters and the Greek final sigma: keep (default), or fold into those within a "
         "word")  //
        ("avoid", offered_values("FILE", {.words = {"none"}, .files = true}),
         "words that may stand nowhere, besides the language's own list; 'none' turns that off. May be given "
         "again")  //
        ("allow", po::value<Texts>()->value_name("WORD"),
         "an avoided word that may stand all the same. May be given again")  //
        ("nested", offered_value("RULE", {.words = names_of(nested_rules)}),
         "a word that can be read inside another: inside (default) counts it there, separate gives it a "
         "place "
         "of its own besides");
}

void add_grid_options(po::options_description& options) {
    using Text = std::string;
    options.add_options()  //
        ("grid", offered_value("CxR", {.words = {"auto", "tight"}}),
         "columns x rows, such as 15x15; auto (default): the smallest that holds the words comfortably; "
         "tight: "
         "the smallest that is found")  //
        ("shape", offered_value("NAME|FILE", {.words = names_of(all_shapes), .files = true}),
         ("outline of the grid: " + enumerated(names_of(all_shapes)) + "; or a file that draws a mask")
             .c_str())  //
        ("directions", offered_value("LIST", {.words = names_of(all_directions, {"all"}), .several = true}),
         "all, or some of right,down,down-right,up-right,left,up,up-left,down-left (default: the first four; "
         "for right-to-left scripts their mirror images)")                                               //
        ("seed", po::value<Text>()->value_name("N"), "another number gives another puzzle (default 1)")  //
        ("effort", po::value<Text>()->value_name("N"),
         "how many steps to search at the most (default 50000000)")  //
        ("recipe", offered_value("FILE", {.files = true}), "a recipe in JSON; options win over it");
}

Outcome<Recipe> with_text_options(Recipe recipe, const Values& values) {
    if (values.has("locale")) recipe.text.locale = values.text("locale");
    TextRules& rules = recipe.text;
    for (auto refusal : {set_choice(rules.letters, values, "letters", letter_cases),
                         set_choice(rules.digraphs, values, "digraphs", digraph_rules),
                         set_choice(rules.sharp_s, values, "sharp-s", sharp_s_rules),
                         set_choice(rules.marks, values, "marks", mark_rules),
                         set_choice(rules.finals, values, "finals", final_rules),
                         set_choice(recipe.nested, values, "nested", nested_rules)})
        if (refusal) return std::move(*refusal);
    for (const auto& file : values.texts("avoid")) {
        if (file == "none") {
            recipe.default_avoid_list = false;
            continue;
        }
        const auto list = read_list(file);
        if (!list) return list.refusal();
        for (const auto& word : list->words) recipe.avoid.push_back(word.shown);
    }
    for (const auto& word : values.texts("allow")) recipe.allow.push_back(word);
    return recipe;
}

void note_missing_avoid_list(const Recipe& recipe) {
    if (recipe.default_avoid_list && !has_avoid_list(recipe.text.locale))
        say("note: there is no list of words to avoid for '" + recipe.text.locale +
            "': --avoid FILE brings one.");
}

Outcome<Recipe> with_grid_options(Recipe recipe, const Values& values) {
    if (values.has("grid"))
        if (auto refusal = set_size(recipe, values.text("grid"))) return std::move(*refusal);
    if (values.has("shape"))
        if (auto refusal = set_shape(recipe, values.text("shape"))) return std::move(*refusal);
    if (recipe.mask && values.has("grid") && recipe.size && *recipe.size != recipe.mask->size())
        return unusable_value("grid", values.text("grid"),
                              "The mask has a size of its own: leave --grid out.");
    if (values.has("directions")) {
        const auto directions = read_directions(values.text("directions"));
        if (!directions) return directions.refusal();
        recipe.directions = *directions;
    }
    if (values.has("seed")) {
        const auto seed = whole_number("seed", values.text("seed"));
        if (!seed) return seed.refusal();
        recipe.seed = *seed;
    }
    if (values.has("effort")) {
        const auto effort = whole_number("effort", values.text("effort"));
        if (!effort) return effort.refusal();
        recipe.effort = *effort;
    }
    return recipe;
}

bool is_json(const std::string& text) {
    const auto first = text.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
    return first != std::string::npos && text[first] == '{';
}

Outcome<WordLines> read_list(const std::string& path) {
    const auto text = read_file(path);
    if (!text) return text.refusal();
    const std::string name = path == "-" ? "standard input" : path;
    if (is_json(*text))
        return Refusal{Refusal::Reason::unusable,
                       name + ": this is JSON, and a list of words is expected.",
                       {},
                       {"A list is text, a word a line. A recipe or a puzzle is given with --recipe FILE."},
                       name,
                       0};
    return read_word_lines(*text, name);
}

}  // namespace lode::cli
