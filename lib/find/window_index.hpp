#pragma once
// The words of a list by a short window of each: a few neighbouring letters that tell where the word may
// stand.
//
// Of every word one window is chosen and looked for along each axis, as the word reads and as it reads
// backward. Any part of the word will do, so a rare one is taken: by a greedy choice, shortest words first,
// that weighs what a window adds to what the sets of pairs let through, and how often its letters come, both
// judged by the letters of the list itself. A window that passes the sets is looked up in a bitmap of
// windows; where it stands there, the codes beside it must be those of a word before that word is compared.
// Windows are four letters. The words of two and three letters have an index of their own, with windows of
// three, in which the third letter of a word of two is any.
//
// Filters in vector registers before an exact comparison are known from searches of text for a few strings
// (Hyperscan's FDR: Wang et al., NSDI 2019, from memory). Sets of pairs along several axes and the choice of
// the window are this project's own. Judged by find_test, search_test and oracles/vectorscan_test.

#include <cstdint>
#include <memory_resource>
#include <span>
#include <vector>

#include "find/sought_words.hpp"
#include "find/window_filter.hpp"

namespace lode {

// Letters of a word that are compared by codes. Of a longer one the rest is compared in the grid itself.
inline constexpr std::size_t key_length = 32;

// The two codes that follow a window along the axis and the two that precede it, nearest first, a byte each.
[[nodiscard]] inline std::uint32_t codes_beside(const LetterCode* window, std::ptrdiff_t width,
                                                std::ptrdiff_t step) {
    return window[width * step] | std::uint32_t{window[(width + 1) * step]} << 8 |
           std::uint32_t{window[-step]} << 16 | std::uint32_t{window[-2 * step]} << 24;
}

// A word to be compared where its window is met and the codes beside the window are the word's, as far as the
// word goes. What is asked of it is here, not with the words, which are far away in memory.
struct WindowedWord {
    std::uint32_t word;
    std::uint8_t window;  // its first letter's place in the word
    std::uint8_t length;  // of the key
    enum Trait : std::uint16_t {
        reversed = 1,    // the window was met backward
        palindrome = 2,  // the word is one
        decided = 4,     // where window and codes beside it are the word's, so is the key
        unsure = 8,      // where the key stands, the letters themselves must be compared
    };
    std::uint16_t traits;
    std::uint32_t beside = 0;
    std::uint32_t beside_mask = 0;

    [[nodiscard]] bool is(Trait trait) const { return (traits & trait) != 0; }
    [[nodiscard]] bool fits(std::uint32_t codes) const { return ((codes ^ beside) & beside_mask) == 0; }
};
static_assert(sizeof(WindowedWord) == 16);

class WindowIndex {
  public:
    // `width` is how many letters a window has: 4, for the words of four letters and more, or 3, for those of
    // two and three.
    WindowIndex(const SoughtWords& words, std::size_t width);
    WindowIndex(const WindowIndex&) = delete;
    WindowIndex& operator=(const WindowIndex&) = delete;

    [[nodiscard]] bool empty() const { return words_.empty(); }
    [[nodiscard]] std::size_t width() const { return width_; }
    [[nodiscard]] const WindowFilter& filter() const { return filter_; }

    [[nodiscard]] const WindowBits& bits() const { return bits_; }

    // The words of a slot, by its rank: from `first` to that of the next. Along the axis, the window is
    // followed and preceded by one of these codes, a bit each, wherever one of the words stands.
    struct Slot {
        std::uint32_t first;
        std::uint32_t following = 0;
        std::uint32_t preceding = 0;
    };
    [[nodiscard]] const Slot& slot(std::uint32_t rank) const { return slots_[rank]; }
    // Behind the last there are some that mean nothing, to be called from memory ahead of time.
    static constexpr std::uint32_t words_behind = 4;
    [[nodiscard]] const WindowedWord& word(std::uint32_t at) const { return words_[at]; }

  private:
    struct Gathered {
        std::uint32_t slot;
        WindowedWord word;
    };
    void add_long(const LetterCode* codes, std::size_t window, WindowedWord entry,
                  std::pmr::vector<Gathered>& gathered);
    void add_short(const LetterCode* codes, WindowedWord entry, std::pmr::vector<Gathered>& gathered);
    void add(std::uint32_t window, const WindowedWord& entry, std::pmr::vector<Gathered>& gathered);
    void arrange(std::span<Gathered> gathered);

    std::size_t width_;
    WindowFilter filter_;
    WindowBits bits_;
    std::vector<std::uint64_t> bitmap_;
    std::vector<std::uint32_t> before_;
    std::vector<Slot> slots_;          // by rank, and one that is the end
    std::vector<WindowedWord> words_;  // by rank
};

}  // namespace lode
