#pragma once
// What getters hand out of lists and of texts that are written at their first call.

#include <cstddef>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

namespace lode::c {

// The element, or nothing beyond the list's end.
template <class T>
[[nodiscard]] const T* at(const std::vector<T>& list, std::size_t index) noexcept {
    return index < list.size() ? &list[index] : nullptr;
}

[[nodiscard]] inline const char* entry(const std::vector<std::string>& list, std::size_t index) noexcept {
    return index < list.size() ? list[index].c_str() : nullptr;
}

// A text that is written once and kept; any number of threads may ask for it.
class KeptText {
  public:
    template <class Write>
    [[nodiscard]] const char* get(const Write& write) const {
        const std::lock_guard lock(mutex_);
        if (!text_) text_ = write();
        return text_->c_str();
    }
    // Not while another thread asks.
    void forget() noexcept { text_.reset(); }

  private:
    mutable std::mutex mutex_;
    mutable std::optional<std::string> text_;
};

}  // namespace lode::c
