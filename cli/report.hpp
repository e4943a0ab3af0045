#pragma once
// What the program says, and how it ends. Results go to standard output, all else to standard error.

#include <atomic>
#include <chrono>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/outcome.hpp>

namespace lode::cli {

enum ExitCode : int {
    done = 0,
    finding = 1,    // a finding, or a refusal that is impossible or unfinished
    unusable = 2,   // unusable input or options
    our_fault = 3,  // the machine's fault or ours
    interrupted = 130
};

// Whether what is printed may have colours: standard output is a terminal that knows them, and NO_COLOR
// (no-color.org) is not set.
[[nodiscard]] bool prints_colours();

// Set by an interrupt (SIGINT, SIGTERM, SIGHUP); a second one ends the program at once.
[[nodiscard]] const std::atomic<bool>& interrupt_flag();
void watch_for_interrupts();

// Writes to standard output; throws DiskFault where it cannot.
void print(std::string_view text);
// Writes out what standard output still holds; throws DiskFault where it cannot.
void finish_output();

// Says a line on standard error; or, on a thread whose notes are gathered, adds it to them.
void say(std::string_view line);

// While it lives, what its thread says is gathered, and no progress of it is shown: for work that is one of
// many at once, whose notes belong to its own result.
class GatheredNotes {
  public:
    explicit GatheredNotes(std::vector<std::string>& notes);
    ~GatheredNotes();
    GatheredNotes(const GatheredNotes&) = delete;
    GatheredNotes& operator=(const GatheredNotes&) = delete;

  private:
    std::vector<std::string>* outer_;
};

// Says why on standard error, with its advice; with `json`, prints the refusal to standard output besides.
// Returns the exit code.
ExitCode report(const Refusal& refusal, bool json);

// A line on standard error that tells how far long work is; only on a terminal, and only after a second.
class Progress {
  public:
    // "searching", "of the effort spent"
    Progress(std::string_view what, std::string_view of);
    ~Progress();
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;
    void show(std::uint64_t spent, std::uint64_t all);

  private:
    std::string what_;
    std::string of_;
    std::chrono::steady_clock::time_point started_;
    std::chrono::steady_clock::time_point shown_;
    bool on_terminal_;
    bool visible_ = false;
};

}  // namespace lode::cli
