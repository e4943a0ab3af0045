#ifndef _GNU_SOURCE
#define _GNU_SOURCE  // renameat2
#endif
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>
#include <letterlode/files.hpp>

namespace lode {
namespace {

[[noreturn]] void fault(const std::string& deed, const std::string& path, int number) {
    throw DiskFault("cannot " + deed + " " + path + ": " + std::generic_category().message(number));
}

class OpenFile {
  public:
    OpenFile(const std::string& path, int flags) : number_(::open(path.c_str(), flags | O_CLOEXEC, 0666)) {}
    ~OpenFile() {
        if (number_ >= 0) ::close(number_);
    }
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;
    [[nodiscard]] int number() const { return number_; }
    [[nodiscard]] int close() { return ::close(std::exchange(number_, -1)); }

  private:
    int number_;
};

}  // namespace

Disk::~Disk() = default;

void Disk::write(const std::string& path, std::string_view bytes) {
    OpenFile file(path, O_WRONLY | O_CREAT | O_TRUNC);
    if (file.number() < 0) fault("write", path, errno);
    while (!bytes.empty()) {
        const auto written = ::write(file.number(), bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) fault("write", path, errno);
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    // A device or a pipe cannot be flushed: that is no fault.
    if (::fsync(file.number()) != 0 && errno != EINVAL && errno != EROFS) fault("write", path, errno);
    if (file.close() != 0) fault("write", path, errno);
}

void Disk::make_folders(const std::string& path) {
    std::error_code error;
    std::filesystem::create_directories(path, error);
    if (error) fault("make the folder", path, error.value());
}

void Disk::rename(const std::string& from, const std::string& to) {
    // A name that is taken in the meantime by a folder is an error of the system's; an empty one would be
    // replaced.
    if (std::filesystem::is_directory(from)
            ? ::renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) != 0
            : ::rename(from.c_str(), to.c_str()) != 0)
        fault("put in place", to, errno);
}

void Disk::exchange(const std::string& a, const std::string& b) {
    if (::renameat2(AT_FDCWD, a.c_str(), AT_FDCWD, b.c_str(), RENAME_EXCHANGE) != 0)
        fault("replace", b, errno);
}

void Disk::remove_all(const std::string& path) {
    std::error_code error;
    std::filesystem::remove_all(path, error);
    if (error) fault("remove", path, error.value());
}

bool Disk::exists(const std::string& path) const {
    std::error_code error;
    const auto type = std::filesystem::symlink_status(path, error).type();
    if (type == std::filesystem::file_type::none) fault("look at", path, error.value());
    return type != std::filesystem::file_type::not_found;
}

}  // namespace lode
