#pragma once
// The one source of chance. The engine is std::mt19937_64, whose output the C++ standard fixes
// ([rand.predef]); the standard's distributions are left open, so none is used.

#include <cstdint>
#include <random>
#include <utility>

namespace lode {

class Random {
  public:
    explicit Random(std::uint64_t seed) : engine_(seed) {}

    // A number from 0 to bound - 1, each as likely; bound is 1 or more.
    // Lemire, "Fast Random Integer Generation in an Interval", ACM TOMACS 29(1), 2019.
    std::uint32_t below(std::uint32_t bound) {
        std::uint64_t product = half() * bound;
        if (static_cast<std::uint32_t>(product) < bound) {
            const std::uint32_t uneven = (0u - bound) % bound;
            while (static_cast<std::uint32_t>(product) < uneven) product = half() * bound;
        }
        return static_cast<std::uint32_t>(product >> 32);
    }

    // Another generator, seeded from this one.
    [[nodiscard]] Random split() { return Random(engine_()); }

    template <class Range>
    void shuffle(Range& range) {
        for (auto left = static_cast<std::uint32_t>(range.size()); left > 1; --left)
            std::swap(range[left - 1], range[below(left)]);
    }

  private:
    std::uint64_t half() { return engine_() >> 32; }
    std::mt19937_64 engine_;
};

}  // namespace lode
