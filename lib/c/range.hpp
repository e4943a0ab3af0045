#pragma once
// Numbers that a caller may choose.

#include <string>

#include "c/error.hpp"

namespace lode::c {

[[noreturn]] inline void refuse(const std::string& message, const std::string& advice,
                                const std::string& word = {}) {
    std::vector<std::string> words;
    if (!word.empty()) words.push_back(word);
    throw Unusable{{Refusal::Reason::unusable, message, std::move(words), {advice}, {}, 0}};
}

// Throws Unusable for a number that is not between the two.
template <class Number>
Number in_range(Number given, const char* what, Number least, Number most) {
    if (given >= least && given <= most) return given;
    const std::string range = std::to_string(least) + " to " + std::to_string(most) + ".";
    refuse("The " + std::string(what) + " " + std::to_string(given) + " is not in the range from " + range,
           "Give a number from " + range);
}

}  // namespace lode::c
