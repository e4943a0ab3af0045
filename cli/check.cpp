// letterlode check GRID

#include <letterlode/files.hpp>
#include <letterlode/puzzle.hpp>

#include "grid_input.hpp"
#include "recipe_options.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

Outcome<CheckRules> check_rules(const Values& values) {
    CheckRules rules;
    const auto threads = count_value(values, "threads", max_threads, 1);
    if (!threads) return threads.refusal();
    const auto shortest = count_value(values, "chance-letters", 100, rules.shortest_by_chance);
    if (!shortest) return shortest.refusal();
    if (values.has("chance-letters") && !values.has("dictionary"))
        return unusable_call("--chance-letters says which words of a dictionary are told, and none is given.",
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
    Verb verb{
        .file = "GRID",
        .purpose = "Audits a finished grid: every word once, nothing a second time, nothing to be avoided."};
    add_words_option(verb.options);
    add_text_options(verb.options);
    verb.options.add_options()  //
        ("dictionary", offered_values("FILE", {.files = true}),
         "tell which of these words stand in the grid by chance, longest first: a word a line. May be given "
         "again")  //
        ("chance-letters", po::value<Text>()->value_name("N"),
         "letters that such a word has at the least (default 4)")  //
        ("threads", po::value<Text>()->value_name("N"),
         "processors to use (default 1); the result is the same")  //
        ("json", po::bool_switch(), "print the audit, or the refusal, as JSON");
    verb.details =
        std::string(grid_input_help()) +
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
    auto rules = check_rules(values);
    if (!rules) return report(rules.refusal(), json);
    const auto task = read_grid_input(values);
    if (!task) return report(task.refusal(), json);
    if (!task->is_puzzle) note_missing_avoid_list(task->recipe);

    Progress progress("searching", "of the rows");
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
