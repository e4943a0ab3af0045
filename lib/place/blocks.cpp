#include "place/blocks.hpp"

#include <bit>

namespace lode {
namespace {

// The bodies stand once; what is compiled for a machine takes them in whole.
[[gnu::always_inline]] inline void meet_body(Block* to, const Block* a, const Block* b, std::size_t count) {
    for (std::size_t at = 0; at < count; ++at) to[at] = a[at] & b[at];
}

[[gnu::always_inline]] inline void join_body(Block* to, const Block* other, std::size_t count) {
    for (std::size_t at = 0; at < count; ++at) to[at] |= other[at];
}

[[gnu::always_inline]] inline void count_runs_body(const Block* set, const BlockRun* runs,
                                                   std::span<const std::uint32_t> which,
                                                   std::uint32_t* counts) {
    for (std::size_t at = 0; at < which.size(); ++at) {
        const BlockRun run = runs[which[at]];
        int bits = 0;
        for (std::uint32_t block = run.first; block < run.first + run.count; ++block)
            bits += std::popcount(set[block]);
        counts[at] = static_cast<std::uint32_t>(bits);
    }
}

void meet(Block* to, const Block* a, const Block* b, std::size_t count) {
    meet_body(to, a, b, count);
}
void join(Block* to, const Block* other, std::size_t count) {
    join_body(to, other, count);
}
void count_runs(const Block* set, const BlockRun* runs, std::span<const std::uint32_t> which,
                std::uint32_t* counts) {
    count_runs_body(set, runs, which, counts);
}
constexpr BlockOperations plain{meet, join, count_runs};

#if defined(__x86_64__)
[[gnu::target("avx2,popcnt")]] void meet_avx2(Block* to, const Block* a, const Block* b, std::size_t count) {
    meet_body(to, a, b, count);
}
[[gnu::target("avx2,popcnt")]] void join_avx2(Block* to, const Block* other, std::size_t count) {
    join_body(to, other, count);
}
[[gnu::target("avx2,popcnt")]] void count_runs_avx2(const Block* set, const BlockRun* runs,
                                                    std::span<const std::uint32_t> which,
                                                    std::uint32_t* counts) {
    count_runs_body(set, runs, which, counts);
}
constexpr BlockOperations avx2{meet_avx2, join_avx2, count_runs_avx2};
#endif

}  // namespace

const BlockOperations& block_operations() {
#if defined(__x86_64__)
    if (__builtin_cpu_supports("avx2") && __builtin_cpu_supports("popcnt")) return avx2;
#endif
    return plain;
}

}  // namespace lode
