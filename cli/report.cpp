#include "report.hpp"

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <system_error>
#include <utility>

#include <unistd.h>
#include <letterlode/files.hpp>
#include <letterlode/puzzle.hpp>

namespace lode::cli {
namespace {

std::atomic<bool> was_interrupted{false};
static_assert(std::atomic<bool>::is_always_lock_free, "a signal handler sets it");

void note_interrupt(int number) {
    was_interrupted.store(true);
    // The next one is not caught: a program that hangs can be ended.
    std::signal(number, SIG_DFL);
}

// Where this thread's notes go, if not to standard error.
thread_local std::vector<std::string>* gathered = nullptr;

[[noreturn]] void output_fault() {
    throw DiskFault("cannot write to standard output: " + std::generic_category().message(errno));
}

}  // namespace

const std::atomic<bool>& interrupt_flag() {
    return was_interrupted;
}

void watch_for_interrupts() {
    // Without SA_RESTART, so that waiting for input ends too.
    struct sigaction action {};
    action.sa_handler = note_interrupt;
    ::sigemptyset(&action.sa_mask);
    ::sigaction(SIGINT, &action, nullptr);
    ::sigaction(SIGTERM, &action, nullptr);
    // A terminal that closes, unless the program was begun to outlive it (nohup).
    struct sigaction before {};
    if (::sigaction(SIGHUP, nullptr, &before) == 0 && before.sa_handler != SIG_IGN)
        ::sigaction(SIGHUP, &action, nullptr);
    // A file that reaches the limit on its size is an error of writing, told like any other.
    std::signal(SIGXFSZ, SIG_IGN);
}

bool prints_colours() {
    const auto setting = [](const char* name) {
        const char* value = std::getenv(name);
        return std::string_view(value ? value : "");
    };
    return ::isatty(STDOUT_FILENO) == 1 && setting("NO_COLOR").empty() && setting("TERM") != "dumb";
}

void print(std::string_view text) {
    if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size()) output_fault();
}

void finish_output() {
    if (std::fflush(stdout) != 0) output_fault();
}

GatheredNotes::GatheredNotes(std::vector<std::string>& notes) : outer_(std::exchange(gathered, &notes)) {}

GatheredNotes::~GatheredNotes() {
    gathered = outer_;
}

void say(std::string_view line) {
    if (gathered) {
        constexpr std::string_view prefix = "note: ";
        gathered->emplace_back(line.starts_with(prefix) ? line.substr(prefix.size()) : line);
        return;
    }
    std::fprintf(stderr, "%.*s\n", static_cast<int>(line.size()), line.data());
}

ExitCode report(const Refusal& refusal, bool json) {
    if (json) print(to_json(refusal));
    std::string text = refusal.message;
    for (std::size_t at = 0; at < text.size(); ++at)
        if (text[at] == '\n') text.insert(at + 1, "letterlode: ");
    say("letterlode: " + text);
    for (const auto& advice : refusal.advice) say("  " + advice);
    if (interrupt_flag()) return interrupted;
    return refusal.reason == Refusal::Reason::unusable ? unusable : finding;
}

Progress::Progress(std::string_view what, std::string_view of)
    : what_(what),
      of_(of),
      started_(std::chrono::steady_clock::now()),
      shown_(started_),
      on_terminal_(!gathered && ::isatty(STDERR_FILENO) == 1) {}

Progress::~Progress() {
    if (visible_) std::fputs("\r\033[K", stderr);
}

void Progress::show(std::uint64_t spent, std::uint64_t all) {
    using namespace std::chrono_literals;
    const auto now = std::chrono::steady_clock::now();
    if (!on_terminal_ || now - started_ < 1s || now - shown_ < 100ms) return;
    shown_ = now;
    visible_ = true;
    const double share = all == 0 ? 1.0 : static_cast<double>(spent) / static_cast<double>(all);
    std::fprintf(stderr, "\r%s: %.0f %% %s\033[K", what_.c_str(), 100 * share, of_.c_str());
    std::fflush(stderr);
}

}  // namespace lode::cli
