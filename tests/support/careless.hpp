#pragma once
// What a careless caller hands to the C API: texts and numbers of every kind, and handles in whatever state.

#include <cmath>
#include <cstdint>
#include <iterator>
#include <vector>

#include "random/random.hpp"
#include "support/c_handles.hpp"

namespace lode::test::c_api {

inline const char* any_text(Random& random) {
    static constexpr const char* texts[] = {nullptr,
                                            "",
                                            "Leek",
                                            "kale",
                                            "a",
                                            "B€t",
                                            "leek\nkale\nbeet\n",
                                            "Ann\nAnna\n",
                                            "\xC3(",
                                            "\xFF\xFE",
                                            "LEEK\nKALE\n",
                                            "L E E K\nX . X X\n\nLeek, Kale\n",
                                            "en",
                                            "cy",
                                            "root",
                                            "xx-nowhere",
                                            "upper",
                                            "keep",
                                            "all",
                                            "right,left",
                                            "down,",
                                            "separate",
                                            "inside",
                                            "filler",
                                            "nothing",
                                            "apart",
                                            "language",
                                            "easy-weeding",
                                            "only-words",
                                            "words",
                                            "star",
                                            "OO\nOO\n",
                                            "...\n",
                                            "{",
                                            "{}",
                                            "[[[[",
                                            R"({"words":["Leek"]})",
                                            R"({"words":[],"seed":-1})",
                                            "easier",
                                            "150",
                                            "1e999",
                                            "-1",
                                            "#c08030",
                                            "none",
                                            "word,band\nleek,tan\n",
                                            "\xE2\x80\xAE",
                                            "e\u0301",
                                            "%s%n",
                                            "\n\n\n",
                                            "|",
                                            "a|b",
                                            "join",
                                            "strip"};
    return texts[random.below(std::size(texts))];
}

inline std::int32_t any_number(Random& random) {
    static constexpr std::int32_t numbers[] = {0, 1, 2, 3, 5, 8, -1, 21, 1000, INT32_MAX, INT32_MIN};
    return numbers[random.below(std::size(numbers))];
}

inline std::uint64_t any_large_number(Random& random) {
    static constexpr std::uint64_t numbers[] = {
        0, 1, 2, 30, 1000, UINT64_MAX, UINT64_MAX - 1, std::uint64_t{1} << 63};
    return numbers[random.below(std::size(numbers))];
}

inline double any_real(Random& random) {
    static const double numbers[] = {0, 1, 0.5, -1, 1e300, -1e300, std::nan(""), HUGE_VAL};
    return numbers[random.below(std::size(numbers))];
}

// Handles of a kind that were made and not freed yet.
template <class T>
class Pool {
  public:
    // One of them, or NULL now and then.
    T* any(Random& random) const {
        if (held_.empty() || random.below(12) == 0) return nullptr;
        return held_[random.below(static_cast<std::uint32_t>(held_.size()))].get();
    }
    void take(T* made) {
        if (!made) return;
        if (held_.size() == 6) held_.erase(held_.begin());
        held_.emplace_back(made);
    }
    void drop_one(Random& random) {
        if (held_.size() > 2)
            held_.erase(held_.begin() + random.below(static_cast<std::uint32_t>(held_.size())));
    }

  private:
    std::vector<Held<T>> held_;
};

}  // namespace lode::test::c_api
