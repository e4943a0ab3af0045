#pragma once
// How far a batch is, told while it runs: on standard error, on a terminal only, and only after a second.

#include <atomic>
#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <mutex>
#include <string>
#include <thread>

namespace lode::cli {

class BatchProgress {
  public:
    // How many bytes of orders there are; 0 where nobody knows.
    explicit BatchProgress(std::uint64_t all_bytes);
    ~BatchProgress();
    BatchProgress(const BatchProgress&) = delete;
    BatchProgress& operator=(const BatchProgress&) = delete;

    // From any thread.
    void set_read(std::uint64_t bytes) { read_.store(bytes, std::memory_order_relaxed); }
    void set_done(std::uint64_t orders, std::uint64_t refused) {
        done_.store(orders, std::memory_order_relaxed);
        refused_.store(refused, std::memory_order_relaxed);
    }

  private:
    void tell();

    std::uint64_t all_;
    std::atomic<std::uint64_t> read_{0}, done_{0}, refused_{0};
    std::mutex mutex_;
    std::condition_variable ended_;
    bool is_ended_ = false;
    std::thread teller_;
};

// "412 done, 3 refused, 81 a second, 5 min left"
[[nodiscard]] std::string batch_progress_text(std::uint64_t done, std::uint64_t refused, double seconds,
                                              std::uint64_t read, std::uint64_t all);

}  // namespace lode::cli
