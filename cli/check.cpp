// letterlode check GRID

#include <letterlode/files.hpp>
#include <letterlode/puzzle.hpp>

#include "recipe_options.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

// A grid with what it is to be judged by.
struct Task {
    LetteredGrid grid;
    Recipe recipe;
    std::vector<PlacedWord> placed;  // where that is known
};

Refusal unusable_words(const std::string& fault, const std::string& advice) {
    return {Refusal::Reason::unusable, fault, {}, {advice}, {}, 0};
}

bool is_json(const std::string& text) {
    const auto first = text.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
    return first != std::string::npos && text[first] == '{';
}

// A puzzle brings its words, its placements and its rules; options win over them.
Outcome<Task> read_puzzle(const std::string& text, const std::string& name, const Values& values) {
    auto puzzle = puzzle_from_json(text, name);
    if (!puzzle) return puzzle.refusal();
    auto recipe = with_text_options(std::move(puzzle->recipe), values);
    if (!recipe) return recipe.refusal();
    if (values.has("words")) {
        if (values.text("words") == "-")
            return unusable_words("No list can stand under a puzzle in JSON.",
                                  "It brings its own words: leave --words out, or name a file.");
        auto words = read_list(values.text("words"));
        if (!words) return words.refusal();
        recipe->words = std::move(*words);
    }
    return Task{std::move(puzzle->grid), std::move(*recipe), std::move(puzzle->words)};
}

Outcome<Task> read_drawn(const std::string& text, const std::string& name, const Values& values) {
    auto recipe = with_text_options({}, values);
    if (!recipe) return recipe.refusal();
    const auto segmenter = Segmenter::open(recipe->text);
    if (!segmenter) return segmenter.refusal();
    if (!values.has("words"))
        return unusable_words("The words to look for are not given.",
                              "Give --words FILE, a word a line, or --words - for a list under the grid.");
    if (values.text("words") == "-") {
        auto both = read_grid_with_list(text, name, *segmenter);
        if (!both) return both.refusal();
        recipe->words = std::move(both->words);
        return Task{std::move(both->grid), std::move(*recipe), {}};
    }
    auto words = read_list(values.text("words"));
    if (!words) return words.refusal();
    recipe->words = std::move(*words);
    auto grid = read_grid(text, name, *segmenter);
    if (!grid) return grid.refusal();
    return Task{std::move(*grid), std::move(*recipe), {}};
}

Outcome<CheckRules> check_rules(const Values& values) {
    CheckRules rules;
    const auto threads = count_value(values, "threads", max_threads, 1);
    if (!threads) return threads.refusal();
    const auto shortest = count_value(values, "chance-letters", 100, rules.shortest_by_chance);
    if (!shortest) return shortest.refusal();
    if (values.has("chance-letters") && !values.has("dictionary"))
        return unusable_words(
            "--chance-letters says which words of a dictionary are told, and none is given.",
            "Name one with --dictionary FILE.");
    rules.shortest_by_chance = *shortest;
    for (const auto& file : values.texts("dictionary")) {
        const auto text = read_file(file);
        if (!text) return text.refusal();
        const auto words = read_dictionary(*text, file);
        if (!words) return words.refusal();
        rules.dictionary.insert(rules.dictionary.end(), words->begin(), words->end());
    }
    rules.control.threads = static_cast<unsigned>(*threads);
    rules.control.cancel = &interrupt_flag();
    return rules;
}

void print_findings(const LetteredGrid& grid, const Audit& audit) {
    print(audit_text(audit));
    const std::string drawn =
        marked_grid_text(grid, audit, prints_colours() ? Marking::colours : Marking::brackets);
    if (!drawn.empty()) print("\n" + drawn);
}

}  // namespace

Verb check_verb() {
    using Text = std::string;
    Verb verb{"check",
              "GRID",
              "Audits a finished grid: every word once, nothing a second time, nothing to be avoided.",
              "",
              {}};
    verb.options.add_options()("words", po::value<Text>()->value_name("FILE"),
                               "the words that the grid should hold (a puzzle in JSON brings its own); '-': "
                               "the list that stands under the grid, after a blank line");
    add_text_options(verb.options);
    verb.options.add_options()  //
        ("dictionary", po::value<std::vector<Text>>()->value_name("FILE"),
         "tell which of these words stand in the grid by chance, longest first: a word a line. May be given "
         "again")  //
        ("chance-letters", po::value<Text>()->value_name("N"),
         "letters that such a word has at the least (default 4)")  //
        ("threads", po::value<Text>()->value_name("N"),
         "processors to use (default 1); the result is the same")  //
        ("json", po::bool_switch(), "print the audit, or the refusal, as JSON");
    verb.details =
        "GRID is text, a line a row: letters one against the other, with blanks between, or as fields of a\n"
        "table with tabs, semicolons or commas; a closed cell is '.', '#', '\u00B7', an empty field, or a "
        "blank where\n"
        "the columns line up. Or a puzzle in JSON, as letterlode make --json prints it. '-' reads standard "
        "input.\n"
        "All eight directions are searched. Stray copies and avoided words are marked in the grid; words of "
        "a\n"
        "dictionary are told and are no finding.\n\n"
        "Examples:\n"
        "  letterlode check grid.txt --words words.txt\n"
        "  letterlode check page.csv --words - --dictionary words-of-english.txt\n"
        "  letterlode make words.txt --json | letterlode check -\n\n"
        "Exit codes: 0 certified; 1 a finding; 2 unusable input or options; 3 the machine's fault or ours; "
        "130 interrupted.\n";
    return verb;
}

ExitCode check(const Values& values) {
    const bool json = values.is_on("json");
    const std::string file = values.texts("file").front();
    auto rules = check_rules(values);
    if (!rules) return report(rules.refusal(), json);
    const auto text = read_file(file);
    if (!text) return report(text.refusal(), json);
    const std::string name = file == "-" ? "standard input" : file;
    const bool is_puzzle = is_json(*text);
    const auto task = is_puzzle ? read_puzzle(*text, name, values) : read_drawn(*text, name, values);
    if (!task) return report(task.refusal(), json);
    if (!is_puzzle) note_missing_avoid_list(task->recipe);

    Progress progress("of the rows");
    rules->control.progress = [&](long long done, long long all) {
        progress.show(static_cast<std::uint64_t>(done), static_cast<std::uint64_t>(all));
    };
    const auto judged = audit(task->grid, task->recipe, task->placed, *rules);
    if (!judged) return report(judged.refusal(), json);
    if (json)
        print(to_json(*judged));
    else
        print_findings(task->grid, *judged);
    return judged->certified ? done : finding;
}

}  // namespace lode::cli
