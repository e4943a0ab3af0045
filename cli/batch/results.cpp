#include "batch/results.hpp"

#include <cerrno>
#include <charconv>
#include <iterator>
#include <system_error>
#include <utility>
#include <vector>

#include <fcntl.h>
#include <unistd.h>
#include <letterlode/files.hpp>

#include "report.hpp"

namespace lode::cli {
namespace {

// What a line begins with.
constexpr std::string_view before_number = "{\"order\":";
constexpr std::string_view of_refusal = "\"format\": \"letterlode-refusal\"";
// Of each line so much is looked at: its number, its name, its format.
constexpr std::size_t looked_at = 1'000;

std::optional<std::uint64_t> order_in(std::string_view line) {
    if (!line.starts_with(before_number)) return std::nullopt;
    line.remove_prefix(before_number.size());
    std::uint64_t number = 0;
    const auto [end, error] = std::from_chars(line.data(), line.data() + line.size(), number);
    const bool is_followed = end != line.data() + line.size() && *end == ',';
    if (error != std::errc() || number == 0 || !is_followed) return std::nullopt;
    return number;
}

}  // namespace

Results::Results() : Results(STDOUT_FILENO, "standard output") {}

Results::Results(int file, std::string name) : file_(file), name_(std::move(name)) {}

Results::Results(Results&& other) noexcept
    : file_(other.file_),
      name_(std::move(other.name_)),
      is_own_(std::exchange(other.is_own_, false)),
      there_(std::move(other.there_)),
      earlier_(other.earlier_),
      earlier_refused_(other.earlier_refused_) {}

Results::~Results() {
    if (is_own_) ::close(file_);
}

void Results::fault() const {
    throw DiskFault("cannot write to " + name_ + ": " + std::generic_category().message(errno));
}

Outcome<Results> Results::open(const std::string& path, bool go_on) {
    const int flags = O_RDWR | O_CREAT | O_CLOEXEC | O_APPEND | (go_on ? 0 : O_EXCL);
    const int file = ::open(path.c_str(), flags, 0666);
    if (file < 0 && errno == EEXIST)
        return Refusal{Refusal::Reason::unusable,
                       "'" + path + "' exists already.",
                       {},
                       {"Give --resume to go on with it, or --results another name."},
                       path,
                       0};
    if (file < 0)
        return Refusal{Refusal::Reason::unusable,
                       "'" + path + "' cannot be written: " + std::generic_category().message(errno) + ".",
                       {},
                       {"Check its folder, and who may write there."},
                       path,
                       0};
    Results results(file, "'" + path + "'");
    results.is_own_ = true;
    if (auto refusal = results.read_earlier()) return *std::move(refusal);
    return results;
}

std::optional<Refusal> Results::read_earlier() {
    std::string line;  // its beginning
    char last = '\0';
    off_t whole = 0, at = 0;
    int lines = 0;
    std::vector<char> part(1 << 18);
    while (const auto got = ::pread(file_, part.data(), part.size(), at)) {
        if (got < 0) fault();
        for (ssize_t i = 0; i < got; ++i) {
            const char c = part[static_cast<std::size_t>(i)];
            if (c != '\n') {
                if (line.size() < looked_at) line += c;
                last = c;
                continue;
            }
            ++lines;
            const auto number = order_in(line);
            if (!number || last != '}')
                return Refusal{Refusal::Reason::unusable,
                               name_ + ", line " + std::to_string(lines) + ", is no result of a batch.",
                               {},
                               {"--resume goes on with a file that letterlode batch has begun."},
                               {},
                               0};
            note(*number);
            ++earlier_;
            if (line.find(of_refusal) != std::string::npos) ++earlier_refused_;
            line.clear();
            whole = at + i + 1;
        }
        at += got;
    }
    if (whole < at) {
        say("note: the last line of " + name_ + " was torn, and its order is done again.");
        if (::ftruncate(file_, whole) != 0) fault();
    }
    return std::nullopt;
}

void Results::note(std::uint64_t order) {
    if (has(order)) return;
    std::uint64_t first = order, last = order;
    if (const auto after = there_.find(order + 1); after != there_.end()) {
        last = after->second;
        there_.erase(after);
    }
    const auto later = there_.upper_bound(order);
    if (later != there_.begin() && std::prev(later)->second + 1 == order) first = std::prev(later)->first;
    there_[first] = last;
}

bool Results::has(std::uint64_t order) const {
    const auto later = there_.upper_bound(order);
    return later != there_.begin() && std::prev(later)->second >= order;
}

void Results::write(const std::string& line) {
    std::size_t done = 0;
    while (done < line.size()) {
        const auto more = ::write(file_, line.data() + done, line.size() - done);
        if (more < 0 && errno == EINTR) continue;
        if (more < 0) fault();
        done += static_cast<std::size_t>(more);
    }
}

void Results::finish() {
    // What is no file cannot be synchronised.
    if (is_own_ && ::fsync(file_) != 0 && errno != EINVAL && errno != EROFS) fault();
}

}  // namespace lode::cli
