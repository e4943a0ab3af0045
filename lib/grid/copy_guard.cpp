#include "grid/copy_guard.hpp"

#include <bit>
#include <limits>
#include <numeric>

namespace lode {

CopyGuard::Windows::Windows(std::size_t letters, const std::vector<Use>& uses)
    : mask_((Key{1} << (static_cast<int>(letters) * bits_per_code)) - 1) {
    // So many bits a use keep the set nearly empty; above a million it would fall out of the caches.
    constexpr std::size_t bits_per_use = 32;
    constexpr std::size_t least_bits = 1 << 10;
    constexpr std::size_t most_bits = 1 << 20;
    const std::size_t bits = std::bit_ceil(std::clamp(bits_per_use * uses.size(), least_bits, most_bits));
    shift_ = 32 - std::countr_zero(bits);
    bits_.assign(bits / 64, 0);
    starts_.assign((bits >> bits_per_slot) + 1, 0);
    for (const Use& use : uses) {
        const std::uint32_t at = place(use.key);
        bits_[at / 64] |= std::uint64_t{1} << (at % 64);
        ++starts_[(at >> bits_per_slot) + 1];
    }
    std::partial_sum(starts_.begin(), starts_.end(), starts_.begin());
    uses_.resize(uses.size());
    auto next = starts_;
    for (const Use& use : uses) uses_[next[place(use.key) >> bits_per_slot]++] = use;
}

CopyGuard::CopyGuard(std::span<const Letters> words, Letters seen_as) : seen_as_(std::move(seen_as)) {
    std::size_t letters = 0;
    for (const Letters& word : words) letters += word.size();
    letters_.reserve(letters);
    words_.reserve(words.size());
    for (const Letters& word : words) {
        words_.push_back(
            {static_cast<std::uint32_t>(letters_.size()), static_cast<std::uint32_t>(word.size())});
        letters_.insert(letters_.end(), word.begin(), word.end());
    }
    index();
}

CopyGuard CopyGuard::up_to(std::size_t letters) const {
    CopyGuard shorter = *this;
    for (Run& word : shorter.words_) word.wanted = word.wanted && word.count <= letters;
    shorter.index();
    return shorter;
}

CopyGuard CopyGuard::only(std::span<const std::uint32_t> words) const {
    CopyGuard some = *this;
    for (Run& word : some.words_) word.wanted = false;
    for (const std::uint32_t word : words) some.words_[word].wanted = words_[word].wanted;
    some.index();
    return some;
}

// The codes say nothing of the grid's letters, and nor do the windows.
CopyGuard CopyGuard::seen_as(Letters letters) const {
    CopyGuard same = *this;
    same.seen_as_ = std::move(letters);
    same.give_codes();
    return same;
}

void CopyGuard::give_codes() {
    codes_.assign(seen_as_.size(), no_code);
    for (std::size_t letter = 0; letter < seen_as_.size(); ++letter)
        if (seen_as_[letter] < code_of_.size()) codes_[letter] = code_of_[seen_as_[letter]];
}

void CopyGuard::index() {
    constexpr std::uint32_t codes = (1u << bits_per_code) - 1;
    // Codes are given out as letters come up in words; with many letters some share one.
    std::vector<std::uint8_t>& code_of = code_of_;
    code_of.clear();
    std::uint32_t letters_met = 0;
    longest_ = 0;
    for (const Run& word : words_) {
        if (!word.wanted) continue;
        longest_ = std::max<std::size_t>(longest_, word.count);
        for (std::uint32_t at = word.first; at < word.first + word.count; ++at) {
            const Letter letter = letters_[at];
            if (letter >= code_of.size()) code_of.resize(letter + std::size_t{1}, no_code);
            if (code_of[letter] == no_code)
                code_of[letter] = static_cast<std::uint8_t>(1 + letters_met++ % codes);
        }
    }
    give_codes();
    windows_.clear();
    if (longest_ == 0) return;

    // Of several thousand words, four letters in a row are too often some word's.
    constexpr std::size_t many_words = 4096;
    const std::size_t most = words_.size() < many_words ? most_in_window - 1 : most_in_window;
    // How many words have a window, about: windows are told apart by a number of so many bits.
    const std::size_t slots = std::bit_ceil(std::clamp<std::size_t>(2 * letters_.size(), 1 << 6, 1 << 18));
    const int count_bits = std::countr_zero(slots);
    std::vector<std::uint32_t> counts(slots, 0);
    const auto count_of = [&](Key key) -> std::uint32_t& {
        return counts[key * 0x9E37'79B1u >> (32 - count_bits)];
    };
    // Calls visit(the letter behind the window, the window read forward, and backward).
    const auto each_window = [&](const Run& word, auto&& visit) {
        const auto in_window = static_cast<std::uint32_t>(std::min<std::size_t>(word.count, most));
        for (std::uint32_t end = in_window; end <= word.count; ++end) {
            Key forward = 0;
            Key backward = 0;
            for (std::uint32_t at = 0; at < in_window; ++at) {
                forward = next(forward, code_of[letters_[word.first + end - in_window + at]]);
                backward = next(backward, code_of[letters_[word.first + end - 1 - at]]);
            }
            visit(end, forward, backward);
        }
    };
    for (const Run& word : words_)
        if (word.wanted)
            each_window(word, [&](std::uint32_t, Key forward, Key backward) {
                ++count_of(forward);
                ++count_of(backward);
            });
    std::array<std::vector<Use>, most_in_window + 1> uses;
    uses[most].reserve(2 * words_.size());
    for (std::uint32_t number = 0; number < words_.size(); ++number) {
        const Run& word = words_[number];
        if (!word.wanted) continue;
        const auto in_window = static_cast<std::uint32_t>(std::min<std::size_t>(word.count, most));
        Use rarest{};
        Use rarest_turned{};
        std::uint32_t fewest = std::numeric_limits<std::uint32_t>::max();
        each_window(word, [&](std::uint32_t end, Key forward, Key backward) {
            const std::uint32_t shared = count_of(forward) + count_of(backward);
            if (shared >= fewest) return;
            fewest = shared;
            rarest = {forward, number, word.count - end, end - 1, false};
            rarest_turned = {backward, number, end - in_window, word.count - 1 - (end - in_window), true};
        });
        uses[in_window].push_back(rarest);
        uses[in_window].push_back(rarest_turned);
    }
    for (std::size_t letters = 1; letters <= most_in_window; ++letters)
        if (!uses[letters].empty()) windows_.emplace_back(letters, uses[letters]);
}

bool CopyGuard::stands(const Grid& grid, std::size_t word, const Placement& copy) const {
    const auto [first, direction] = copy;
    const std::uint32_t start = words_[word].first;
    const std::uint32_t count = words_[word].count;
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
