#pragma once
// Every way to meet a placing task, by trying every combination of placements. The rules are written here
// from their wording once more: neither the searches nor the judge in placing.hpp have a part in it.

#include <functional>
#include <set>
#include <vector>

#include "support/placing.hpp"

namespace lode::test {

// Calls visit with the placements of each solution, by word, until it returns false. A palindrome that may be
// read from either end stands in both ways. For grids of up to 64 cells.
void every_solution(const Task& task, const std::function<bool(const std::vector<Placement>&)>& visit);

bool has_solution(const Task& task);

// What tells two solutions apart: the cells of each word, as bits, and its direction; of a palindrome only
// the cells, unless directions count.
using SolutionKey = std::vector<std::pair<std::uint64_t, int>>;
SolutionKey key_of(const Task& task, const std::vector<Placement>& placements);
std::set<SolutionKey> all_solutions(const Task& task);

// Without demands: whether the words can all be placed so that letters agree where they cross, each word can
// be read in its own cells and where others hold it, all different, and in no others, and no avoided word can
// be read.
bool naive_can_place(const Mask& mask, Directions directions, const std::vector<Letters>& words,
                     const std::vector<Letters>& avoided);

}  // namespace lode::test
