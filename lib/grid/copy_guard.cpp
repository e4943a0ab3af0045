#include "grid/copy_guard.hpp"

#include <algorithm>
#include <numeric>

namespace lode {
namespace {

// A table of pairs for up to this many letters has a million entries; larger alphabets are so large that one
// letter tells enough.
constexpr std::size_t most_letters_in_pairs = 1024;

}  // namespace

// Sorted by key, by counting.
void CopyGuard::Table::build(std::size_t letters, std::span<const Use> uses, std::span<const Letter> here,
                             std::span<const Letter> there) {
    stride_ = letters <= most_letters_in_pairs ? letters : 1;
    const auto key = [&](std::size_t at) { return here[at] * stride_ + (stride_ > 1 ? there[at] : 0); };
    starts_.assign(letters * stride_ + 1, 0);
    for (std::size_t at = 0; at < uses.size(); ++at) ++starts_[key(at) + 1];
    for (std::size_t at = 1; at < starts_.size(); ++at) starts_[at] += starts_[at - 1];
    uses_.resize(uses.size());
    auto next = starts_;
    for (std::size_t at = 0; at < uses.size(); ++at) uses_[next[key(at)]++] = uses[at];
}

CopyGuard::CopyGuard(std::span<const Letters> words, Letters seen_as) : seen_as_(std::move(seen_as)) {
    std::size_t longest = 0;
    for (const Letters& word : words) {
        words_.push_back(
            {static_cast<std::uint32_t>(letters_.size()), static_cast<std::uint32_t>(word.size())});
        letters_.insert(letters_.end(), word.begin(), word.end());
        longest = std::max(longest, word.size());
    }
    index(longest);
}

CopyGuard CopyGuard::up_to(std::size_t letters) const {
    CopyGuard shorter = *this;
    shorter.index(letters);
    return shorter;
}

void CopyGuard::index(std::size_t longest) {
    struct Uses {
        std::vector<Use> uses;
        Letters here;
        Letters there;
    };
    Uses not_last;
    Uses last;
    letter_count_ = 0;
    for (std::uint32_t word = 0; word < words_.size(); ++word) {
        const auto [start, count] = words_[word];
        if (count > longest) continue;
        const Letter* const letters = letters_.data() + start;
        for (std::uint32_t at = 0; at < count; ++at) {
            letter_count_ = std::max(letter_count_, letters[at] + std::size_t{1});
            const bool is_last = at + 1 == count;
            Uses& kind = is_last ? last : not_last;
            kind.uses.push_back({word, at});
            kind.here.push_back(letters[at]);
            kind.there.push_back(is_last ? letters[at - 1] : letters[at + 1]);
        }
    }
    not_last_.build(letter_count_, not_last.uses, not_last.here, not_last.there);
    last_.build(letter_count_, last.uses, last.here, last.there);
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

CopyGuard exact_guard(std::span<const Letters> words, std::size_t letters) {
    Letters itself(letters);
    std::iota(itself.begin(), itself.end(), Letter{0});
    return CopyGuard(words, std::move(itself));
}

}  // namespace lode
