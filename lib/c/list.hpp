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

// What is made once and kept; any number of threads may ask for it.
template <class T>
class Kept {
  public:
    template <class Make>
    [[nodiscard]] const T& get(const Make& make) const {
        const std::lock_guard lock(mutex_);
        if (!kept_) kept_ = make();
        return *kept_;
    }
    // Not while another thread asks.
    void forget() noexcept { kept_.reset(); }

  private:
    mutable std::mutex mutex_;
    mutable std::optional<T> kept_;
};
using KeptText = Kept<std::string>;
using KeptCells = Kept<std::vector<const char*>>;

}  // namespace lode::c
