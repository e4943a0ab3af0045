#pragma once
// Where results go, a line each, and which of them are there already.

#include <cstdint>
#include <map>
#include <optional>
#include <string>

#include <letterlode/outcome.hpp>

#include "batch/order_work.hpp"

namespace lode::cli {

class Results {
  public:
    // Standard output.
    Results();
    // A file. With `go_on` what is whole in it is kept, a line that was torn is cut off, and more is added;
    // else it must not be there yet. Refused as unusable: a file that is there, or that holds what is no
    // result.
    [[nodiscard]] static Outcome<Results> open(const std::string& path, bool go_on);

    Results(Results&& other) noexcept;
    Results& operator=(Results&&) = delete;
    ~Results();

    // Whether the order has a result from an earlier run.
    [[nodiscard]] bool has(std::uint64_t order) const;
    // How many there are from an earlier run, and how many of them are refusals.
    [[nodiscard]] std::uint64_t earlier() const { return earlier_; }
    [[nodiscard]] std::uint64_t earlier_refused() const { return earlier_refused_; }

    // Writes a line at once and whole: whatever happens to the program later, it is there. Throws DiskFault.
    void write(const std::string& line);
    // Waits until all of it is on the disk. Throws DiskFault.
    void finish();

  private:
    Results(int file, std::string name);
    [[nodiscard]] std::optional<Refusal> read_earlier();
    void note(std::uint64_t order);
    [[noreturn]] void fault() const;

    int file_;
    std::string name_;
    bool is_own_ = false;
    std::map<std::uint64_t, std::uint64_t> there_;  // first and last of orders that follow each other
    std::uint64_t earlier_ = 0, earlier_refused_ = 0;
};

}  // namespace lode::cli
