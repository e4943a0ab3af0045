// letterlode print PUZZLE...

#include <algorithm>
#include <cmath>
#include <filesystem>

#include <unistd.h>
#include <letterlode/files.hpp>
#include <letterlode/print.hpp>
#include <letterlode/puzzle.hpp>

#include "art_library.hpp"
#include "filler_options.hpp"
#include "grid_input.hpp"
#include "output_folder.hpp"
#include "print_options.hpp"
#include "recipe_options.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

// What a file is written as.
enum class Form { pdf, html, text };

Outcome<Form> form_of(const Values& values) {
    const std::string out = values.text("out");
    const std::string kind = std::filesystem::path(out).extension().string();
    if (values.is_on("text")) {
        if (values.has("out") && kind != ".txt")
            return unusable_call("--text is plain text, and '" + out + "' does not end in .txt.",
                                 "Give --out FILE.txt, or no --out: then it is printed.");
        return Form::text;
    }
    if (!values.has("out") || kind == ".pdf") return Form::pdf;
    if (kind == ".html") return Form::html;
    if (kind == ".txt") return Form::text;
    return unusable_call(
        "'" + out + "' ends in no kind of file that is printed.",
        "Give --out FILE.pdf for paper, FILE.html for a page to solve on a screen, or FILE.txt for text.");
}

// A file's name as a title: "herb-bed.txt" is "Herb bed".
std::string title_from(const std::string& file) {
    if (file == "-") return "";
    std::string title = std::filesystem::path(file).stem().string();
    std::replace(title.begin(), title.end(), '-', ' ');
    std::replace(title.begin(), title.end(), '_', ' ');
    if (!title.empty() && title[0] >= 'a' && title[0] <= 'z')
        title[0] = static_cast<char>(title[0] - 'a' + 'A');
    return title;
}

std::string title_of(const std::string& file, std::size_t place, std::size_t files, const Values& values) {
    const auto headings = values.texts("heading");
    if (place < headings.size()) return headings[place];
    return files > 1 || values.has("booklet") ? title_from(file) : "";
}

// A grid for which --words was forgotten would become a puzzle of its rows.
void note_what_may_be_a_grid(const WordLines& words, const std::string& name) {
    constexpr std::size_t fewest_rows = 4;
    const auto& rows = words.words;
    if (rows.size() < fewest_rows) return;
    const bool all_alike = std::all_of(rows.begin(), rows.end(), [&](const ListedWord& row) {
        return row.shown.size() == rows.front().shown.size();
    });
    if (all_alike)
        say("note: the lines of " + name +
            " are all of one length, and are taken for words. If they are a grid, give its words with "
            "--words FILE.");
}

// One file's puzzle, or what it is made from.
struct Source {
    std::string title;
    std::optional<Puzzle> puzzle;  // a finished grid
    Recipe recipe;
};

Outcome<Source> read_source(const std::string& file, std::string title, const Values& values) {
    const auto text = read_file(file);
    if (!text) return text.refusal();
    const std::string name = file == "-" ? "standard input" : file;
    if (is_json(*text) || values.has("words")) {
        for (const char* option : {"grid", "shape", "directions", "effort", "recipe"})
            if (values.has(option))
                return unusable_call("--" + std::string(option) +
                                         " is for a puzzle that is still to be made, and " + name +
                                         " is a finished one.",
                                     "Leave it out, or give a list of words.");
        auto input = read_grid_input(*text, name, values);
        if (!input) return input.refusal();
        Recipe recipe = input->recipe;
        auto puzzle = puzzle_of(std::move(input->grid), std::move(input->recipe), input->placed,
                                {1, &interrupt_flag(), {}});
        if (!puzzle) return puzzle.refusal();
        if (!input->is_puzzle) recipe.size = puzzle->recipe.size;
        return Source{std::move(title), std::move(*puzzle), std::move(recipe)};
    }
    Recipe recipe;
    if (values.has("recipe")) {
        const auto json = read_file(values.text("recipe"));
        if (!json) return json.refusal();
        auto read = recipe_from_json(*json, values.text("recipe"));
        if (!read) return read.refusal();
        recipe = std::move(*read);
    }
    auto words = read_word_lines(*text, name);
    if (!words) return words.refusal();
    note_what_may_be_a_grid(*words, name);
    recipe.words = std::move(*words);
    auto with_text = with_text_options(std::move(recipe), values);
    if (!with_text) return with_text.refusal();
    auto with_filler = with_filler_options(std::move(*with_text), values);
    if (!with_filler) return with_filler.refusal();
    auto with_grid = with_grid_options(std::move(*with_filler), values);
    if (!with_grid) return with_grid.refusal();
    note_missing_avoid_list(*with_grid);
    note_missing_letter_table(*with_grid);
    return Source{std::move(title), std::nullopt, std::move(*with_grid)};
}

MakeControl control_of(Progress& progress, std::size_t threads) {
    return {[&](std::uint64_t spent, std::uint64_t all) { progress.show(spent, all); }, &interrupt_flag(),
            static_cast<unsigned>(threads)};
}

std::string whole(double value) {
    return std::to_string(std::llround(value));
}

void say_versions(const Versions& versions, const std::string& title) {
    const auto [least, most] = std::minmax_element(versions.fixations.begin(), versions.fixations.end());
    say("note: " + (title.empty() ? std::string() : title + ": ") + std::to_string(versions.puzzles.size()) +
        " versions; a simulated reader needs " + whole(*least) + " to " + whole(*most) +
        " fixations for all words." +
        (versions.shared_places == 0 ? " No word stands at the same place in two of them."
                                     : " Pairs of versions have " + std::to_string(versions.shared_places) +
                                           " words at the same place."));
}

// The worksheets of one source: one, or versions marked by letters.
Outcome<std::vector<Worksheet>> worksheets_of(Source source, const Values& values, std::size_t versions,
                                              std::size_t threads) {
    std::vector<Worksheet> worksheets;
    if (source.puzzle && !values.has("versions")) {
        worksheets.push_back({std::move(*source.puzzle), source.title});
        return worksheets;
    }
    Progress progress("searching", "of the effort spent");
    const auto checked = CheckedRecipe::open(source.recipe);
    if (!checked) return checked.refusal();
    if (!values.has("versions")) {
        auto puzzle = checked->make(control_of(progress, threads));
        if (!puzzle) return puzzle.refusal();
        worksheets.push_back({std::move(*puzzle), source.title});
        return worksheets;
    }
    auto made = make_versions(*checked, source.recipe.seed, versions, control_of(progress, threads));
    if (!made) return made.refusal();
    say_versions(*made, source.title);
    for (std::size_t i = 0; i < made->puzzles.size(); ++i)
        worksheets.push_back(
            {std::move(made->puzzles[i]), source.title, std::string(1, static_cast<char>('A' + i))});
    return worksheets;
}

// Printed as they are: PDF to a file or another program, never to a terminal.
ExitCode deliver(const std::string& bytes, Form form, const Values& values) {
    if (interrupt_flag()) return interrupted;
    if (values.has("out")) {
        Disk disk;
        write_file(values.text("out"), bytes, disk);
        return done;
    }
    if (form == Form::pdf && ::isatty(STDOUT_FILENO) == 1)
        return report(unusable_call("A PDF is nothing for a terminal.", "Give --out FILE.pdf."),
                      values.is_on("json"));
    print(bytes);
    return done;
}

std::string points(double size) {
    return std::to_string(static_cast<int>(size)) + "." + std::to_string(static_cast<int>(size * 10) % 10) +
           " pt";
}

ExitCode deliver_pages(const std::vector<Worksheet>& worksheets, const PrintOptions& options,
                       const Values& values) {
    const bool json = values.is_on("json");
    const auto pages = art_library().print_worksheets(worksheets, options);
    if (!pages) return report(pages.refusal(), json);
    const ExitCode code = deliver(pages->pdf, Form::pdf, values);
    if (code != done) return code;
    for (const std::string& note : pages->notes) say("note: " + note);
    say((values.has("out") ? values.text("out") + ": " : std::string()) + std::to_string(pages->pages) +
        (pages->pages == 1 ? " page" : " pages") + ", letters of " + points(pages->letter_pt) +
        ", words of " + points(pages->list_pt) + ".");
    if (json && values.has("out")) print(art_library().pages_json(*pages, worksheets));
    return pages->is_large_enough ? done : finding;
}

ExitCode deliver_text(const std::vector<Worksheet>& worksheets, const PrintOptions& options,
                      const Values& values) {
    std::string text;
    for (const Worksheet& worksheet : worksheets)
        text += (text.empty() ? "" : "\f") + art_library().worksheet_text(worksheet, options);
    return deliver(text, Form::text, values);
}

std::optional<Refusal> bad_call(const Values& values, Form form, std::size_t files) {
    if (values.texts("heading").size() > files)
        return unusable_call("There are more headings than files.",
                             "Give --heading once for each file, in their order.");
    if (form == Form::html && (files > 1 || values.has("versions")))
        return unusable_call("A page for a screen holds one puzzle.",
                             "Print one file, without --versions, into each FILE.html.");
    if (form != Form::pdf && values.has("booklet"))
        return unusable_call("--booklet is for paper.", "Give --out FILE.pdf, or leave it out.");
    if (form != Form::pdf)
        for (const char* option : {"page", "margin", "font", "grid-lines"})
            if (values.has(option))
                return unusable_call(std::string("--") + option + " is for paper.",
                                     "Give --out FILE.pdf, or leave it out.");
    if (values.has("colours") && (values.text("key") == "none" || values.text("key") == "greyed"))
        return unusable_call("--colours is for rings and lines.",
                             "Give --key rings or lines, or leave it out.");
    if (values.is_on("json") && !values.has("out"))
        return unusable_call("Both the pages and --json would go to standard output.", "Give --out FILE.");
    if (values.has("words") && files > 1)
        return unusable_call("--words goes with one grid, and " + std::to_string(files) + " files are given.",
                             "Print them one by one, or as puzzles in JSON.");
    return std::nullopt;
}

// A file goes into a folder that is there: a name that was mistyped makes none.
std::optional<Refusal> no_folder_for(const std::string& file) {
    const auto folder = std::filesystem::path(file).parent_path();
    std::error_code unknown;
    if (folder.empty() || std::filesystem::is_directory(folder, unknown)) return std::nullopt;
    return Refusal{Refusal::Reason::unusable,
                   "'" + folder.string() + "' is no folder.",
                   {},
                   {"Give --out a file in a folder that is there, or make that folder first."},
                   file,
                   0};
}

}  // namespace

Verb print_verb() {
    Verb verb{
        .file = "PUZZLE...",
        .purpose = "Prints worksheets with their answer keys, for paper, a screen or a braille embosser.",
        .takes_several_files = true};
    add_print_options(verb.options);
    verb.options.add_options()  //
        ("heading", po::value<std::vector<std::string>>()->value_name("TEXT"),
         "the title; of several files one after the other")  //
        ("versions", po::value<std::string>()->value_name("N"),
         "N puzzles of each list, alike in difficulty, marked A, B, ...; their keys at the end")  //
        ("booklet", po::value<std::string>()->value_name("TITLE"),
         "a page of contents in front, with this title, and numbered pages")                          //
        ("text", po::bool_switch(), "plain text instead, for a screen reader or a braille embosser")  //
        ("threads", po::value<std::string>()->value_name("N"),
         "processors to use (default 1); the result is the same");
    add_words_option(verb.options);
    add_grid_options(verb.options);
    add_text_options(verb.options);
    add_filler_options(verb.options);
    verb.options.add_options()  //
        ("out", offered_value("FILE", {.files = true}),
         "FILE.pdf for paper, FILE.html for a page to solve on a screen, FILE.txt for text; without it the "
         "PDF or the "
         "text goes to standard output")                                               //
        ("replace", po::bool_switch(), "put the new file in the place of an old one")  //
        ("json", po::bool_switch(), "with --out, print what was printed, or the refusal, as JSON");
    verb.details =
        "PUZZLE is a puzzle in JSON, as letterlode make writes it; a list of words, of which a puzzle is "
        "made first;\n"
        "or, with --words, a grid. It is audited again before it is printed. '-' reads standard input.\n\n"
        "Examples:\n"
        "  letterlode print puzzle.json --out herbs.pdf --heading Herbs --name-line --date-line\n"
        "  letterlode print words.txt --versions 6 --page letter --large-print --out class.pdf\n"
        "  letterlode print herbs.txt tools.txt --booklet 'Our garden' --out booklet.pdf\n"
        "  letterlode print puzzle.json --out herbs.html\n"
        "  letterlode print puzzle.json --text\n\n"
        "Exit codes: 0 printed; 1 no such puzzle, one that is not certified, or large print that the page "
        "does not\n"
        "allow; 2 unusable input or options; 3 the machine's fault or ours; 130 interrupted.\n";
    return verb;
}

ExitCode print_sheets(const Values& values) {
    const bool json = values.is_on("json");
    const auto form = form_of(values);
    if (!form) return report(form.refusal(), json);
    const std::vector<std::string> files = values.texts("file");
    if (files.empty())
        return report(unusable_call("No file is given.", "Name a puzzle in JSON or a list of words."), json);
    if (const auto refusal = bad_call(values, *form, files.size())) return report(*refusal, json);
    if (values.has("out"))
        if (const auto refusal = cannot_write_to(values.text("out"), values.is_on("replace")))
            return report(*refusal, json);
    if (const auto refusal = no_folder_for(values.text("out"))) return report(*refusal, json);
    auto options = print_options(values);
    if (!options) return report(options.refusal(), json);
    options->contents = values.text("booklet");
    const auto versions = count_value(values, "versions", max_versions, 1);
    if (!versions) return report(versions.refusal(), json);
    if (values.has("versions") && *versions < 2)
        return report(unusable_value("versions", values.text("versions"),
                                     "Give 2 to 26, or leave it out for one worksheet."),
                      json);
    const auto threads = count_value(values, "threads", max_threads, 1);
    if (!threads) return report(threads.refusal(), json);

    std::vector<Worksheet> worksheets;
    for (std::size_t i = 0; i < files.size(); ++i) {
        auto source = read_source(files[i], title_of(files[i], i, files.size(), values), values);
        if (!source) return report(source.refusal(), json);
        if (source->puzzle && !source->puzzle->audit.certified) {
            if (json) print(to_json(source->puzzle->audit));
            say(audit_text(source->puzzle->audit));
            say("letterlode: " + files[i] + " is not certified, and is not printed.");
            return finding;
        }
        auto some = worksheets_of(std::move(*source), values, *versions, *threads);
        if (!some) return report(some.refusal(), json);
        for (Worksheet& worksheet : *some) worksheets.push_back(std::move(worksheet));
    }
    switch (*form) {
        case Form::pdf:
            return deliver_pages(worksheets, *options, values);
        case Form::html:
            return deliver(art_library().solve_page(worksheets.front(), *options), Form::html, values);
        case Form::text:
            return deliver_text(worksheets, *options, values);
    }
    return done;
}

}  // namespace lode::cli
