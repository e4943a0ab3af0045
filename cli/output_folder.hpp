#pragma once
// --out DIR, and what the maker is told of the files in it.

#include <optional>
#include <string>
#include <vector>

#include <letterlode/files.hpp>

#include "report.hpp"

namespace lode::cli {

// Writes the folder and says on standard error where it is and what each file is for. Returns `done`, or why
// there is none.
[[nodiscard]] ExitCode write_output(const std::string& folder, const std::vector<NamedFile>& files,
                                    bool replace, bool json);

// Refused early, before any work: a folder that exists and may not be replaced.
[[nodiscard]] std::optional<Refusal> cannot_write_to(const std::string& folder, bool replace);

}  // namespace lode::cli
