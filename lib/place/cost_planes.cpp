#include "place/cost_planes.hpp"

#include <algorithm>
#include <limits>

namespace lode {
namespace {

constexpr std::size_t at_once = 16;

// Vectors as gcc and clang have them: on a machine with narrower ones each stands for several.
typedef Cost Vector __attribute__((vector_size(at_once * sizeof(Cost))));
typedef Cost Unaligned __attribute__((vector_size(at_once * sizeof(Cost)), aligned(sizeof(Cost))));

using Sources = std::array<const Cost*, CostPlanes::most_letters_in_word>;

// The bodies stand once; what is compiled for a machine takes them in whole.
[[gnu::always_inline]] inline void sum_body(Cost* to, const Sources& from, std::size_t letters,
                                            std::size_t count, Cost* least) {
    auto* const sums = reinterpret_cast<Vector*>(to);
    auto* const lowest = reinterpret_cast<Vector*>(least);
    Vector low = *lowest;
    for (std::size_t at = 0; at < count; ++at) {
        Vector sum = *reinterpret_cast<const Unaligned*>(from[0] + at * at_once);
        for (std::size_t letter = 1; letter < letters; ++letter)
            sum += *reinterpret_cast<const Unaligned*>(from[letter] + at * at_once);
        sums[at] = sum;
        low = sum < low ? sum : low;
    }
    *lowest = low;
}

[[gnu::always_inline]] inline void count_body(const Cost* sums, std::size_t count, Cost least,
                                              std::uint32_t* counts) {
    Vector found[CostPlanes::levels] = {};
    const auto* const vectors = reinterpret_cast<const Vector*>(sums);
    for (std::size_t at = 0; at < count; ++at) {
        const Vector above = vectors[at] - least;
        for (int level = 0; level < CostPlanes::levels; ++level)
            found[level] -= static_cast<Vector>(above == static_cast<Cost>(level));
    }
    for (int level = 0; level < CostPlanes::levels; ++level)
        for (std::size_t lane = 0; lane < at_once; ++lane) counts[level] += found[level][lane];
}

[[gnu::always_inline]] inline std::uint32_t count_equal_body(const Cost* sums, std::size_t count, Cost cost) {
    Vector found = {};
    const auto* const vectors = reinterpret_cast<const Vector*>(sums);
    for (std::size_t at = 0; at < count; ++at) found -= static_cast<Vector>(vectors[at] == cost);
    std::uint32_t equal = 0;
    for (std::size_t lane = 0; lane < at_once; ++lane) equal += found[lane];
    return equal;
}

struct Operations {
    void (*sum)(Cost* to, const Sources& from, std::size_t letters, std::size_t count, Cost* least);
    void (*count)(const Cost* sums, std::size_t count, Cost least, std::uint32_t* counts);
    std::uint32_t (*count_equal)(const Cost* sums, std::size_t count, Cost cost);
};

void sum_plain(Cost* to, const Sources& from, std::size_t letters, std::size_t count, Cost* least) {
    sum_body(to, from, letters, count, least);
}
void count_plain(const Cost* sums, std::size_t count, Cost least, std::uint32_t* counts) {
    count_body(sums, count, least, counts);
}
std::uint32_t count_equal_plain(const Cost* sums, std::size_t count, Cost cost) {
    return count_equal_body(sums, count, cost);
}
constexpr Operations plain{sum_plain, count_plain, count_equal_plain};

#if defined(__x86_64__)
[[gnu::target("avx2")]] void sum_avx2(Cost* to, const Sources& from, std::size_t letters, std::size_t count,
                                      Cost* least) {
    sum_body(to, from, letters, count, least);
}
[[gnu::target("avx2")]] void count_avx2(const Cost* sums, std::size_t count, Cost least,
                                        std::uint32_t* counts) {
    count_body(sums, count, least, counts);
}
[[gnu::target("avx2")]] std::uint32_t count_equal_avx2(const Cost* sums, std::size_t count, Cost cost) {
    return count_equal_body(sums, count, cost);
}
constexpr Operations avx2{sum_avx2, count_avx2, count_equal_avx2};
#endif

const Operations& operations() {
#if defined(__x86_64__)
    static const bool has_avx2 = __builtin_cpu_supports("avx2");
    if (has_avx2) return avx2;
#endif
    return plain;
}

}  // namespace

CostPlanes::CostPlanes(Size size, std::size_t letters, int longest, Directions directions)
    : stride_(static_cast<std::size_t>(size.columns) + 1),
      border_(static_cast<std::size_t>(longest) * (stride_ + 1)),
      count_((static_cast<std::size_t>(size.rows) * stride_ + at_once - 1) / at_once) {
    for (const Direction direction : all_directions)
        if (directions.contains(direction)) directions_.push_back(direction);
    plane_ = 2 * border_ + count_ * at_once;
    planes_.assign(letters * plane_, out_of_grid);
    sums_.resize(directions_.size() * count_);
}

void CostPlanes::set_all(Cell cell, Cost cost) {
    for (std::size_t at = offset(cell); at < planes_.size(); at += plane_) planes_[at] = cost;
}

Cost CostPlanes::sum(std::span<const Letter> word) {
    Sixteen least;
    least.costs.fill(std::numeric_limits<Cost>::max());
    Sources from;
    for (std::size_t which = 0; which < directions_.size(); ++which) {
        std::ptrdiff_t shift = static_cast<std::ptrdiff_t>(border_);
        for (std::size_t letter = 0; letter < word.size(); ++letter) {
            from[letter] = planes_.data() + word[letter] * plane_ + shift;
            shift += step_of(directions_[which]);
        }
        operations().sum(sums_[which * count_].costs.data(), from, word.size(), count_, least.costs.data());
    }
    return *std::min_element(least.costs.begin(), least.costs.end());
}

std::array<std::uint32_t, CostPlanes::levels> CostPlanes::count_levels(Cost least) const {
    std::array<std::uint32_t, levels> counts{};
    // A lane counts up to what a cost can hold.
    constexpr std::size_t at_most = std::numeric_limits<Cost>::max();
    for (std::size_t first = 0; first < sums_.size(); first += at_most)
        operations().count(sums_[first].costs.data(), std::min(at_most, sums_.size() - first), least,
                           counts.data());
    return counts;
}

Placement CostPlanes::with_cost(Cost cost, std::uint32_t number) const {
    for (std::size_t which = 0; which < directions_.size(); ++which) {
        const Cost* const sums = sums_[which * count_].costs.data();
        const std::uint32_t equal = operations().count_equal(sums, count_, cost);
        if (number >= equal) {
            number -= equal;
            continue;
        }
        std::size_t at = 0;
        while (sums[at] != cost || number-- > 0) ++at;
        return {{static_cast<int>(at / stride_), static_cast<int>(at % stride_)}, directions_[which]};
    }
    return {};
}

}  // namespace lode
