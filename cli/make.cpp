// letterlode make WORDS

#include <letterlode/art.hpp>
#include <letterlode/cut.hpp>
#include <letterlode/puzzle.hpp>

#include "artwork_options.hpp"
#include "output_folder.hpp"
#include "recipe_options.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

Outcome<Recipe> recipe_of(const Values& values) {
    Recipe recipe;
    if (values.has("recipe")) {
        const std::string name = values.text("recipe");
        const auto json = read_file(name);
        if (!json) return json.refusal();
        auto read = recipe_from_json(*json, name);
        if (!read) return read.refusal();
        recipe = std::move(*read);
    }
    if (const auto files = values.texts("file"); !files.empty()) {
        auto words = read_list(files.front());
        if (!words) return words.refusal();
        recipe.words = std::move(*words);
    }
    auto with_text = with_text_options(std::move(recipe), values);
    if (!with_text) return with_text;
    return with_grid_options(std::move(*with_text), values);
}

void print_puzzle(const Puzzle& puzzle) {
    print(puzzle_text(puzzle) + "\n" + key_text(puzzle) + "\n" + verdict_text(puzzle.audit));
    print("Grid " + std::to_string(puzzle.recipe.size->columns) + "x" +
          std::to_string(puzzle.recipe.size->rows) + ", seed " + std::to_string(puzzle.recipe.seed) + ".\n");
}

}  // namespace

Verb make_verb() {
    Verb verb{"make", "WORDS", "Makes a certified puzzle from a list of words.", "", {}};
    add_grid_options(verb.options);
    add_text_options(verb.options);
    add_artwork_options(verb.options);
    verb.options.add_options()  //
        ("out", po::value<std::string>()->value_name("DIR"),
         "write everything into a new folder: puzzle, key and, with --blank, the artwork")  //
        ("replace", po::bool_switch(), "put the new folder in the place of an old one")     //
        ("json", po::bool_switch(), "print the puzzle, or the refusal, as JSON");
    verb.details =
        "WORDS is text, a word a line; '#' begins a comment. '-' reads standard input.\n"
        "Spaces, hyphens, apostrophes and punctuation are shown in the list and left out of the grid.\n\n"
        "Examples:\n"
        "  letterlode make words.txt\n"
        "  letterlode make words.txt --grid 15x15 --directions all --seed 7\n"
        "  letterlode make words.txt --shape heart --blank 8x10in --surface second --heading 'Our garden' "
        "--out panel\n\n"
        "Exit codes: 0 made; 1 there is no such puzzle, or none was found; 2 unusable input or options;\n"
        "3 the machine's fault or ours; 130 interrupted.\n";
    return verb;
}

ExitCode make(const Values& values) {
    const bool json = values.is_on("json");
    const std::string folder = values.text("out");
    if (values.has("out"))
        if (const auto refusal = cannot_write_to(folder, values.is_on("replace")))
            return report(*refusal, json);

    auto recipe = recipe_of(values);
    if (!recipe) return report(recipe.refusal(), json);
    if (const auto refusal = artwork_without_blank(values)) return report(*refusal, json);
    std::optional<ArtworkOptions> artwork_wanted;
    if (values.has("blank")) {
        auto options = artwork_options(values);
        if (!options) return report(options.refusal(), json);
        artwork_wanted = std::move(*options);
        recipe->aspect = grid_aspect(artwork_wanted->blank, artwork_wanted->heading);
    }

    Progress progress;
    const MakeControl control{[&](std::uint64_t spent, std::uint64_t all) { progress.show(spent, all); },
                              &interrupt_flag()};
    const auto puzzle = lode::make(*recipe, control);
    if (!puzzle) return report(puzzle.refusal(), json);
    note_missing_avoid_list(*recipe);

    if (values.has("out")) {
        std::vector<NamedFile> files{{"puzzle.json", to_json(*puzzle)},
                                     {"puzzle.txt", puzzle_text(*puzzle)},
                                     {"key.txt", key_text(*puzzle)}};
        if (artwork_wanted) {
            const auto artwork = draw(*puzzle, *artwork_wanted);
            if (!artwork) return report(artwork.refusal(), json);
            for (const auto& note : artwork->notes) say("note: " + note);
            for (auto& file : cut_files(*artwork)) files.push_back(std::move(file));
        }
        const ExitCode written = write_output(folder, files, values.is_on("replace"), json);
        if (written != done) return written;
    }
    if (artwork_wanted && !values.has("out")) say("note: no artwork is written without --out DIR.");
    if (json)
        print(to_json(*puzzle));
    else
        print_puzzle(*puzzle);
    return done;
}

}  // namespace lode::cli
