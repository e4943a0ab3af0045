// letterlode cut PUZZLE

#include <letterlode/art.hpp>
#include <letterlode/cut.hpp>
#include <letterlode/files.hpp>
#include <letterlode/puzzle.hpp>

#include "art_library.hpp"
#include "artwork_options.hpp"
#include "cut_options.hpp"
#include "output_folder.hpp"
#include "verbs.hpp"

namespace lode::cli {

Verb cut_verb() {
    Verb verb{.file = "PUZZLE",
              .purpose = "Draws a puzzle's artwork at true size, a file a layer, ready to cut."};
    add_artwork_options(verb.options);
    add_cut_options(verb.options);
    verb.options.add_options()  //
        ("out", offered_value("DIR", {.folders = true}),
         "write layers, loads, job sheet, proof and preview into a new folder; without it the artwork is "
         "printed as "
         "SVG")                                                                          //
        ("replace", po::bool_switch(), "put the new folder in the place of an old one")  //
        ("json", po::bool_switch(),
         "with --out, print what is cut, what the film does not hold and the loads as JSON; and in any case "
         "a refusal, or the audit of a puzzle that is not certified");
    verb.details =
        "PUZZLE is a puzzle in JSON, as letterlode make writes it. '-' reads standard input. It is audited "
        "again first.\n\n"
        "Example:\n"
        "  letterlode cut panel/puzzle.json --blank 8x10in --surface second --heading 'Our garden' --out "
        "cut\n\n"
        "Blades and weeding hooks cut: work away from the hand and the body. Film that contains PVC must "
        "never go into a\n"
        "laser or a hot-wire cutter: it gives off hydrogen chloride. The makers' instructions and local "
        "rules come first.\n\n"
        "Exit codes: 0 drawn; 1 the puzzle is not certified, or film would not hold; 2 unusable input or "
        "options; 3 the machine's "
        "fault or ours;\n"
        "130 interrupted.\n";
    return verb;
}

ExitCode cut(const Values& values) {
    const bool json = values.is_on("json");
    const std::string file = values.texts("file").front();
    if (values.is_on("replace") && !values.has("out"))
        return report(unusable_call("--replace is of no use without a folder.",
                                    "Give --out DIR as well, or leave it out."),
                      json);
    if (values.has("out"))
        if (const auto refusal = cannot_write_to(values.text("out"), values.is_on("replace")))
            return report(*refusal, json);
    const auto options = artwork_options(values);
    if (!options) return report(options.refusal(), json);
    if (const auto refusal = cutting_without_folder(values)) return report(*refusal, json);
    auto cutting = cut_options(values);
    if (!cutting) return report(cutting.refusal(), json);
    const auto text = read_file(file);
    if (!text) return report(text.refusal(), json);
    const auto puzzle = puzzle_from_json(*text, file == "-" ? "standard input" : file);
    if (!puzzle) return report(puzzle.refusal(), json);
    if (!puzzle->audit.certified) {
        if (json) print(to_json(puzzle->audit));
        say(audit_text(puzzle->audit));
        say("letterlode: this puzzle is not certified, and is not drawn.");
        return finding;
    }
    const auto held = drawn(*puzzle, *options, values.is_on("fix"));
    if (!held) return report(held.refusal(), json);
    const ExitCode end = held->measures.holds() ? done : finding;
    if (values.has("out")) {
        const auto plan = planned_loads(*held, *cutting);
        if (!plan) return report(plan.refusal(), json);
        if (*plan) cutting->planned = &**plan;
        const auto files = files_to_cut(*puzzle, *held, *cutting);
        if (!files) return report(files.refusal(), json);
        const ExitCode written = write_output(values.text("out"), *files, values.is_on("replace"), json);
        if (written != done) return written;
        if (json) print(art_library().cut_json(*held, *cutting));
        return end;
    }
    print(art_library().to_svg(art_library().artwork_drawing(held->artwork)));
    return interrupt_flag() ? interrupted : end;
}

}  // namespace lode::cli
