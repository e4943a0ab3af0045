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
    enum class Begin {
        anew,  // the file must not be there yet, or be empty
        // What is whole in it is kept, but for faults of the program; a line that was torn is cut off.
        go_on,
        go_on_but_refused,  // likewise, without the refusals
    };
    // Standard output.
    Results();
    // A file. Refused as unusable: one that is there, that holds what is no result, or that another run
    // writes to.
    [[nodiscard]] static Outcome<Results> open(const std::string& path, Begin begin);

    Results(Results&& other) noexcept;
    Results& operator=(Results&&) = delete;
    ~Results();

    // Whether the order has a result from an earlier run.
    [[nodiscard]] bool has(std::uint64_t order) const;
    // To be told of each order that has one, as they come in, with its text's checksum; refused as unusable
    // where the result that is there is another order's. That is known after some orders more, and `end`
    // tells it of the last.
    [[nodiscard]] std::optional<Refusal> pass_over(std::uint64_t order, std::uint32_t crc);
    [[nodiscard]] std::optional<Refusal> end();
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
    [[nodiscard]] std::optional<Refusal> compare();
    [[noreturn]] void fault() const;

    int file_;
    std::string name_;
    bool is_own_ = false;
    std::map<std::uint64_t, std::uint64_t> there_;  // first and last of orders that follow each other
    std::uint64_t earlier_ = 0, earlier_refused_ = 0, earlier_faults_ = 0;

    // Checksums are compared a block of orders at a time, by a sum for each: so they take little room. Where
    // a block differs, its results are read again to find the order.
    std::map<std::uint64_t, std::uint64_t> sums_;
    std::map<std::uint64_t, std::uint32_t> passed_;  // of one block, which `block_` is
    std::uint64_t block_ = 0;
    bool were_compared_ = false;
};

}  // namespace lode::cli
