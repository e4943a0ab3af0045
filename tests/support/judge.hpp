#pragma once
// Judges a puzzle by general string searches over lines that are taken out here: nothing of the library's
// finder, its audit or its directions is asked.

#include <string>
#include <vector>

#include <letterlode/puzzle.hpp>

namespace lode::test {

// What is wrong, a sentence a fault; nothing where the puzzle is right: open cells are those of the mask and
// each holds a letter, each word stands as often as the rule for nested words says and where it is said to
// stand, in a direction that was asked for, and none of the avoided words (in capitals without marks) stands
// anywhere.
std::vector<std::string> faults_in(const Puzzle& puzzle, const Mask& mask,
                                   const std::vector<std::string>& avoided);

// The entries of data/avoid/en.txt in capitals, read here.
std::vector<std::string> english_avoid_list();

}  // namespace lode::test
