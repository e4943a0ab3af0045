#include "batch/batch_progress.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include <unistd.h>

namespace lode::cli {

std::string batch_progress_text(std::uint64_t done, std::uint64_t refused, double seconds, std::uint64_t read,
                                std::uint64_t all) {
    std::string text = std::to_string(done) + " done";
    if (refused > 0) text += ", " + std::to_string(refused) + " refused";
    const double rate = seconds > 0 ? static_cast<double>(done) / seconds : 0;
    if (rate >= 1) text += ", " + std::to_string(std::llround(rate)) + " a second";
    if (all == 0 || read == 0 || done == 0) return text;
    const double left = seconds * static_cast<double>(all - std::min(read, all)) / static_cast<double>(read);
    const auto whole = std::llround(left);
    return text + ", " +
           (whole < 100 ? std::to_string(whole) + " s" : std::to_string((whole + 30) / 60) + " min") +
           " left";
}

BatchProgress::BatchProgress(std::uint64_t all_bytes) : all_(all_bytes) {
    if (::isatty(STDERR_FILENO) == 1) teller_ = std::thread([this] { tell(); });
}

BatchProgress::~BatchProgress() {
    {
        const std::lock_guard lock(mutex_);
        is_ended_ = true;
    }
    ended_.notify_all();
    if (teller_.joinable()) teller_.join();
}

void BatchProgress::tell() {
    using namespace std::chrono_literals;
    const auto started = std::chrono::steady_clock::now();
    bool is_visible = false;
    std::unique_lock lock(mutex_);
    for (auto pause = 1'000ms; !ended_.wait_for(lock, pause, [&] { return is_ended_; }); pause = 200ms) {
        const std::chrono::duration<double> passed = std::chrono::steady_clock::now() - started;
        const auto text = batch_progress_text(done_, refused_, passed.count(), read_, all_);
        std::fprintf(stderr, "\r%s\033[K", text.c_str());
        std::fflush(stderr);
        is_visible = true;
    }
    if (is_visible) std::fputs("\r\033[K", stderr);
}

}  // namespace lode::cli
