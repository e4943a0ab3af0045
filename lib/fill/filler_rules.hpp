#pragma once
// What a letter of the filler must keep besides spelling nothing: that no letter comes too often in a row,
// and that none stands beside one that it is easily taken for. What words bring with them is nobody's fault:
// only what a filler letter has a part in counts.

#include <cstdint>
#include <optional>
#include <vector>

#include <letterlode/grid.hpp>

namespace lode {

// What a letter looks like, as far as it may be taken for another.
struct LetterLook {
    std::uint32_t groups = 0;  // of letters that look alike: a bit each
    std::uint32_t shape = 0;   // letters of one shape, such as E with and without a mark, are the same here
};

struct FillerRules {
    int longest_run = 0;            // equal letters in a row at the most, in any direction; 0: any number
    std::vector<LetterLook> looks;  // by letter; empty where look-alikes may be neighbours

    [[nodiscard]] bool ask_nothing() const { return longest_run == 0 && looks.empty(); }
    [[nodiscard]] bool are_look_alikes(Letter one, Letter other) const {
        return one < looks.size() && other < looks.size() && (looks[one].groups & looks[other].groups) != 0 &&
               looks[one].shape != looks[other].shape;
    }
};

struct RuleBreak {
    enum class Rule { longest_run, look_alikes };
    Rule rule;
    // The cells that break it together, in a line.
    Cell first;
    Direction direction;
    int length;
};

// A rule that the filler letter in the cell breaks with the letters about it, if there is one. Its time grows
// with the longest run that is allowed.
[[nodiscard]] std::optional<RuleBreak> broken_rule(const Grid& grid, const FillerRules& rules, Cell cell);

}  // namespace lode
