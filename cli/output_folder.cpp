#include "output_folder.hpp"

#include <algorithm>
#include <filesystem>

namespace lode::cli {
namespace {

std::string purpose(const std::string& path) {
    const std::string name = std::filesystem::path(path).filename().string();
    if (name == "worksheet.pdf") return "the puzzle on a page, and its answer key";
    if (name == "worksheet.txt") return "the same for a screen reader or a braille embosser";
    if (name == "solve.html") return "a page to solve the puzzle on, in a browser";
    if (path == "puzzle.json") return "the puzzle itself, for letterlode and other programs";
    if (path == "puzzle.txt") return "the grid and the word list as text";
    if (path == "key.txt") return "where each word stands";
    const std::string kind = std::filesystem::path(path).extension().string();
    const std::string format =
        kind == ".svg" ? std::string() : " (" + kind.substr(kind.empty() ? 0 : 1) + ")";
    if (path.starts_with("layers/") && kind == ".svg")
        return "one layer to cut, at true size; numbers give the order of application";
    if (path.starts_with("loads/") && kind == ".svg")
        return "all that is cut in one go, as it lies on the bed";
    if (path.starts_with("layers/") || path.starts_with("loads/")) return "the same" + format;
    if (path.starts_with("artwork.")) return "all layers in one drawing, at true size" + format;
    if (path.ends_with("job-sheet.pdf")) return "what to cut from what, and in which order to apply it";
    if (path.ends_with("guide.pdf"))
        return "to lay under or behind the blank while applying: print at 100 percent";
    if (path.ends_with("proof.html")) return "a page to look at all of it before anything is cut";
    if (path.ends_with("preview.png")) return "a picture of the finished piece, as its viewer sees it";
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
                   {"Give --out another name, or --replace to put the new one in its place."},
                   folder,
                   0};
}

}  // namespace lode::cli
