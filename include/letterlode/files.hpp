#pragma once
// The one place that writes files. A file or a folder appears whole or not at all: it is written beside its
// place under a name of its own, flushed to the disk, and renamed.

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/export.hpp>
#include <letterlode/outcome.hpp>

namespace lode {

/// A file's path inside a folder ("layers/1-letters.svg") and its bytes.
struct NamedFile {
    std::string path;   ///< with / between folders
    std::string bytes;  ///< all of them
};

/// What the machine did wrong, not the caller: a full disk, a folder that may not be written.
struct LODE_API DiskFault : std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// What this project asks of a disk; tests put a full one in its place. Failing calls throw DiskFault with
/// path and reason.
class LODE_API Disk {
  public:
    virtual ~Disk();
    virtual void write(const std::string& path,
                       std::string_view bytes);          ///< creates or overwrites, and flushes
    virtual void make_folders(const std::string& path);  ///< with its parents
    virtual void rename(const std::string& from,
                        const std::string& to);  ///< over an existing file, never over a folder
    virtual void exchange(const std::string& a, const std::string& b);  ///< swaps two names in one step
    virtual void remove_all(const std::string& path);                   ///< no fault where there is none
    /// Whether a file or a folder has that path.
    [[nodiscard]] virtual bool exists(const std::string& path) const;
};

inline constexpr std::size_t max_file_bytes = 256u << 20;  ///< that are read where nothing else is said

/// The bytes of a file; "-" reads standard input. Refused as unusable: the file cannot be read, is a folder,
/// or is larger than `most` bytes.
[[nodiscard]] LODE_API Outcome<std::string> read_file(const std::string& path,
                                                      std::size_t most = max_file_bytes);

/// Writes one file whole. Throws DiskFault; nothing of it is left then.
LODE_API void write_file(const std::string& path, std::string_view bytes, Disk& disk);

/// Writes a folder whole. Refused as unusable where it exists and replace is false; with replace the old one
/// is swapped for the new one in one step and then removed. Throws DiskFault; the old folder stands untouched
/// then. Returns the folder's path.
[[nodiscard]] LODE_API Outcome<std::string> write_folder(const std::string& path,
                                                         const std::vector<NamedFile>& files, bool replace,
                                                         Disk& disk);

}  // namespace lode
