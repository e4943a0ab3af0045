// letterlode check GRID

#include <letterlode/files.hpp>
#include <letterlode/puzzle.hpp>

#include "recipe_options.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

bool is_json(const std::string& text) {
    const auto first = text.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
    return first != std::string::npos && text[first] == '{';
}

Outcome<Audit> check_puzzle(const std::string& text, const std::string& name, const Values& values) {
    auto puzzle = puzzle_from_json(text, name);
    if (!puzzle) return puzzle.refusal();
    auto recipe = with_text_options(std::move(puzzle->recipe), values);
    if (!recipe) return recipe.refusal();
    puzzle->recipe = std::move(*recipe);
    if (!values.has("words")) return audit(*puzzle);
    auto words = read_list(values.text("words"));
    if (!words) return words.refusal();
    puzzle->recipe.words = std::move(*words);
    return audit(puzzle->grid, puzzle->recipe, puzzle->words);
}

Outcome<Audit> check_text(const std::string& text, const std::string& name, const Values& values) {
    auto recipe = with_text_options({}, values);
    if (!recipe) return recipe.refusal();
    if (!values.has("words"))
        return Refusal{Refusal::Reason::unusable,
                       "The words to look for are not given.",
                       {},
                       {"Give --words FILE, a word a line."},
                       {},
                       0};
    auto words = read_list(values.text("words"));
    if (!words) return words.refusal();
    recipe->words = std::move(*words);
    note_missing_avoid_list(*recipe);
    const auto segmenter = Segmenter::open(recipe->text);
    if (!segmenter) return segmenter.refusal();
    const auto grid = read_grid(text, name, *segmenter);
    if (!grid) return grid.refusal();
    return audit(*grid, *recipe);
}

}  // namespace

Verb check_verb() {
    Verb verb{"check",
              "GRID",
              "Audits a finished grid: every word once, nothing a second time, nothing to be avoided.",
              "",
              {}};
    verb.options.add_options()("words", po::value<std::string>()->value_name("FILE"),
                               "the words that the grid should hold (a puzzle in JSON brings its own)");
    add_text_options(verb.options);
    verb.options.add_options()("json", po::bool_switch(), "print the audit, or the refusal, as JSON");
    verb.details =
        "GRID is text, a line a row, letters with or without blanks between, '.', '#' or '\u00B7' for a "
        "closed cell; or a\n"
        "puzzle in JSON, as letterlode make --json prints it. '-' reads standard input. All eight directions "
        "are searched.\n\n"
        "Examples:\n"
        "  letterlode check grid.txt --words words.txt\n"
        "  letterlode make words.txt --json | letterlode check -\n\n"
        "Exit codes: 0 certified; 1 a finding; 2 unusable input or options; 3 the machine's fault or ours; "
        "130 interrupted.\n";
    return verb;
}

ExitCode check(const Values& values) {
    const bool json = values.is_on("json");
    const std::string file = values.texts("file").front();
    if (file == "-" && values.text("words") == "-")
        return report({Refusal::Reason::unusable,
                       "Grid and words cannot both come from standard input.",
                       {},
                       {"Put one of them into a file."},
                       {},
                       0},
                      json);
    const auto text = read_file(file);
    if (!text) return report(text.refusal(), json);
    const std::string name = file == "-" ? "standard input" : file;
    const auto judged = is_json(*text) ? check_puzzle(*text, name, values) : check_text(*text, name, values);
    if (!judged) return report(judged.refusal(), json);
    print(json ? to_json(*judged) : audit_text(*judged));
    if (interrupt_flag()) return interrupted;
    return judged->certified ? done : finding;
}

}  // namespace lode::cli
