// Writes what accompanies the program: `describe manual README` the manual page, `describe bash` and
// `describe zsh` what these shells complete by. The build runs it; it is not installed.

#include <exception>
#include <string>

#include <letterlode/files.hpp>

#include "manual.hpp"
#include "report.hpp"

int main(int count, char** arguments) {
    using namespace lode::cli;
    const std::string what = count > 1 ? arguments[1] : "";
    try {
        if (what == "manual" && count == 3) {
            const auto readme = lode::read_file(arguments[2]);
            if (!readme) return report(readme.refusal(), false);
            print(manual_page(*readme));
        } else if (what == "bash" && count == 2) {
            print(bash_completion());
        } else if (what == "zsh" && count == 2) {
            print(zsh_completion());
        } else {
            say("describe: say 'manual README', 'bash' or 'zsh'.");
            return unusable;
        }
        finish_output();
        return done;
    } catch (const std::exception& fault) {
        say(std::string("describe: ") + fault.what());
        return our_fault;
    }
}
