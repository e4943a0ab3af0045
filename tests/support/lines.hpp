#pragma once
// The judge from outside: the lines of a grid are taken out as plain strings, and a general search of strings
// finds the words in them. Nothing of the library's finder is used, nor its directions.

#include <set>
#include <string>
#include <utility>
#include <vector>

#include <letterlode/grid.hpp>

namespace lode::test {

// One line of cells, from border to border or between closed cells.
struct Line {
    std::vector<std::pair<int, int>> cells;  // row, column
    std::vector<std::string> letters;        // a string a cell
};

// All rows, columns and diagonals of both kinds, each once, broken at closed cells.
std::vector<Line> lines_of(const LetteredGrid& grid);

// Every set of cells that reads as the word, by std::string::find along each line and along the line
// reversed. Only matches that begin and end between letters count: E is not found inside a decomposed E with
// accent.
std::set<std::set<std::pair<int, int>>> copies_by_string_find(const std::vector<Line>& lines,
                                                              const std::vector<std::string>& word);

// The same by ICU's string search (usearch.h), without a locale's rules and at the level that tells every
// difference.
std::set<std::set<std::pair<int, int>>> copies_by_icu(const std::vector<Line>& lines,
                                                      const std::vector<std::string>& word);

}  // namespace lode::test
