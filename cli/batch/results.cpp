#include "batch/results.hpp"

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <cstdio>
#include <fstream>
#include <functional>
#include <iterator>
#include <system_error>
#include <utility>
#include <vector>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#include <letterlode/files.hpp>

#include "report.hpp"

namespace lode::cli {
namespace {

// What a line begins with.
constexpr std::string_view before_number = "{\"order\":";
constexpr std::string_view before_checksum = "\"order_crc32\":\"";
constexpr std::string_view of_fault = "\"format\":\"letterlode-fault\"";
constexpr std::string_view of_refusal = "\"format\": \"letterlode-refusal\"";
// Of each line so much is looked at: its number, its checksum, its name, its format.
constexpr std::size_t looked_at = 4'000;
constexpr std::uint64_t orders_of_a_block = 64;

struct Known {
    std::uint64_t order = 0;
    std::uint32_t crc = 0;
    bool is_refusal = false;
    bool is_fault = false;
};

// What the beginning of a line tells; nothing where it is no result.
std::optional<Known> known_of(std::string_view line) {
    Known known;
    if (!line.starts_with(before_number)) return std::nullopt;
    known.is_refusal = line.find(of_refusal) != std::string_view::npos;
    known.is_fault = line.find(of_fault) != std::string_view::npos;
    line.remove_prefix(before_number.size());
    const auto [end, error] = std::from_chars(line.data(), line.data() + line.size(), known.order);
    const bool is_followed = end != line.data() + line.size() && *end == ',';
    if (error != std::errc() || known.order == 0 || !is_followed) return std::nullopt;
    line.remove_prefix(static_cast<std::size_t>(end - line.data()) + 1);
    if (!line.starts_with(before_checksum)) return std::nullopt;
    line.remove_prefix(before_checksum.size());
    constexpr std::size_t digits = 8;
    if (line.size() < digits) return std::nullopt;
    const auto [behind, fault] = std::from_chars(line.data(), line.data() + digits, known.crc, 16);
    if (fault != std::errc() || behind != line.data() + digits) return std::nullopt;
    return known;
}

// Whether this can be what is left of a result: an end of a file that is nothing else would be cut off.
bool is_beginning(std::string_view line) {
    const auto size = std::min(line.size(), before_number.size());
    return line.substr(0, size) == before_number.substr(0, size);
}

// Orders that change places change the sum of theirs (the odd number is that of Knuth's multiplicative
// hashing, TAOCP 3, 6.4: 2^64 by the golden ratio).
std::uint64_t mixed(std::uint64_t order, std::uint32_t crc) {
    return (order << 32 ^ order >> 32 ^ crc) * 0x9E3779B97F4A7C15u;
}

// What stands behind the last whole line, and where the file ends.
struct Rest {
    std::string line;
    off_t end = 0;
};

// Calls with each whole line's beginning, its last character and the place behind it, until it is told false
// or an interrupt comes. Throws what `fault` throws.
Rest for_each_line(int file, const std::function<void()>& fault,
                   const std::function<bool(const std::string&, char, off_t)>& call) {
    Rest rest;
    char last = '\0';
    std::vector<char> part(1 << 18);
    while (const auto got = interrupt_flag() ? 0 : ::pread(file, part.data(), part.size(), rest.end)) {
        if (got < 0) fault();
        for (ssize_t i = 0; i < got; ++i) {
            const char c = part[static_cast<std::size_t>(i)];
            if (c != '\n') {
                if (rest.line.size() < looked_at) rest.line += c;
                last = c;
                continue;
            }
            if (!call(rest.line, last, rest.end + i + 1)) return rest;
            rest.line.clear();
        }
        rest.end += got;
    }
    return rest;
}

Refusal unusable_file(const std::string& path, const std::string& fault, const std::string& advice) {
    return {Refusal::Reason::unusable, "'" + path + "' " + fault, {}, {advice}, path, 0};
}

// Writes the file anew without these of its lines, and puts that in its place.
std::optional<Refusal> leave_out(const std::string& path,
                                 const std::function<bool(const Known&)>& is_left_out) {
    std::ifstream old(path, std::ios::binary);
    const std::string beside = path + ".part";
    std::ofstream kept(beside, std::ios::binary | std::ios::trunc);
    for (std::string line; std::getline(old, line);) {
        const auto known = known_of(std::string_view(line).substr(0, looked_at));
        if (known && is_left_out(*known)) continue;
        kept << line;
        if (!old.eof()) kept << '\n';
    }
    kept.close();
    // On the disk before it takes the old one's place.
    const int written = ::open(beside.c_str(), O_RDONLY | O_CLOEXEC);
    const bool is_synchronised = written >= 0 && ::fsync(written) == 0;
    if (written >= 0) ::close(written);
    if (!kept || !old.eof() || !is_synchronised || std::rename(beside.c_str(), path.c_str()) != 0) {
        std::remove(beside.c_str());
        return unusable_file(path, "cannot be written anew, without what is done again.",
                             "Check its folder, and its room.");
    }
    return std::nullopt;
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
      earlier_refused_(other.earlier_refused_),
      earlier_faults_(other.earlier_faults_),
      sums_(std::move(other.sums_)) {}

Results::~Results() {
    if (is_own_) ::close(file_);
}

void Results::fault() const {
    throw DiskFault("cannot write to " + name_ + ": " + std::generic_category().message(errno));
}

Outcome<Results> Results::open(const std::string& path, Begin begin) {
    const int file = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_APPEND, 0666);
    if (file < 0)
        return unusable_file(path, "cannot be written: " + std::generic_category().message(errno) + ".",
                             "Check its folder, and who may write there.");
    Results results(file, "'" + path + "'");
    results.is_own_ = true;
    struct stat about {};
    if (::fstat(file, &about) != 0) results.fault();
    // A file without anything in it is as good as none.
    if (begin == Begin::anew && (about.st_size > 0 || !S_ISREG(about.st_mode)))
        return unusable_file(path, "exists already.",
                             "Give --resume to go on with it, or --results another name.");
    if (!S_ISREG(about.st_mode))
        return unusable_file(path, "is no file that could be gone on with.", "Give --results a file.");
    if (::flock(file, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK)
        return unusable_file(path, "is written to by another run.",
                             "Wait for its end, or give --results another name.");
    if (auto refusal = results.read_earlier()) return *std::move(refusal);
    // A fault is no answer: its order is done again.
    const bool without_refused = begin == Begin::go_on_but_refused && results.earlier_refused_ > 0;
    if (!without_refused && results.earlier_faults_ == 0) return results;
    const auto is_left_out = [&](const Known& known) {
        return known.is_fault || (without_refused && known.is_refusal);
    };
    if (auto refusal = leave_out(path, is_left_out)) return *std::move(refusal);
    return open(path, Begin::go_on);
}

std::optional<Refusal> Results::read_earlier() {
    off_t whole = 0;
    int lines = 0;
    bool is_foreign = false;
    const Rest rest = for_each_line(
        file_, [&] { fault(); },
        [&](const std::string& line, char last, off_t behind) {
            ++lines;
            const auto known = known_of(line);
            is_foreign = !known || last != '}';
            if (is_foreign) return false;
            if (!has(known->order))
                sums_[known->order / orders_of_a_block] += mixed(known->order, known->crc);
            note(known->order);
            ++earlier_;
            if (known->is_refusal) ++earlier_refused_;
            if (known->is_fault) ++earlier_faults_;
            whole = behind;
            return true;
        });
    if (interrupt_flag()) return std::nullopt;
    if (!is_foreign && !is_beginning(rest.line)) {
        is_foreign = true;
        ++lines;
    }
    if (is_foreign)
        return Refusal{Refusal::Reason::unusable,
                       name_ + ", line " + std::to_string(lines) + ", is no result of a batch.",
                       {},
                       {"--resume goes on with a file that letterlode batch has begun."},
                       {},
                       0};
    if (whole < rest.end) {
        say("note: the last line of " + name_ + " was torn, and its order is done again.");
        if (::ftruncate(file_, whole) != 0) fault();
    }
    return std::nullopt;
}

std::optional<Refusal> Results::pass_over(std::uint64_t order, std::uint32_t crc) {
    std::optional<Refusal> refusal;
    if (order / orders_of_a_block != block_) refusal = end();
    block_ = order / orders_of_a_block;
    passed_[order] = crc;
    return refusal;
}

std::optional<Refusal> Results::end() {
    std::uint64_t sum = 0;
    for (const auto& [order, crc] : passed_) sum += mixed(order, crc);
    std::optional<Refusal> refusal;
    if (!were_compared_ && !passed_.empty() && sums_[block_] != sum) refusal = compare();
    passed_.clear();
    return refusal;
}

// A block differs: by an order, or since some of its orders are no longer among those that come in, which is
// looked into once.
std::optional<Refusal> Results::compare() {
    were_compared_ = true;
    std::optional<std::uint64_t> other;
    for_each_line(
        file_, [&] { fault(); },
        [&](const std::string& line, char, off_t) {
            const auto known = known_of(line);
            const auto passed = known ? passed_.find(known->order) : passed_.end();
            if (passed != passed_.end() && known->crc != passed->second)
                other = std::min(other.value_or(known->order), known->order);
            return true;
        });
    if (!other) return std::nullopt;
    return Refusal{
        Refusal::Reason::unusable,
        "order " + std::to_string(*other) + " is another than the one whose result stands in " + name_ + ".",
        {},
        {"Leave orders in their lines, and add new ones behind them; --refused-again makes those that were "
         "refused and are mended.",
         "Or give --results another name, and make all of them."},
        {},
        0};
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
