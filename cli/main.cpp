// letterlode VERB FILE [options]

#include <algorithm>
#include <exception>
#include <new>

#include <letterlode/files.hpp>
#include <letterlode/puzzle.hpp>
#include <letterlode/version.hpp>

#include "art_library.hpp"
#include "verbs.hpp"

namespace lode::cli {
namespace {

std::string usage() {
    std::string text = "letterlode: " + std::string(program_purpose) + "\n\n";
    for (const auto& entry : all_verbs()) {
        const Verb verb = entry.describe();
        const std::string call = "  letterlode " + verb.name + " " + verb.file;
        text += call + std::string(call.size() < 28 ? 28 - call.size() : 1, ' ') + verb.purpose + "\n";
    }
    return text + "\nletterlode VERB --help tells more of each; letterlode --version gives the version.\n";
}

// A program that reads JSON gets it even where the options cannot be read.
bool asks_for_json(const std::vector<std::string>& arguments) {
    return std::find(arguments.begin(), arguments.end(), "--json") != arguments.end();
}

ExitCode run(const std::vector<std::string>& arguments) {
    if (arguments.empty()) {
        say(usage());
        return unusable;
    }
    const std::string& first = arguments.front();
    if (first == "--help" || first == "-h" || first == "help") {
        print(usage());
        return done;
    }
    if (first == "--version") {
        print("letterlode " + std::string(version()) + "\n");
        return done;
    }
    for (const auto& entry : all_verbs()) {
        if (entry.name != first) continue;
        const Verb verb = entry.describe();
        const auto values = read_options(verb, {arguments.begin() + 1, arguments.end()});
        if (!values) return report(values.refusal(), asks_for_json(arguments));
        if (values->is_on("help")) {
            print(help_text(verb));
            return done;
        }
        return entry.run(*values);
    }
    say("letterlode: '" + first + "' is no verb.\n\n" + usage());
    return unusable;
}

}  // namespace
}  // namespace lode::cli

int main(int count, char** arguments) {
    using namespace lode::cli;
    watch_for_interrupts();
    try {
        const ExitCode code = run({arguments + (count > 0 ? 1 : 0), arguments + count});
        finish_output();
        return code;
    } catch (const lode::DiskFault& fault) {
        say(std::string("letterlode: ") + fault.what());
        say("  Nothing was left half written. Make room, or write elsewhere.");
    } catch (const MissingPart& fault) {
        say(std::string("letterlode: ") + fault.what());
        say("  Install letterlode anew, whole.");
    } catch (const std::bad_alloc&) {
        say("letterlode: the machine's memory does not suffice.");
    } catch (const std::exception& fault) {
        say(std::string("letterlode: a fault of this program: ") + fault.what());
        say("  Please tell its makers, with the command and its input.");
    }
    return our_fault;
}
