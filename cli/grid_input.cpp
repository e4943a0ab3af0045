#include "grid_input.hpp"

#include <letterlode/files.hpp>

#include "recipe_options.hpp"

namespace lode::cli {
namespace {

// A puzzle brings its words, its placements and its rules; options win over them.
Outcome<GridInput> read_puzzle(const std::string& text, const std::string& name, const Values& values) {
    auto puzzle = puzzle_from_json(text, name);
    if (!puzzle) return puzzle.refusal();
    auto recipe = with_text_options(std::move(puzzle->recipe), values);
    if (!recipe) return recipe.refusal();
    if (values.has("words")) {
        if (values.text("words") == "-")
            return unusable_call("No list can stand under a puzzle in JSON.",
                                 "It brings its own words: leave --words out, or name a file.");
        auto words = read_list(values.text("words"));
        if (!words) return words.refusal();
        recipe->words = std::move(*words);
    }
    return GridInput{std::move(puzzle->grid), std::move(*recipe), std::move(puzzle->words), true};
}

Outcome<GridInput> read_drawn(const std::string& text, const std::string& name, const Values& values) {
    auto recipe = with_text_options({}, values);
    if (!recipe) return recipe.refusal();
    const auto segmenter = Segmenter::open(recipe->text);
    if (!segmenter) return segmenter.refusal();
    if (!values.has("words"))
        return unusable_call("The words to look for are not given.",
                             "Give --words FILE, a word a line, or --words - for a list under the grid.");
    if (values.text("words") == "-") {
        auto both = read_grid_with_list(text, name, *segmenter);
        if (!both) return both.refusal();
        recipe->words = std::move(both->words);
        return GridInput{std::move(both->grid), std::move(*recipe), {}, false};
    }
    auto words = read_list(values.text("words"));
    if (!words) return words.refusal();
    recipe->words = std::move(*words);
    auto grid = read_grid(text, name, *segmenter);
    if (!grid) return grid.refusal();
    return GridInput{std::move(*grid), std::move(*recipe), {}, false};
}

}  // namespace

void add_words_option(po::options_description& options) {
    options.add_options()(
        "words", offered_value("FILE", {.files = true}),
        "the words that the grid should hold (a puzzle in JSON brings its own); '-': the list "
        "that stands under the grid, after a blank line");
}

Outcome<GridInput> read_grid_input(const Values& values) {
    const std::string file = values.texts("file").front();
    const auto text = read_file(file);
    if (!text) return text.refusal();
    return read_grid_input(*text, file == "-" ? "standard input" : file, values);
}

Outcome<GridInput> read_grid_input(const std::string& text, const std::string& name, const Values& values) {
    return is_json(text) ? read_puzzle(text, name, values) : read_drawn(text, name, values);
}

const char* grid_input_help() {
    return "GRID is text, a line a row: letters one against the other, with blanks between, or as fields of "
           "a\n"
           "table with tabs, semicolons or commas; a closed cell is '.', '#', '\u00B7', an empty field, or a "
           "blank where\n"
           "the columns line up. Or a puzzle in JSON, as letterlode make --json prints it. '-' reads "
           "standard "
           "input.\n";
}

}  // namespace lode::cli
