#pragma once
// Sets of bits in blocks of 64, and the few operations on them that the searches spend their time in. Each is
// compiled twice, for any machine and for one with AVX2 and a population count; the results are the same.

#include <cstdint>
#include <span>

namespace lode {

using Block = std::uint64_t;

// A run of blocks: one word's part of a set.
struct BlockRun {
    std::uint32_t first = 0;
    std::uint32_t count = 0;
};

struct BlockOperations {
    // to = a & b
    void (*meet)(Block* to, const Block* a, const Block* b, std::size_t count);
    // to |= other
    void (*join)(Block* to, const Block* other, std::size_t count);
    // counts[i] = how many bits of the set lie in runs[which[i]]
    void (*count_runs)(const Block* set, const BlockRun* runs, std::span<const std::uint32_t> which,
                       std::uint32_t* counts);
};

// For the machine that it is called on.
[[nodiscard]] const BlockOperations& block_operations();

// Calls visit(bit) for every bit of the run that is set, bits counted from the start of the set.
template <class Visit>
void each_bit(const Block* set, BlockRun run, Visit&& visit) {
    for (std::uint32_t block = run.first; block < run.first + run.count; ++block)
        for (Block rest = set[block]; rest != 0; rest &= rest - 1)
            visit(block * 64 + static_cast<std::uint32_t>(__builtin_ctzll(rest)));
}

}  // namespace lode
