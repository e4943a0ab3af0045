#pragma once
// What is wrong with an answer, by plain loops that share nothing with those who gave it.

#include <string>

#include "contest.hpp"

namespace lode::bench {

// What is wrong with a solution, or an empty text.
[[nodiscard]] std::string fault_in(const Instance& instance, const Answer& answer);

// Whether each word can be read once and no more: in the finished grid where there is one, else among the
// words' letters alone. Looks for every word at every cell: words times cells times eight.
[[nodiscard]] bool reads_each_word_once(const Instance& instance, const Answer& answer);

}  // namespace lode::bench
