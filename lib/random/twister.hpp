#pragma once
// The Mersenne twister of 64 bits: Matsumoto and Nishimura, "Mersenne Twister", ACM TOMACS 8(1), 1998, in the
// form of Nishimura, "Tables of 64-bit Mersenne Twisters", ACM TOMACS 10(4), 2000, which the C++ standard
// fixes as std::mt19937_64 ([rand.eng.mers], [rand.predef]). The same numbers without a branch in the step:
// whether a word is odd is a coin toss, and a processor that guesses it wrong waits longer than the whole
// step takes. A puzzle's seed begins with such a step, and there are tens of thousands of puzzles a second.
// Judged by tests/random_test.cpp, number by number against the standard library's.

#include <array>
#include <cstddef>
#include <cstdint>

namespace lode {

class Twister {
  public:
    explicit Twister(std::uint64_t seed) {
        words_[0] = seed;
        for (std::size_t at = 1; at < size; ++at)
            words_[at] = 6364136223846793005u * (words_[at - 1] ^ words_[at - 1] >> 62) + at;
    }

    std::uint64_t operator()() {
        if (next_ == size) step();
        std::uint64_t word = words_[next_++];
        word ^= word >> 29 & 0x5555555555555555u;
        word ^= word << 17 & 0x71D67FFFEDA60000u;
        word ^= word << 37 & 0xFFF7EEE000000000u;
        return word ^ word >> 43;
    }

  private:
    static constexpr std::size_t size = 312;
    static constexpr std::size_t apart = 156;

    // The upper 33 bits of a word and the lower 31 of the one behind it, times the matrix.
    [[nodiscard]] static std::uint64_t twisted(std::uint64_t word, std::uint64_t behind) {
        constexpr std::uint64_t lower = 0x7FFFFFFFu;
        const std::uint64_t both = (word & ~lower) | (behind & lower);
        return both >> 1 ^ ((0 - (both & 1)) & 0xB5026F5AA96619E9u);
    }
    void step() {
        for (std::size_t at = 0; at < size - apart; ++at)
            words_[at] = words_[at + apart] ^ twisted(words_[at], words_[at + 1]);
        for (std::size_t at = size - apart; at < size - 1; ++at)
            words_[at] = words_[at - (size - apart)] ^ twisted(words_[at], words_[at + 1]);
        words_[size - 1] = words_[apart - 1] ^ twisted(words_[size - 1], words_[0]);
        next_ = 0;
    }

    std::array<std::uint64_t, size> words_;
    std::size_t next_ = size;
};

}  // namespace lode
