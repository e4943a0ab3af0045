#pragma once
// Small placing tasks by chance, so that each rule is met about as often as not.

#include <array>
#include <vector>

#include "support/placing.hpp"

namespace lode::test {

// A word over the first so many letters, of two letters to `most`.
Letters random_word(Random& random, std::uint32_t letters, std::uint32_t most);

Mask random_mask(Size size, Random& random);

// Masks of up to three rows and four columns, a few words and avoided words over two to four letters, any
// directions.
Task random_small_task(Random& random);

// What may be asked for besides. `inner` words have no place of their own; `nested` ones have.
enum class Rule { pins, crossings, spacing, leftover, message, shares, before, inner, nested };
inline constexpr std::array all_rules{Rule::pins,     Rule::crossings, Rule::spacing,
                                      Rule::leftover, Rule::message,   Rule::shares,
                                      Rule::before,   Rule::inner,     Rule::nested};
const char* name_of(Rule rule);
// Up to so many of them, each at most once.
std::vector<Rule> some_rules(Random& random, std::size_t most);

// One to so many short words with these rules. More often than not what they ask for is taken from a solution
// without them, so that they can be met together.
Task random_task_with(std::vector<Rule> rules, const Mask& mask, std::uint32_t most_words, Random& random);
Task random_task_with(const std::vector<Rule>& rules, Random& random);
// The same task without the only rule that it has.
Task without(Task task, Rule rule);

}  // namespace lode::test
