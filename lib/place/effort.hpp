#pragma once
// What a search may spend, counted in steps so that results repeat, and the caller's wish to hear of it or to
// stop it.

#include <cstdint>

#include "place/place.hpp"

namespace lode {

class Effort {
  public:
    explicit Effort(const PlaceTask& task) : task_(task) { plan_look(); }

    // Counts the steps, and says whether there was so much left. Never counts beyond the task's effort.
    [[nodiscard]] bool spend(std::uint64_t steps) {
        if (steps > task_.effort - spent_ || cancelled_) {
            is_spent_ = true;
            return false;
        }
        spent_ += steps;
        if (spent_ >= next_look_) look_up();
        return !cancelled_;
    }
    [[nodiscard]] std::uint64_t spent() const { return spent_; }
    [[nodiscard]] bool is_spent() const { return is_spent_ || cancelled_; }
    [[nodiscard]] bool cancelled() const { return cancelled_; }

  private:
    static constexpr std::uint64_t steps_between_looks = 1 << 14;

    void plan_look() { next_look_ = spent_ + steps_between_looks; }
    void look_up() {
        plan_look();
        if (task_.progress) task_.progress(spent_);
        cancelled_ = task_.cancel && task_.cancel->load(std::memory_order_relaxed);
    }

    const PlaceTask& task_;
    std::uint64_t spent_ = 0;
    std::uint64_t next_look_ = 0;
    bool is_spent_ = false;
    bool cancelled_ = false;
};

// How one of the searches came to an end.
enum class SearchEnd {
    placed,
    exhausted,  // everything was tried: there is no placement
    limit,      // of the call, or of the effort
};

}  // namespace lode
