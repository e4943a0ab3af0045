#include <algorithm>
#include <filesystem>
#include <random>

#include <letterlode/files.hpp>

namespace lode {
namespace {

namespace fs = std::filesystem;

// A name beside the path that nobody else has: hidden, and told apart by chance, since two programs may write
// at once.
std::string beside(const std::string& path) {
    const fs::path whole(path);
    std::random_device chance;
    return (whole.parent_path() /
            ("." + whole.filename().string() + "." + std::to_string(chance()) + ".part"))
        .string();
}

std::string without_trailing_slash(std::string path) {
    while (path.size() > 1 && path.back() == '/') path.pop_back();
    return path;
}

// Swapping away the folder that somebody stands in, or one above it, is never what was meant.
bool holds_working_folder(const std::string& path) {
    std::error_code error;
    const fs::path folder = fs::canonical(path, error);
    if (error) return false;
    const fs::path working = fs::current_path(error);
    if (error) return false;
    const auto [of_folder, of_working] =
        std::mismatch(folder.begin(), folder.end(), working.begin(), working.end());
    return of_folder == folder.end();
}

// Removes what was written where it does not come to stand in its place.
class Unfinished {
  public:
    Unfinished(std::string path, Disk& disk) : path_(std::move(path)), disk_(disk) {}
    ~Unfinished() {
        try {
            disk_.remove_all(path_);
        } catch (const DiskFault&) {
            // The first fault is already on its way to the caller.
        }
    }
    Unfinished(const Unfinished&) = delete;
    Unfinished& operator=(const Unfinished&) = delete;
    [[nodiscard]] const std::string& path() const { return path_; }

  private:
    std::string path_;
    Disk& disk_;
};

}  // namespace

void write_file(const std::string& path, std::string_view bytes, Disk& disk) {
    // What is no plain file (a pipe, a device) has nothing to be put in the place of.
    std::error_code error;
    const fs::file_status there = fs::status(path, error);
    if (fs::exists(there) && !fs::is_regular_file(there)) {
        disk.write(path, bytes);
        return;
    }
    const Unfinished part(beside(path), disk);
    disk.write(part.path(), bytes);
    disk.rename(part.path(), path);
}

Outcome<std::string> write_folder(const std::string& wanted, const std::vector<NamedFile>& files,
                                  bool replace, Disk& disk) {
    const std::string path = without_trailing_slash(wanted);
    const auto refuse = [&](const std::string& fault, const std::string& advice) {
        return Refusal{Refusal::Reason::unusable, "'" + path + "' " + fault, {}, {advice}, path, 0};
    };
    const std::string last = fs::path(path).filename().string();
    if (last.empty() || last == "." || last == "..")
        return refuse("is no name for a folder.", "Give --out a name of its own.");
    const auto exists_already = [&] {
        return refuse("exists already.",
                      "Give --out another name, or --replace to put the new folder in its place.");
    };
    const bool there = disk.exists(path);
    if (there && !replace) return exists_already();
    std::error_code error;
    if (there && !fs::is_directory(fs::symlink_status(path, error)))
        return refuse("is no folder, and is not replaced.", "Give --out another name.");

    if (there && holds_working_folder(path))
        return refuse("holds the folder that you work in, and is not replaced.",
                      "Give --out a folder of its own.");

    const Unfinished part(beside(path), disk);
    disk.make_folders(part.path());
    for (const auto& file : files) {
        const fs::path place = fs::path(part.path()) / file.path;
        if (place.parent_path() != fs::path(part.path())) disk.make_folders(place.parent_path().string());
        disk.write(place.string(), file.bytes);
    }
    // Swapped, the old folder bears the part's name, and is removed with it.
    try {
        if (there)
            disk.exchange(part.path(), path);
        else
            disk.rename(part.path(), path);
    } catch (const DiskFault&) {
        // Somebody else may have been quicker with the same name.
        if (!there && !replace && disk.exists(path)) return exists_already();
        throw;
    }
    return path;
}

}  // namespace lode
