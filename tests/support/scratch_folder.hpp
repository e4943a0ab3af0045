#pragma once
// A folder of its own for a test, removed with all that is in it.

#include <filesystem>
#include <fstream>
#include <map>
#include <random>
#include <sstream>
#include <string>

namespace lode::test {

class ScratchFolder {
  public:
    ScratchFolder() {
        std::random_device chance;
        path_ = std::filesystem::temp_directory_path() /
                ("lode-test-" + std::to_string(chance()) + std::to_string(chance()));
        std::filesystem::create_directory(path_);
    }
    ~ScratchFolder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;

    [[nodiscard]] std::string operator/(const std::string& name) const { return (path_ / name).string(); }
    [[nodiscard]] std::string path() const { return path_.string(); }

    // Everything in it: paths, with the bytes of files ("<folder>" for a folder).
    [[nodiscard]] std::map<std::string, std::string> all() const {
        std::map<std::string, std::string> found;
        for (const auto& entry : std::filesystem::recursive_directory_iterator(path_)) {
            const std::string name = std::filesystem::relative(entry.path(), path_).string();
            if (entry.is_directory()) {
                found[name] = "<folder>";
                continue;
            }
            std::ostringstream bytes;
            bytes << std::ifstream(entry.path(), std::ios::binary).rdbuf();
            found[name] = bytes.str();
        }
        return found;
    }

  private:
    std::filesystem::path path_;
};

}  // namespace lode::test
