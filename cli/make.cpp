// letterlode make WORDS

#include <cmath>

#include <letterlode/art.hpp>
#include <letterlode/cut.hpp>
#include <letterlode/print.hpp>
#include <letterlode/puzzle.hpp>

#include "artwork_options.hpp"
#include "choices.hpp"
#include "cut_options.hpp"
#include "demand_options.hpp"
#include "filler_options.hpp"
#include "output_folder.hpp"
#include "recipe_options.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

Outcome<Recipe> recipe_of(const Values& values) {
    Recipe recipe;
    if (values.has("from")) {
        auto earlier = recipe_from_earlier(values);
        if (!earlier) return earlier;
        recipe = std::move(*earlier);
    } else if (values.has("keep")) {
        return unusable_call("--keep says what of an earlier puzzle stays, and none is given.",
                             "Name it with --from PUZZLE.");
    }
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
    auto with_filler = with_filler_options(std::move(*with_text), values);
    if (!with_filler) return with_filler;
    auto with_grid = with_grid_options(std::move(*with_filler), values);
    if (!with_grid) return with_grid;
    return with_demand_options(std::move(*with_grid), values);
}

void print_puzzle(const Puzzle& puzzle) {
    print(puzzle_text(puzzle) + "\n" + key_text(puzzle) + "\n" + verdict_text(puzzle.audit));
    print("Grid " + std::to_string(puzzle.recipe.size->columns) + "x" +
          std::to_string(puzzle.recipe.size->rows) + ", seed " + std::to_string(puzzle.recipe.seed) + ".\n");
}

// What --aim asks for; a way to fill that was chosen by its option stays.
Outcome<std::optional<Aim>> aim_of(const Values& values) {
    if (!values.has("aim")) return std::optional<Aim>();
    auto aim = read_aim(values.text("aim"));
    if (!aim) return aim.refusal();
    aim->vary_filler = !values.has("filler");
    return std::optional(*aim);
}

// The best first, with a word on why.
Outcome<std::vector<Puzzle>> ranked(std::vector<Puzzle> puzzles, const std::optional<Aim>& aim) {
    if (puzzles.size() < 2) return puzzles;
    const auto order = rank_puzzles(puzzles, aim);
    if (!order) return order.refusal();
    std::vector<Puzzle> sorted;
    for (const RankedPuzzle& one : *order) sorted.push_back(std::move(puzzles[one.puzzle]));
    say("note: seed " + std::to_string(sorted.front().recipe.seed) +
        " comes first: " + order->front().reason + (aim ? ", nearest to the aim." : ", together the least."));
    return sorted;
}

// One puzzle by its seed or nearest to an aim, or choices from there on, ranked.
Outcome<std::vector<Puzzle>> make_puzzles(const CheckedRecipe& checked, const Recipe& recipe,
                                          const std::optional<Aim>& aim, bool several, std::size_t count,
                                          const MakeControl& control) {
    const std::uint64_t seed = recipe.seed;
    if (several) {
        auto choices = make_choices(checked, seed, count, control);
        if (!choices) return choices.refusal();
        return ranked(std::move(*choices), aim);
    }
    if (aim) {
        auto aimed = make_aimed(recipe, *aim, control);
        if (!aimed) return aimed.refusal();
        const auto fixations = std::llround(aimed->rating.difficulty.fixations);
        const bool is_missed =
            aim->kind == Aim::Kind::fixations &&
            std::abs(aimed->rating.difficulty.fixations - aim->fixations) > aim->fixations / 10;
        say("note: of " + std::to_string(aimed->tried) + " puzzles this is the nearest to the aim" +
            (is_missed
                 ? ", and misses it by " +
                       std::to_string(std::llabs(fixations - std::llround(aim->fixations))) + " fixations"
                 : std::string()) +
            ": a simulated reader needs " + std::to_string(fixations) + " for all words, level " +
            std::string(name(aimed->rating.difficulty.level)) + "." +
            (is_missed ? " Another --grid or other words change more." : ""));
        return std::vector<Puzzle>{std::move(aimed->puzzle)};
    }
    auto puzzle = checked.make(seed, control);
    if (!puzzle) return puzzle.refusal();
    return std::vector<Puzzle>{std::move(*puzzle)};
}

// The artwork that goes with the puzzle.
struct ArtworkWanted {
    ArtworkOptions artwork;
    CutOptions cutting;
    bool fix = false;
};

constexpr std::size_t most_cells_on_a_screen = 10'000;

// The puzzle on paper and for a screen. A grid that no page holds, or a machine without a font, is no reason
// to give nothing.
void append_pages(std::vector<NamedFile>& files, const Puzzle& puzzle, const std::string& folder,
                  const Values& values) {
    std::string title = values.text("heading");
    for (auto at = title.find("\\n"); at != std::string::npos; at = title.find("\\n"))
        title.replace(at, 2, " ");
    const std::vector<Worksheet> worksheets{{puzzle, title}};
    PrintOptions options;
    if (const auto paper = paper_named(values.text("paper"))) options.page = *paper;  // judged before
    const auto pages = print_worksheets(worksheets, options);
    if (pages)
        files.push_back({folder + "worksheet.pdf", pages->pdf});
    else
        say("note: no worksheet.pdf: " + pages.refusal().message);
    files.push_back({folder + "worksheet.txt", worksheet_text(worksheets.front(), options)});
    if (puzzle.grid.grid.size().cells() <= most_cells_on_a_screen)
        files.push_back({folder + "solve.html", solve_page(worksheets.front(), options)});
}

// What is written of one puzzle; with several, each in a folder of its own.
Outcome<std::vector<NamedFile>> files_of(const Puzzle& puzzle, const std::optional<ArtworkWanted>& wanted,
                                         const std::string& folder, const Values& values) {
    std::vector<NamedFile> files{{folder + "puzzle.json", to_json(puzzle)},
                                 {folder + "puzzle.txt", puzzle_text(puzzle)},
                                 {folder + "key.txt", key_text(puzzle)}};
    append_pages(files, puzzle, folder, values);
    if (!wanted) return files;
    const auto held = drawn(puzzle, wanted->artwork, wanted->fix);
    if (!held) return held.refusal();
    auto cut = files_to_cut(puzzle, *held, wanted->cutting);
    if (!cut) return cut.refusal();
    for (auto& file : *cut) files.push_back({folder + file.path, std::move(file.bytes)});
    return files;
}

ExitCode write_puzzles(const std::vector<Puzzle>& puzzles, bool several,
                       const std::optional<ArtworkWanted>& wanted, const Values& values) {
    std::vector<NamedFile> files;
    for (const Puzzle& puzzle : puzzles) {
        const std::string folder =
            several ? "seed-" + std::to_string(puzzle.recipe.seed) + "/" : std::string();
        auto some = files_of(puzzle, wanted, folder, values);
        if (!some) return report(some.refusal(), values.is_on("json"));
        for (auto& file : *some) files.push_back(std::move(file));
    }
    // Choices that were finished before an interrupt are not lost.
    return write_output(values.text("out"), files, values.is_on("replace"), values.is_on("json"),
                        several ? OnInterrupt::finish : OnInterrupt::stop);
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
    Verb verb{"make", "WORDS", "Makes a certified puzzle from a list of words.", "", {}};
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
    if (const auto refusal = artwork_without_blank(values)) return report(*refusal, json);
    if (const auto refusal = cutting_without_folder(values)) return report(*refusal, json);
    Paper paper{};
    if (const auto refusal = set_choice(paper, values, "paper", papers)) return report(*refusal, json);
    std::optional<ArtworkWanted> artwork_wanted;
    if (values.has("blank")) {
        auto options = artwork_options(values);
        if (!options) return report(options.refusal(), json);
        auto cutting = cut_options(values);
        if (!cutting) return report(cutting.refusal(), json);
        artwork_wanted = ArtworkWanted{*std::move(options), *std::move(cutting), values.is_on("fix")};
    }

    const auto count = count_value(values, "choices", max_choices, recipe->choices);
    if (!count) return report(count.refusal(), json);
    const auto threads = count_value(values, "threads", max_threads, 1);
    if (!threads) return report(threads.refusal(), json);

    const auto aim = aim_of(values);
    if (!aim) return report(aim.refusal(), json);
    const bool several = values.has("choices") || recipe->choices > 1;

    Progress progress("searching", "of the effort spent");
    const MakeControl control{[&](std::uint64_t spent, std::uint64_t all) { progress.show(spent, all); },
                              &interrupt_flag(), static_cast<unsigned>(*threads)};
    if (artwork_wanted) {
        auto on_blank = recipe_on_blank(*recipe, artwork_wanted->artwork, control);
        if (!on_blank) return report(on_blank.refusal(), json);
        recipe = std::move(on_blank);
    }
    const auto checked = CheckedRecipe::open(*recipe);
    if (!checked) return report(checked.refusal(), json);
    const auto puzzles = make_puzzles(*checked, *recipe, *aim, several, *count, control);
    if (!puzzles) return report(puzzles.refusal(), json);
    note_missing_avoid_list(*recipe);
    note_missing_letter_table(*recipe);
    if (puzzles->size() < *count)
        say("note: " + std::to_string(puzzles->size()) + " different puzzles were found, not " +
            std::to_string(*count) + ".");
    if (const auto moved = moved_words(puzzles->front()); !moved.empty()) say(moved);

    if (values.has("out")) {
        const ExitCode written = write_puzzles(*puzzles, several, artwork_wanted, values);
        if (written != done) return written;
    } else if (artwork_wanted) {
        say("note: no artwork is written without --out DIR.");
    }
    print_puzzles(*puzzles, several, json);
    return interrupt_flag() ? interrupted : done;
}

}  // namespace lode::cli
