#pragma once
// A file or standard input, read on and on in bounded memory.

#include <cstdint>
#include <cstdio>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <letterlode/outcome.hpp>

namespace lode::cli {

class Input {
  public:
    // "-" is standard input. Refused as unusable where it cannot be opened.
    [[nodiscard]] static Outcome<Input> open(const std::string& path);

    struct Line {
        std::string text;
        bool is_whole = true;      // false: the file ends without a line end
        bool is_too_long = false;  // than `most`: its end was passed over
    };
    // The next line, without its end, or nothing at the end and after an interrupt. Throws DiskFault.
    [[nodiscard]] std::optional<Line> line(std::size_t most);
    // The next byte, or nothing. Throws DiskFault.
    [[nodiscard]] std::optional<char> byte();

    [[nodiscard]] std::uint64_t read() const { return read_; }
    [[nodiscard]] std::uint64_t all() const { return all_; }  // 0 where nobody knows
    [[nodiscard]] const std::string& name() const { return name_; }

  private:
    struct Close {
        void operator()(std::FILE* file) const;
    };
    Input(std::FILE* file, std::string name, std::uint64_t all);
    bool fill();

    std::unique_ptr<std::FILE, Close> file_;
    std::string name_;
    std::uint64_t all_ = 0;
    std::uint64_t read_ = 0;  // what was handed out
    std::vector<char> part_;
    std::size_t at_ = 0, end_ = 0;
};

}  // namespace lode::cli
