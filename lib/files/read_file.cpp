#include <cerrno>
#include <cstdio>
#include <memory>
#include <system_error>

#include <sys/stat.h>
#include <letterlode/files.hpp>

namespace lode {
namespace {

struct CloseFile {
    void operator()(std::FILE* file) const { std::fclose(file); }
};

}  // namespace

Outcome<std::string> read_file(const std::string& path, std::size_t most) {
    const bool standard_input = path == "-";
    const std::string name = standard_input ? "standard input" : "'" + path + "'";
    const auto refuse = [&](const std::string& fault, const std::string& advice) {
        return Refusal{
            Refusal::Reason::unusable, name + " " + fault, {}, {advice}, standard_input ? "-" : path, 0};
    };

    std::unique_ptr<std::FILE, CloseFile> opened;
    std::FILE* file = stdin;
    if (!standard_input) {
        opened.reset(std::fopen(path.c_str(), "rbe"));
        if (!opened)
            return refuse("cannot be read: " + std::generic_category().message(errno) + ".",
                          "Check its name and who may read it.");
        file = opened.get();
        struct stat about {};
        if (::fstat(::fileno(file), &about) == 0 && S_ISDIR(about.st_mode))
            return refuse("is a folder.", "Name a file.");
    }
    std::string bytes;
    char part[1 << 16];
    while (const std::size_t got = std::fread(part, 1, sizeof part, file)) {
        if (bytes.size() + got > most)
            return refuse("is larger than " + std::to_string(most) + " bytes.", "Give a smaller one.");
        bytes.append(part, got);
    }
    if (std::ferror(file))
        return refuse("cannot be read to its end: " + std::generic_category().message(errno) + ".",
                      "Try a copy of it.");
    return bytes;
}

}  // namespace lode
