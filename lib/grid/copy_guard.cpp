#include "grid/copy_guard.hpp"

#include <bit>
#include <numeric>

namespace lode {

CopyGuard::Tail::Tail(std::size_t letters, std::vector<Ending> endings)
    : mask_((Key{1} << (static_cast<int>(letters) * bits_per_code)) - 1) {
    // So many bits an ending keep the set nearly empty; above a million it would fall out of the caches.
    constexpr std::size_t bits_per_ending = 32;
    constexpr std::size_t least_bits = 1 << 10;
    constexpr std::size_t most_bits = 1 << 20;
    const std::size_t bits =
        std::bit_ceil(std::clamp(bits_per_ending * endings.size(), least_bits, most_bits));
    shift_ = 32 - std::countr_zero(bits);
    bits_.assign(bits / 64, 0);
    starts_.assign((bits >> bits_per_slot) + 1, 0);
    for (const Ending& ending : endings) {
        const std::uint32_t at = place(ending.key);
        bits_[at / 64] |= std::uint64_t{1} << (at % 64);
        ++starts_[(at >> bits_per_slot) + 1];
    }
    std::partial_sum(starts_.begin(), starts_.end(), starts_.begin());
    endings_.resize(endings.size());
    auto next = starts_;
    for (const Ending& ending : endings) endings_[next[place(ending.key) >> bits_per_slot]++] = ending;
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
    constexpr std::uint32_t codes = (1u << bits_per_code) - 1;
    codes_.assign(seen_as_.size(), no_code);
    tails_.clear();
    longest_ = 0;
    // Codes are given out as letters come up in words; with many letters some share one.
    std::vector<std::uint8_t> code_of;
    std::uint32_t letters_met = 0;
    const auto code_for = [&](Letter letter) -> std::uint32_t {
        if (letter >= code_of.size()) code_of.resize(letter + std::size_t{1}, no_code);
        if (code_of[letter] == no_code)
            code_of[letter] = static_cast<std::uint8_t>(1 + letters_met++ % codes);
        return code_of[letter];
    };
    std::array<std::vector<Ending>, most_in_tail + 1> endings;
    for (std::uint32_t word = 0; word < words_.size(); ++word) {
        const auto [start, count] = words_[word];
        if (count > longest) continue;
        longest_ = std::max<std::size_t>(longest_, count);
        const std::size_t in_tail = std::min<std::size_t>(count, most_in_tail);
        const Letter* const letters = letters_.data() + start;
        for (std::uint32_t at = 0; at < count; ++at) (void)code_for(letters[at]);
        Key last = 0;
        Key first = 0;
        for (std::size_t at = in_tail; at-- > 0;) {
            last = next(last, code_for(letters[count - 1 - at]));
            first = next(first, code_for(letters[at]));
        }
        endings[in_tail].push_back({last, word, false});
        endings[in_tail].push_back({first, word, true});
    }
    for (std::size_t letter = 0; letter < seen_as_.size(); ++letter)
        if (seen_as_[letter] < code_of.size()) codes_[letter] = code_of[seen_as_[letter]];
    for (std::size_t letters = 1; letters <= most_in_tail; ++letters)
        if (!endings[letters].empty()) tails_.emplace_back(letters, std::move(endings[letters]));
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
