// letterlode make WORDS

#include <letterlode/puzzle.hpp>

#include "artwork_options.hpp"
#include "choices.hpp"
#include "cut_options.hpp"
#include "demand_options.hpp"
#include "filler_options.hpp"
#include "output_folder.hpp"
#include "puzzle_work.hpp"
#include "recipe_options.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

Outcome<Recipe> recipe_of(const Values& values) {
    auto recipe = recipe_from_files(values);
    if (!recipe) return recipe.refusal();
    if (!*recipe) *recipe = Recipe();
    if (const auto files = values.texts("file"); !files.empty()) {
        auto words = read_list(files.front());
        if (!words) return words.refusal();
        (*recipe)->words = std::move(*words);
    }
    return with_recipe_options(**std::move(recipe), values);
}

// The pages of a puzzle that goes into a folder are on the paper of its job sheet.
PrintOptions page_options(const Values& values) {
    PrintOptions options;
    if (const auto paper = paper_named(values.text("paper"))) options.page = *paper;  // judged before
    return options;
}

void print_puzzle(const Puzzle& puzzle) {
    print(puzzle_text(puzzle) + "\n" + key_text(puzzle) + "\n" + verdict_text(puzzle.audit));
    print("Grid " + std::to_string(puzzle.recipe.size->columns) + "x" +
          std::to_string(puzzle.recipe.size->rows) + ", seed " + std::to_string(puzzle.recipe.seed) + ".\n");
}

ExitCode write_puzzles(const std::vector<Puzzle>& puzzles, const PuzzlesWanted& wanted,
                       const Values& values) {
    std::vector<NamedFile> files;
    for (const Puzzle& puzzle : puzzles) {
        const std::string folder =
            wanted.several ? "seed-" + std::to_string(puzzle.recipe.seed) + "/" : std::string();
        auto some = files_of(puzzle, wanted, page_options(values), folder, page_title(values));
        if (!some) return report(some.refusal(), values.is_on("json"));
        for (auto& file : *some) files.push_back(std::move(file));
    }
    // Choices that were finished before an interrupt are not lost.
    return write_output(values.text("out"), files, values.is_on("replace"), values.is_on("json"),
                        wanted.several ? OnInterrupt::finish : OnInterrupt::stop);
}

void print_puzzles(const std::vector<Puzzle>& puzzles, bool several, bool json) {
    if (json) {
        print(several ? to_json(std::span(puzzles)) : to_json(puzzles.front()));
        return;
    }
    for (const Puzzle& puzzle : puzzles) {
        if (&puzzle != &puzzles.front()) print("\n");
        print_puzzle(puzzle);
    }
}

}  // namespace

Verb make_verb() {
    Verb verb{.file = "WORDS", .purpose = "Makes a certified puzzle from a list of words."};
    add_grid_options(verb.options);
    add_text_options(verb.options);
    add_demand_options(verb.options);
    add_filler_options(verb.options);
    add_artwork_options(verb.options);
    add_cut_options(verb.options);
    verb.options.add_options()  //
        ("choices", po::value<std::string>()->value_name("N"),
         "make N different puzzles, from seeds that follow each other, the best first: nearest to the aim, "
         "or the "
         "calmest to read")  //
        ("aim", offered_value("AIM", {.words = {"easier", "harder"}}),
         "easier, harder, or a number of fixations for all words, as letterlode rate tells it: seeds are "
         "tried, and "
         "directions and "
         "ways to fill where none is given")  //
        ("threads", po::value<std::string>()->value_name("N"),
         "processors to use (default 1); the result is the same")  //
        ("out", offered_value("DIR", {.folders = true}),
         "write everything into a new folder: puzzle, key, worksheet and, with --blank, the artwork")  //
        ("replace", po::bool_switch(), "put the new folder in the place of an old one")                //
        ("json", po::bool_switch(), "print the puzzle, or the refusal, as JSON");
    verb.details =
        "WORDS is text, a word a line; '#' begins a comment. '-' reads standard input.\n"
        "Spaces, hyphens, apostrophes and punctuation are shown in the list and left out of the grid.\n"
        "A vertical bar parts letters that a language joins, and is not shown: 'Ban|gor' has N and G in "
        "Welsh, not "
        "NG.\n\n"
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
    if (values.is_on("replace") && !values.has("out"))
        return report(unusable_call("--replace is of no use without a folder.",
                                    "Give --out DIR as well, or leave it out."),
                      json);
    if (values.has("out"))
        if (const auto refusal = cannot_write_to(folder, values.is_on("replace")))
            return report(*refusal, json);

    auto recipe = recipe_of(values);
    if (!recipe) return report(recipe.refusal(), json);
    const auto wanted = puzzles_wanted(*recipe, values);
    if (!wanted) return report(wanted.refusal(), json);
    const auto threads = count_value(values, "threads", max_threads, 1);
    if (!threads) return report(threads.refusal(), json);

    Progress progress("searching", "of the effort spent");
    const MakeControl control{[&](std::uint64_t spent, std::uint64_t all) { progress.show(spent, all); },
                              &interrupt_flag(), static_cast<unsigned>(*threads)};
    recipe = recipe_for(*std::move(recipe), *wanted, control);
    if (!recipe) return report(recipe.refusal(), json);
    const auto checked = CheckedRecipe::open(*recipe);
    if (!checked) return report(checked.refusal(), json);
    const auto puzzles = make_puzzles(*checked, *recipe, *wanted, control);
    if (!puzzles) return report(puzzles.refusal(), json);

    if (values.has("out")) {
        const ExitCode written = write_puzzles(*puzzles, *wanted, values);
        if (written != done) return written;
    } else if (wanted->artwork) {
        say("note: no artwork is written without --out DIR.");
    }
    print_puzzles(*puzzles, wanted->several, json);
    return interrupt_flag() ? interrupted : done;
}

}  // namespace lode::cli
