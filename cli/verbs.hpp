#pragma once
// One verb a file; each gives the program's exit code.

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

}  // namespace lode::cli
