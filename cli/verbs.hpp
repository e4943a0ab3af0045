#pragma once
// One verb a file; each gives the program's exit code.

#include <array>
#include <string_view>

#include "options.hpp"
#include "report.hpp"

namespace lode::cli {

[[nodiscard]] Verb make_verb();
[[nodiscard]] ExitCode make(const Values& values);

[[nodiscard]] Verb check_verb();
[[nodiscard]] ExitCode check(const Values& values);

[[nodiscard]] Verb rate_verb();
[[nodiscard]] ExitCode rate(const Values& values);

[[nodiscard]] Verb cut_verb();
[[nodiscard]] ExitCode cut(const Values& values);

[[nodiscard]] Verb print_verb();
[[nodiscard]] ExitCode print_sheets(const Values& values);

[[nodiscard]] Verb batch_verb();
[[nodiscard]] ExitCode batch(const Values& values);

// To describe a verb takes longer than to find it by its name.
struct VerbEntry {
    std::string_view name;
    Verb (*described)();  // without its name
    ExitCode (*run)(const Values&);

    [[nodiscard]] Verb describe() const;
};
[[nodiscard]] const std::array<VerbEntry, 6>& all_verbs();

inline constexpr std::string_view program_purpose =
    "from a list of words to a certified word-grid puzzle, pages, and files that cut at true size";

}  // namespace lode::cli
