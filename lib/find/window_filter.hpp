#pragma once
// The innermost loops of the finder, each compiled for several kinds of processor, of which the best is taken
// when the program runs. All give the same answers; the plain one says what they are.

#include <bit>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>
#include <vector>

#include <letterlode/text.hpp>

#include "find/sought_words.hpp"

namespace lode {

// A set of pairs of codes, 1,024 bits that fit two registers of 64 bytes: the pair (a, b) is bit b % 8 of
// byte b / 8 * 32 + a.
struct PairSet {
    std::uint8_t bytes[128] = {};

    void insert(LetterCode a, LetterCode b) {
        bytes[static_cast<std::size_t>(b >> 3) * 32 + a] |= static_cast<std::uint8_t>(1u << (b & 7));
    }
    void insert_all(LetterCode a) {
        for (std::size_t byte = a; byte < sizeof bytes; byte += 32) bytes[byte] = 0xFF;
    }
    [[nodiscard]] bool contains(LetterCode a, LetterCode b) const {
        return (bytes[static_cast<std::size_t>(b >> 3) * 32 + a] >> (b & 7) & 1) != 0;
    }
};

// Four codes in a line pass where each pair of neighbours is in its set.
struct WindowFilter {
    PairSet first;
    PairSet second;
    PairSet third;
};

// A bitmap of windows. A window's codes, 5 bits each and the first lowest, have a slot; several windows may
// share one.
struct WindowBits {
    std::uint32_t fourth = 31;  // 0 where windows are three letters
    std::uint32_t multiplier = 1;
    unsigned shift = 0;
    const std::uint64_t* bits = nullptr;  // by slot
    const std::uint32_t* before =
        nullptr;  // by 64 slots, how many of the slots before them are in the bitmap

    [[nodiscard]] std::uint32_t slot(std::uint32_t window) const { return window * multiplier >> shift; }
    [[nodiscard]] bool contains(std::uint32_t slot) const { return (bits[slot / 64] >> slot % 64 & 1) != 0; }
    // Of a slot in the bitmap: how many are before it.
    [[nodiscard]] std::uint32_t rank(std::uint32_t slot) const {
        const std::uint64_t lower = bits[slot / 64] & ((std::uint64_t{1} << slot % 64) - 1);
        return before[slot / 64] + static_cast<std::uint32_t>(std::popcount(lower));
    }
};

// Cells that are picked from at a time: what is noted of them stays in the nearest memory.
inline constexpr std::size_t picked_cells = 2048;

// Windows that were picked: where they begin, counted from the first cell, and the rank of their slots. There
// is room for what loops write beyond the last.
struct Picked {
    std::size_t count = 0;
    std::uint32_t place[picked_cells + 16];
    std::uint32_t rank[picked_cells + 16];
};

struct FindLoops {
    std::string_view name;

    // out[i] is the code of letters[i], i < count; letters beyond code_of have code 0. `readable` letters may
    // be read from `letters`, and as many codes be written to `out`: what is written after `count` means
    // nothing.
    void (*encode)(const Letter* letters, std::size_t count, std::size_t readable,
                   std::span<const LetterCode> code_of, LetterCode* out);

    // Of `count` cells, up to picked_cells: those where a window begins along each axis, of which one step is
    // steps[axis]: four cells that pass the filter and stand in the bitmap. Three steps and 64 cells beyond
    // the last may be read.
    void (*pick)(const LetterCode* cells, std::size_t count, std::span<const std::ptrdiff_t> steps,
                 const WindowFilter& filter, const WindowBits& bits, Picked* picked);
};

// The best for this machine.
[[nodiscard]] const FindLoops& find_loops();
// All that this machine can run, the best first and the plain ones last.
[[nodiscard]] std::vector<const FindLoops*> every_find_loops();

}  // namespace lode
