#include "batch/input.hpp"

#include <cerrno>
#include <cstring>
#include <system_error>

#include <poll.h>
#include <sys/stat.h>
#include <unistd.h>
#include <letterlode/files.hpp>

#include "report.hpp"

namespace lode::cli {

void Input::Close::operator()(std::FILE* file) const {
    if (file != stdin) std::fclose(file);
}

Input::Input(std::FILE* file, std::string name, std::uint64_t all)
    : file_(file), name_(std::move(name)), all_(all), part_(1 << 18) {}

Outcome<Input> Input::open(const std::string& path) {
    if (path == "-") return Input(stdin, "standard input", 0);
    const auto refuse = [&](const std::string& fault, const std::string& advice) {
        return Refusal{Refusal::Reason::unusable, "'" + path + "' " + fault, {}, {advice}, path, 0};
    };
    std::FILE* const file = std::fopen(path.c_str(), "rbe");
    if (!file)
        return refuse("cannot be read: " + std::generic_category().message(errno) + ".",
                      "Check its name and who may read it.");
    Input input(file, path, 0);
    struct stat about {};
    if (::fstat(::fileno(file), &about) == 0) {
        if (S_ISDIR(about.st_mode)) return refuse("is a folder.", "Name a file.");
        if (S_ISREG(about.st_mode)) input.all_ = static_cast<std::uint64_t>(about.st_size);
    }
    return input;
}

bool Input::fill() {
    // Whichever thread is told of an interrupt, this one must not wait on for input that never comes.
    constexpr int patience_ms = 100;
    for (::pollfd waiting{::fileno(file_.get()), POLLIN, 0};;) {
        if (interrupt_flag()) return false;
        const int ready = ::poll(&waiting, 1, patience_ms);
        if (ready > 0 || (ready < 0 && errno != EINTR)) break;
    }
    // read() gives what there is: an order that waits in a pipe is not kept waiting for the next.
    const auto got = ::read(::fileno(file_.get()), part_.data(), part_.size());
    if (got < 0) {
        if (interrupt_flag()) return false;
        throw DiskFault(name_ + " cannot be read to its end: " + std::generic_category().message(errno));
    }
    at_ = 0;
    end_ = static_cast<std::size_t>(got);
    return end_ > 0;
}

std::optional<Input::Line> Input::line(std::size_t most) {
    Line line;
    bool has_begun = false;
    while (at_ < end_ || fill()) {
        has_begun = true;
        const char* const from = part_.data() + at_;
        const auto* const stop = static_cast<const char*>(std::memchr(from, '\n', end_ - at_));
        const std::size_t size = stop ? static_cast<std::size_t>(stop - from) : end_ - at_;
        if (line.text.size() + size > most)
            line.is_too_long = true;
        else if (!line.is_too_long)
            line.text.append(from, size);
        const std::size_t taken = size + (stop ? 1 : 0);
        at_ += taken;
        read_ += taken;
        if (stop) return line;
    }
    line.is_whole = false;
    // An interrupt ends reading in the middle of a line, which is none then.
    if (!has_begun || interrupt_flag()) return std::nullopt;
    return line;
}

std::optional<char> Input::byte() {
    if (at_ == end_ && !fill()) return std::nullopt;
    ++read_;
    return part_[at_++];
}

}  // namespace lode::cli
