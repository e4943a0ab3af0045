#include "fill/letter_draw.hpp"

#include <numeric>

namespace lode {

LetterDraw::LetterDraw(const std::vector<std::uint32_t>& weights)
    : height_(std::accumulate(weights.begin(), weights.end(), 0u)) {
    std::vector<std::uint64_t> left;  // of each column's letter: what has found no room yet
    columns_.reserve(weights.size());
    left.reserve(weights.size());
    for (std::size_t letter = 0; letter < weights.size(); ++letter) {
        if (weights[letter] == 0) continue;
        const auto itself = static_cast<Letter>(letter);
        columns_.push_back({height_, itself, itself});
        left.push_back(weights[letter]);
    }
    std::vector<std::size_t> low;
    std::vector<std::size_t> high;
    low.reserve(left.size());
    high.reserve(left.size());
    for (std::size_t at = 0; at < left.size(); ++at) {
        left[at] *= left.size();
        (left[at] < height_ ? low : high).push_back(at);
    }
    while (!low.empty() && !high.empty()) {
        const std::size_t filled = low.back();
        const std::size_t from = high.back();
        low.pop_back();
        columns_[filled].own = static_cast<std::uint32_t>(left[filled]);
        columns_[filled].alias = columns_[from].letter;
        left[from] -= height_ - left[filled];
        if (left[from] >= height_) continue;
        high.pop_back();
        low.push_back(from);
    }
}

}  // namespace lode
