#pragma once
// --out DIR, and what the maker is told of the files in it.

#include <optional>
#include <string>
#include <vector>

#include <letterlode/files.hpp>

#include "report.hpp"

namespace lode::cli {

// What an interrupt that came before the writing does: nothing is written, or all of it all the same.
enum class OnInterrupt { stop, finish };

// Writes the folder and says on standard error where it is and what each file is for. Returns `done`, or why
// there is none.
[[nodiscard]] ExitCode write_output(const std::string& folder, const std::vector<NamedFile>& files,
                                    bool replace, bool json, OnInterrupt on_interrupt = OnInterrupt::stop);

// Refused early, before any work: a folder that exists and may not be replaced.
[[nodiscard]] std::optional<Refusal> cannot_write_to(const std::string& folder, bool replace);

}  // namespace lode::cli
