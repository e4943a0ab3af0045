#include "output_folder.hpp"

#include <algorithm>
#include <filesystem>

namespace lode::cli {
namespace {

std::string purpose(const std::string& path) {
    if (path == "puzzle.json") return "the puzzle itself, for letterlode and other programs";
    if (path == "puzzle.txt") return "the grid and the word list as text";
    if (path == "key.txt") return "where each word stands";
    if (path == "artwork.svg") return "all layers in one drawing, at true size";
    if (path == "preview.png") return "a picture of the finished piece, as its viewer sees it";
    if (path.starts_with("layers/"))
        return "one layer to cut, at true size; numbers give the order of application";
    return "";
}

}  // namespace

ExitCode write_output(const std::string& folder, const std::vector<NamedFile>& files, bool replace, bool json,
                      OnInterrupt on_interrupt) {
    // Up to here an interrupt leaves nothing behind; from here the folder is finished first.
    if (interrupt_flag() && on_interrupt == OnInterrupt::stop) return interrupted;
    Disk disk;
    const auto written = write_folder(folder, files, replace, disk);
    if (!written) return report(written.refusal(), json);
    std::size_t widest = 0;
    for (const auto& file : files) widest = std::max(widest, file.path.size());
    say("In " + std::filesystem::absolute(*written).lexically_normal().string() + ":");
    for (const auto& file : files)
        say("  " + file.path + std::string(widest + 2 - file.path.size(), ' ') + purpose(file.path));
    return done;
}

std::optional<Refusal> cannot_write_to(const std::string& folder, bool replace) {
    const Disk disk;
    if (replace || !disk.exists(folder)) return std::nullopt;
    return Refusal{Refusal::Reason::unusable,
                   "'" + folder + "' exists already.",
                   {},
                   {"Give --out another name, or --replace to put the new folder in its place."},
                   folder,
                   0};
}

}  // namespace lode::cli
