#include "place/nesting.hpp"

namespace lode {

Nesting::Nesting(const PlaceTask& task)
    : guard_(task.words_guard), words_(task.words.size()), by_inner_(task.nested) {
    if (by_inner_.empty()) return;
    std::stable_sort(by_inner_.begin(), by_inner_.end(),
                     [](const auto& a, const auto& b) { return a.inner < b.inner; });
    starts_.assign(guard_.count() + 1, 0);
    within_.resize(words_);
    for (const InnerCopy& copy : by_inner_) {
        ++starts_[copy.inner + 1];
        auto& inner = within_[copy.outer];
        if (inner.empty() || inner.back() != copy.inner) inner.push_back(copy.inner);
    }
    for (std::size_t at = 1; at < starts_.size(); ++at) starts_[at] += starts_[at - 1];
}

}  // namespace lode
