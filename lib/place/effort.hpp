#pragma once
// What a search may spend, counted in steps so that results repeat, and the caller's wish to hear of it or to
// stop it.

#include <cstdint>

#include "place/place.hpp"

namespace lode {

class Effort {
  public:
    // A flag besides the task's own, once it is set, cancels too.
    explicit Effort(const PlaceTask& task, const std::atomic<bool>* stop = nullptr)
        : task_(task), stop_(stop), limit_(task.effort) {
        plan_look();
    }

    // Lets it spend so many steps more from now on, whatever the task says.
    void allow(std::uint64_t steps) {
        limit_ = spent_ + steps;
        is_spent_ = false;
    }
    // Counts the steps, and says whether there was so much left. Never counts beyond what is allowed.
    [[nodiscard]] bool spend(std::uint64_t steps) {
        if (steps > limit_ - spent_ || cancelled_) {
            is_spent_ = true;
            return false;
        }
        spent_ += steps;
        if (spent_ >= next_look_) look_up();
        return !cancelled_;
    }
    // Counts what was spent, and looked up, elsewhere.
    void add(std::uint64_t steps) { spent_ += steps; }
    [[nodiscard]] std::uint64_t spent() const { return spent_; }
    [[nodiscard]] bool is_spent() const { return is_spent_ || cancelled_; }
    [[nodiscard]] bool cancelled() const { return cancelled_; }

  private:
    static constexpr std::uint64_t steps_between_looks = 1 << 14;

    void plan_look() { next_look_ = spent_ + steps_between_looks; }
    void look_up() {
        plan_look();
        if (task_.progress) task_.progress(spent_);
        const auto is_set = [](const std::atomic<bool>* flag) {
            return flag && flag->load(std::memory_order_relaxed);
        };
        cancelled_ = is_set(task_.cancel) || is_set(stop_);
    }

    const PlaceTask& task_;
    const std::atomic<bool>* stop_;
    std::uint64_t limit_;
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
