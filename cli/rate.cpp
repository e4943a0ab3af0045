// letterlode rate PUZZLE

#include <letterlode/puzzle.hpp>

#include "artwork_options.hpp"
#include "grid_input.hpp"
#include "rating_rules.hpp"
#include "recipe_options.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

// The words of a puzzle as they stand; for a drawn grid nothing is drawn of bands.
Puzzle as_puzzle(const GridInput& input) {
    Puzzle puzzle;
    puzzle.recipe = input.recipe;
    puzzle.grid = input.grid;
    puzzle.words = input.placed;
    return puzzle;
}

}  // namespace

Verb rate_verb() {
    Verb verb{
        .file = "PUZZLE",
        .purpose = "Tells how easily a grid is read and how much search its words ask for, part by part."};
    add_words_option(verb.options);
    add_text_options(verb.options);
    add_artwork_options(verb.options);
    verb.options.add_options()  //
        ("viewing", po::value<std::string>()->value_name("LENGTH"),
         "distance from the reader to the panel: 1.5m, 60cm, 5ft")  //
        ("json", po::bool_switch(), "print the rating, or the refusal, as JSON");
    verb.details =
        "PUZZLE is a puzzle in JSON, or a grid with --words. "
        "Every part has a value, a unit and its ground: a published source, a\n"
        "definition, or this project's own judgement. The levels are glance, stroll, search and patience: "
        "under "
        "10, under 25,\n"
        "under 60 and more fixations a word of a simulated reader.\n\n"
        "Examples:\n"
        "  letterlode rate puzzle.json\n"
        "  letterlode rate puzzle.json --blank 8x10in --viewing 1.5m\n"
        "  letterlode rate grid.txt --words words.txt --json\n\n"
        "Exit codes: 0 rated; 2 unusable input or options; 3 the machine's fault or ours; 130 interrupted.\n";
    return verb;
}

ExitCode rate(const Values& values) {
    const bool json = values.is_on("json");
    const auto input = read_grid_input(values);
    if (!input) return report(input.refusal(), json);
    const auto rules = rating_rules(as_puzzle(*input), values);
    if (!rules) return report(rules.refusal(), json);
    const auto rating = lode::rate(input->grid, input->recipe, input->placed, *rules);
    if (!rating) return report(rating.refusal(), json);
    print(json ? to_json(*rating) : rating_text(*rating));
    return done;
}

}  // namespace lode::cli
