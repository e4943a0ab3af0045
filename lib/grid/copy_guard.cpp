#include "grid/copy_guard.hpp"

#include <algorithm>

namespace lode {

CopyGuard::CopyGuard(std::span<const Letters> words, Letters seen_as) : seen_as_(std::move(seen_as)) {
    Letter most = 0;
    for (const auto& word : words) {
        words_.push_back(
            {static_cast<std::uint32_t>(letters_.size()), static_cast<std::uint32_t>(word.size())});
        letters_.insert(letters_.end(), word.begin(), word.end());
        for (const Letter letter : word) most = std::max(most, letter);
    }
    // Uses sorted by letter, by counting.
    use_start_.assign(most + std::size_t{2}, 0);
    for (const Letter letter : letters_) ++use_start_[letter + std::size_t{1}];
    for (std::size_t letter = 1; letter < use_start_.size(); ++letter)
        use_start_[letter] += use_start_[letter - 1];
    uses_.resize(letters_.size());
    auto next = use_start_;
    for (std::uint32_t word = 0; word < words_.size(); ++word)
        for (std::uint32_t index = 0; index < words_[word].count; ++index)
            uses_[next[letters_[words_[word].first + index]]++] = {word, index};
}

bool CopyGuard::stands(const Grid& grid, std::uint32_t word, Cell first, Direction direction) const {
    const auto [start, count] = words_[word];
    if (!grid.inside(first) || !grid.inside(moved(first, direction, static_cast<int>(count) - 1)))
        return false;
    const Cell by = step(direction);
    const std::ptrdiff_t stride = std::ptrdiff_t{by.row} * grid.size().columns + by.column;
    const Letter* cell = grid.letters().data() + grid.index(first);
    for (std::uint32_t index = 0; index < count; ++index, cell += stride) {
        // Closed and empty cells have no entry in seen_as_.
        if (*cell >= seen_as_.size() || seen_as_[*cell] != letters_[start + index]) return false;
    }
    return true;
}

}  // namespace lode
