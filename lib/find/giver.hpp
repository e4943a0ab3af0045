#pragma once
// The last step of a search: copies go to the caller, until it, the limit or a cancellation ends it.

#include <atomic>

#include <letterlode/find.hpp>

namespace lode {

class Giver {
  public:
    Giver(const Matcher::Found& found, const SearchRules& rules, int rows)
        : found_(found), rules_(rules), rows_(rows) {}

    // False where the search is to end.
    bool give(std::size_t word, const Copy& copy) {
        if (given_ == rules_.most) return false;
        ++given_;
        return found_(word, copy);
    }
    // Says that all copies which begin before the row were given. False where the search is to end.
    bool arrive_at(int row) {
        if (is_cancelled()) return false;
        if (rules_.control.progress && row > told_) rules_.control.progress(told_ = row, rows_);
        return true;
    }
    [[nodiscard]] bool is_cancelled() const {
        return rules_.control.cancel && rules_.control.cancel->load(std::memory_order_relaxed);
    }

  private:
    const Matcher::Found& found_;
    const SearchRules& rules_;
    std::size_t given_ = 0;
    int rows_;
    int told_ = 0;
};

}  // namespace lode
