// letterlode rate PUZZLE

#include <letterlode/art.hpp>
#include <letterlode/puzzle.hpp>

#include "artwork_options.hpp"
#include "grid_input.hpp"
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

// With a blank the letters have a size, and with --font they have their own looks.
Outcome<RatingRules> rating_rules(const GridInput& input, const Values& values) {
    RatingRules rules;
    if (values.has("viewing") && !values.has("blank"))
        return unusable_call("--viewing is the distance to a panel, and its size is not given.",
                             "Give --blank, such as --blank 8x10in.");
    double viewing = 0;
    if (values.has("viewing")) {
        const auto distance = read_distance(values.text("viewing"));
        if (!distance) return distance.refusal();
        viewing = *distance;
    }
    if (values.has("font")) {
        auto looks = letter_looks(input.grid.alphabet, values.text("font"));
        if (!looks) return looks.refusal();
        rules.looks = std::move(*looks);
    }
    if (!values.has("blank")) return rules;
    // On either surface its viewer sees the same.
    auto options = artwork_options(values, Surface::first);
    if (!options) return options.refusal();
    if (input.placed.empty()) options->band = BandKind::none;
    const Puzzle puzzle = as_puzzle(input);
    const auto artwork = draw(puzzle, *options);
    if (!artwork) return artwork.refusal();
    auto seen = letters_seen(puzzle, *artwork, *options, viewing);
    if (!seen) return seen.refusal();
    rules.seen = std::move(*seen);
    return rules;
}

}  // namespace

Verb rate_verb() {
    Verb verb{"rate",
              "PUZZLE",
              "Tells how easily a grid is read and how much search its words ask for, part by part.",
              "",
              {}};
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
    const auto rules = rating_rules(*input, values);
    if (!rules) return report(rules.refusal(), json);
    const auto rating = lode::rate(input->grid, input->recipe, input->placed, *rules);
    if (!rating) return report(rating.refusal(), json);
    print(json ? to_json(*rating) : rating_text(*rating));
    return done;
}

}  // namespace lode::cli
