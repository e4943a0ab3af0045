#pragma once
// What is written about the program when it is built: its manual page and what shells complete by. All of it
// comes from the verbs' own descriptions, so that it never says anything else than --help.

#include <string>

namespace lode::cli {

// The page letterlode(1) in the form that man reads. What it has in common with the README, the exit codes
// and the cautions, is taken from there. Throws std::runtime_error where the README lacks them.
[[nodiscard]] std::string manual_page(const std::string& readme);

// What bash reads to complete a command.
[[nodiscard]] std::string bash_completion();
// The same for zsh.
[[nodiscard]] std::string zsh_completion();

}  // namespace lode::cli
