#include "manual.hpp"

#include <algorithm>
#include <sstream>

#include <letterlode/version.hpp>

#include "option_text.hpp"
#include "readme_part.hpp"
#include "roff.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

std::string upper(std::string text) {
    for (char& c : text)
        if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    return text;
}

std::string call_of(const Verb& verb) {
    return roff_bold("letterlode " + verb.name) + " " + roff_italic(verb.file) + " [" +
           roff_italic("options") + "]";
}

std::string marked_up(const OptionText& option) {
    std::string text = option.short_name.empty() ? "" : roff_bold(option.short_name) + ", ";
    text += roff_bold(option.name);
    if (option.value.empty()) return text;
    return option.value_is_optional ? text + "[=" + roff_italic(option.value) + "]"
                                    : text + " " + roff_italic(option.value);
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) lines.push_back(line);
    return lines;
}

// The rest of a verb's help: paragraphs with blank lines between; in that of the examples, commands are
// indented.
struct Details {
    std::vector<std::string> paragraphs;
    std::vector<std::string> examples;
};
Details details_of(const Verb& verb) {
    Details details;
    std::string paragraph;
    const auto end_paragraph = [&] {
        if (!paragraph.empty()) details.paragraphs.push_back(paragraph);
        paragraph.clear();
    };
    for (const std::string& line : lines_of(verb.details)) {
        if (line.starts_with("  "))
            details.examples.push_back(line.substr(2));
        else if (line.empty())
            end_paragraph();
        else if (line != "Examples:" && line != "Example:")
            paragraph += (paragraph.empty() ? "" : " ") + line;
    }
    end_paragraph();
    return details;
}

void add_verb(Roff& page, const Verb& verb) {
    page.section(upper(verb.name));
    page.line(call_of(verb));
    page.paragraph(verb.purpose);
    const Details details = details_of(verb);
    for (const auto& paragraph : details.paragraphs) page.paragraph(paragraph);
    for (const auto& option : option_texts(verb)) page.item(marked_up(option), option.purpose);
    page.paragraph("Examples:");
    page.commands(details.examples);
}

void add_head(Roff& page) {
    page.line(".\\\" Written when the program is built, from its own descriptions: change those, not this.");
    page.line(".TH LETTERLODE 1 \"\" \"letterlode " + std::string(version()) + "\" \"User Commands\"");
    page.line(".nh");  // no word is parted, and no line stretched: options are read here, not a novel
    page.line(".ad l");
    page.section("NAME");
    page.line("letterlode \\- " + roff_prose(program_purpose));
    page.section("SYNOPSIS");
    for (const auto& entry : all_verbs()) {
        page.line(call_of(entry.describe()));
        page.line(".br");
    }
    page.line(roff_bold("letterlode") + " [" + roff_italic("verb") + "] " + roff_bold("--help"));
    page.line(".br");
    page.line(roff_bold("letterlode --version"));
}

void add_description(Roff& page) {
    page.section("DESCRIPTION");
    page.line(roff_prose(
        "letterlode places words in a grid, fills the cells around them, and has the finished grid judged by "
        "a "
        "search that knows nothing of how it was made: every word must be found as often as it should, and "
        "nothing that should not be read may stand there. It draws what it made at true size, a file a "
        "layer, "
        "and prints worksheets with their answer keys. The same words, options and seed give the same bytes "
        "on "
        "every machine."));
    for (const auto& entry : all_verbs()) {
        const Verb verb = entry.describe();
        page.item(roff_bold(verb.name), verb.purpose);
    }
    page.paragraph(
        "Results go to standard output or into the folder that --out names; all else goes to standard error. "
        "A "
        "message names the file, the line and the word, and says a way out. '-' in place of a file is "
        "standard "
        "input.");
}

void add_surroundings(Roff& page, const std::string& readme) {
    page.section("EXIT STATUS");
    for (const auto& [code, meaning] : rows_of(lines_below(readme, "### Exit codes")))
        page.item(roff_bold(code), meaning);
    page.section("ENVIRONMENT");
    page.item(roff_bold("SOURCE_DATE_EPOCH"),
              "seconds since 1970: the date that a printed document bears. Without it documents have none.");
    page.item(roff_bold("NO_COLOR"),
              "where it is set, check marks what it finds in brackets on a terminal too, not in colours.");
    page.section("FILES");
    page.line(roff_prose("Below the folder in which bin/letterlode is installed:"));
    page.item(roff_italic("share/letterlode/samples"), "lists of words, grids and a mask to try");
    page.item(roff_italic("share/letterlode/avoid"),
              "the words that are kept out of grids, a file a language; the program has them built in");
    page.paragraph("Fonts are found by fontconfig; fc-list(1) tells which there are.");
}

void add_examples(Roff& page) {
    page.section("EXAMPLES");
    page.line("A sheet for the garden club of Wrenbarrow, and its answer key:");
    page.commands({"letterlode print herb-bed.txt --heading 'Herb bed' --name-line --out herb-bed.pdf"});
    page.paragraph(
        "The sign of the garden's tool shed, to be applied to the back of a clear panel of 8 by 10 inches; "
        "then "
        "the plan of what to cut in a cutter that reaches 12 by 12:");
    page.commands(
        {"letterlode make tool-shed.txt --blank 8x10in --surface second "
         "--heading 'Wrenbarrow Garden' --out sign",
         "letterlode cut sign/puzzle.json --blank 8x10in --surface second "
         "--heading 'Wrenbarrow Garden' --bed 12x12in --out cut"});
    page.paragraph("A grid from elsewhere, judged before it is printed:");
    page.commands({"letterlode check herb-bed-grid.txt --words herb-bed.txt"});
    page.paragraph("A puzzle in the shape of a heart, and how hard it is:");
    page.commands({"letterlode make worksheet.txt --shape heart --json | letterlode rate -"});
}

void add_cautions(Roff& page, const std::string& readme) {
    page.section("CAUTIONS");
    for (const auto& caution : points_of(lines_below(readme, "## Before you cut"))) page.paragraph(caution);
}

}  // namespace

std::string manual_page(const std::string& readme) {
    Roff page;
    add_head(page);
    add_description(page);
    for (const auto& entry : all_verbs()) add_verb(page, entry.describe());
    add_surroundings(page, readme);
    add_examples(page);
    add_cautions(page, readme);
    page.section("SEE ALSO");
    page.line("\\fBfc\\-list\\fR(1)");
    return page.text();
}

}  // namespace lode::cli
