#include "find/window_index.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <limits>
#include <memory_resource>

namespace lode {
namespace {

// The window may begin so far into a word that its four letters lie in the key.
constexpr std::size_t last_window = key_length - 4;

// Of a set of pairs, how much of a grid passes it, in parts of 65,536.
struct WeighedPairs {
    PairSet& pairs;
    std::uint64_t weight = 0;

    [[nodiscard]] std::uint64_t added_by(LetterCode a, LetterCode b, std::uint64_t pair_weight) const {
        return pairs.contains(a, b) ? 0 : pair_weight;
    }
    void insert(LetterCode a, LetterCode b, std::uint64_t pair_weight) {
        weight += added_by(a, b, pair_weight);
        pairs.insert(a, b);
    }
};

class WindowChoice {
  public:
    WindowChoice(const SoughtWords& words, std::size_t count, WindowFilter& filter)
        : is_short_(count <= 32), first_{filter.first}, second_{filter.second}, third_{filter.third} {
        const auto tally = words.tally();
        std::uint64_t total = 0;
        for (const auto letters : tally) total += letters;
        const std::uint64_t part = (std::uint64_t{1} << 32) / std::max<std::uint64_t>(total, 1);
        for (std::size_t code = 0; code < code_count; ++code) share_[code] = 1 + (tally[code] * part >> 24);
    }

    // The best window of a word of four letters or more, entered into the sets as it reads both ways.
    std::size_t choose(const LetterCode* codes, std::size_t length) {
        std::size_t best = 0;
        std::uint64_t least = std::numeric_limits<std::uint64_t>::max();
        for (std::size_t at = 0; at + 4 <= length && at <= last_window; ++at) {
            const std::uint64_t price =
                is_short_ ? weight(codes[at], codes[at + 1]) + weight(codes[at + 2], codes[at + 3])
                          : cost(codes, at, length);
            if (price < least) {
                least = price;
                best = at;
            }
        }
        const LetterCode* const c = codes + best;
        const std::uint64_t front = weight(c[0], c[1]), middle = weight(c[1], c[2]),
                            back = weight(c[2], c[3]);
        first_.insert(c[0], c[1], front);
        first_.insert(c[3], c[2], back);
        second_.insert(c[1], c[2], middle);
        second_.insert(c[2], c[1], middle);
        third_.insert(c[2], c[3], back);
        third_.insert(c[1], c[0], front);
        return best;
    }

  private:
    [[nodiscard]] std::uint64_t weight(LetterCode a, LetterCode b) const { return share_[a] * share_[b]; }

    // What the window lets pass in addition (in a short list, where hardly two words share a pair, the sum of
    // its pairs' weights says as much): all that passes both sets is looked up in the bitmap; what is found
    // there is looked up again, which costs some eight times as much; and where the letters beside it fit,
    // the word is compared, which costs as much again.
    [[nodiscard]] std::uint64_t cost(const LetterCode* codes, std::size_t at, std::size_t length) const {
        constexpr std::uint64_t looked_up = 8, floor = 4096;
        const LetterCode* const c = codes + at;
        const std::uint64_t front = weight(c[0], c[1]), back = weight(c[2], c[3]);
        const std::uint64_t first = first_.added_by(c[0], c[1], front) + first_.added_by(c[3], c[2], back);
        const std::uint64_t third = third_.added_by(c[2], c[3], back) + third_.added_by(c[1], c[0], front);
        const std::uint64_t beside = (at > 0 ? share_[c[-1]] : 256) * (at + 4 < length ? share_[c[4]] : 256);
        return first * (third_.weight + floor) + third * (first_.weight + floor) +
               2 * looked_up * front * back * (65'536 + beside) / 65'536;
    }

    bool is_short_;
    std::array<std::uint64_t, code_count> share_{};  // of the letters, in parts of 256
    WeighedPairs first_, second_, third_;
};

std::uint32_t window_code(LetterCode a, LetterCode b, LetterCode c, LetterCode d) {
    return a | std::uint32_t{b} << 5 | std::uint32_t{c} << 10 | std::uint32_t{d} << 15;
}

// The words of these lengths, shorter ones first: they have the fewest windows to choose from.
std::pmr::vector<std::uint32_t> by_length(const SoughtWords& words, std::size_t least, std::size_t most,
                                          std::pmr::memory_resource* room) {
    std::array<std::uint32_t, key_length + 2> first{};
    const auto kind = [&](std::size_t word) { return std::min(words.length(word), key_length); };
    const auto is_taken = [&](std::size_t word) {
        return words.length(word) >= least && words.length(word) <= most;
    };
    for (std::size_t word = 0; word < words.size(); ++word)
        if (is_taken(word)) ++first[kind(word) + 1];
    for (std::size_t length = 1; length < first.size(); ++length) first[length] += first[length - 1];
    std::pmr::vector<std::uint32_t> order(first.back(), room);
    for (std::size_t word = 0; word < words.size(); ++word)
        if (is_taken(word)) order[first[kind(word)]++] = static_cast<std::uint32_t>(word);
    return order;
}

// As the word reads.
void note_codes_beside(const LetterCode* codes, std::size_t width, WindowedWord& word) {
    const auto note = [&](std::size_t letter, unsigned byte) {
        word.beside |= std::uint32_t{codes[letter]} << 8 * byte;
        word.beside_mask |= std::uint32_t{0xFF} << 8 * byte;
    };
    const std::size_t window = word.window, behind = window + width;
    if (behind < word.length) note(behind, 0);
    if (behind + 1 < word.length) note(behind + 1, 1);
    if (window > 0) note(window - 1, 2);
    if (window > 1) note(window - 2, 3);
}

}  // namespace

WindowIndex::WindowIndex(const SoughtWords& words, std::size_t width) : width_(width) {
    if (width == 4 ? words.longest() < 4 : words.shortest() > 3) return;
    // What is needed only here, for a short list on the stack.
    std::array<std::byte, 4096> near;
    std::pmr::monotonic_buffer_resource room(near.data(), near.size());
    const auto order =
        width == 4 ? by_length(words, 4, words.longest(), &room) : by_length(words, 2, 3, &room);
    if (order.empty()) return;
    // Some 24 bits a window, so that few slots are used by chance; as many as there are windows at the most,
    // which then have a slot each.
    std::size_t size =
        width == 3 ? std::size_t{1} << 15 : std::bit_ceil(std::max<std::size_t>(order.size(), 20) * 48);
    size = std::min(size, std::size_t{1} << 5 * width);
    if (size < std::size_t{1} << 5 * width) {
        bits_.multiplier =
            0x9E37'79B1;  // the golden ratio's fraction (Knuth, The Art of Computer Programming 3, 6.4)
        bits_.shift = static_cast<unsigned>(32 - std::countr_zero(size));
    }
    bits_.fourth = width == 4 ? 31 : 0;
    bitmap_.assign((size + 63) / 64, 0);
    std::pmr::vector<Gathered> gathered(&room);
    gathered.reserve(order.size() * 2);

    WindowChoice choice(words, order.size(), filter_);
    for (const std::uint32_t word : order) {
        const LetterCode* const codes = words.codes(word);
        const std::size_t length = words.length(word);
        WindowedWord entry{word, 0, static_cast<std::uint8_t>(std::min(length, key_length)), 0};
        if (words.is_palindrome(word)) entry.traits |= WindowedWord::palindrome;
        if (length > key_length || !words.is_exact()) entry.traits |= WindowedWord::unsure;
        if (width == 4)
            add_long(codes, choice.choose(codes, length), entry, gathered);
        else
            add_short(codes, entry, gathered);
    }
    arrange(gathered);
}

void WindowIndex::add_long(const LetterCode* codes, std::size_t window, WindowedWord entry,
                           std::pmr::vector<Gathered>& gathered) {
    entry.window = static_cast<std::uint8_t>(window);
    note_codes_beside(codes, 4, entry);
    if (bits_.shift == 0 && window <= 2 && entry.length <= window + 6) entry.traits |= WindowedWord::decided;
    const LetterCode* const c = codes + window;
    add(window_code(c[0], c[1], c[2], c[3]), entry, gathered);
    if (entry.is(WindowedWord::palindrome)) return;
    entry.traits |= WindowedWord::reversed;
    entry.beside = std::rotl(entry.beside, 16);
    entry.beside_mask = std::rotl(entry.beside_mask, 16);
    add(window_code(c[3], c[2], c[1], c[0]), entry, gathered);
}

void WindowIndex::add_short(const LetterCode* codes, WindowedWord entry,
                            std::pmr::vector<Gathered>& gathered) {
    entry.traits |= WindowedWord::decided;
    const bool has_third = entry.length == 3;
    const auto add_way = [&](LetterCode a, LetterCode b, LetterCode c) {
        filter_.first.insert(a, b);
        for (LetterCode third = 0; third < code_count; ++third) {
            if (has_third && third != c) continue;
            filter_.second.insert(b, third);
            filter_.third.insert_all(third);
            add(window_code(a, b, third, 0), entry, gathered);
        }
    };
    add_way(codes[0], codes[1], has_third ? codes[2] : LetterCode{0});
    if (entry.is(WindowedWord::palindrome)) return;
    entry.traits |= WindowedWord::reversed;
    if (has_third)
        add_way(codes[2], codes[1], codes[0]);
    else
        add_way(codes[1], codes[0], 0);
}

void WindowIndex::add(std::uint32_t window, const WindowedWord& entry, std::pmr::vector<Gathered>& gathered) {
    const std::uint32_t slot = bits_.slot(window);
    bitmap_[slot / 64] |= std::uint64_t{1} << slot % 64;
    gathered.push_back({slot, entry});
}

// Sorts the words by slot, by counting.
void WindowIndex::arrange(std::span<Gathered> gathered) {
    before_.resize(bitmap_.size());
    std::uint32_t used = 0;
    for (std::size_t at = 0; at < bitmap_.size(); ++at) {
        before_[at] = used;
        // Most are 0, and where the processor's own instruction may not be used, counting takes a call.
        if (bitmap_[at] != 0) used += static_cast<std::uint32_t>(std::popcount(bitmap_[at]));
    }
    bits_.bits = bitmap_.data();
    bits_.before = before_.data();

    slots_.resize(std::size_t{used} + 1);
    for (Gathered& one : gathered) ++slots_[one.slot = bits_.rank(one.slot)].first;
    std::uint32_t end = 0;
    for (Slot& slot : slots_) slot.first = end += slot.first;
    words_.resize(gathered.size() + words_behind);
    for (std::size_t at = gathered.size(); at-- > 0;) {
        const WindowedWord& word = gathered[at].word;
        Slot& slot = slots_[gathered[at].slot];
        constexpr std::uint32_t any = ~std::uint32_t{0};
        slot.following |= word.beside_mask & 0xFF ? 1u << (word.beside & 31) : any;
        slot.preceding |= word.beside_mask & 0xFF'0000 ? 1u << (word.beside >> 16 & 31) : any;
        words_[--slot.first] = word;
    }
}

}  // namespace lode
