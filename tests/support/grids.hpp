#pragma once
// Short ways to write grids, masks and words in tests.

#include <string>
#include <string_view>
#include <vector>

#include <letterlode/grid.hpp>
#include <letterlode/text.hpp>

namespace lode::test {

// A is letter 0, B is letter 1 ...
Letters word_of(std::string_view text);
std::string text_of(const Letters& word);
std::vector<Letters> words_of(const std::vector<std::string>& texts);

// A row a string: A to Z are letters, '.' is a closed cell, '_' an empty one.
Grid grid_of(const std::vector<std::string>& rows);
std::vector<std::string> rows_of(const Grid& grid);

// A row a string: '.' is a closed cell, all else open.
Mask mask_of(const std::vector<std::string>& rows);

// A to Z, by their numbers.
const Alphabet& a_to_z();
LetteredGrid lettered(const std::vector<std::string>& rows);

Segmenter segmenter_of(const std::string& locale = "root", LetterCase letters = LetterCase::upper);

// Every subset of a rectangle's cells as a mask; for up to 16 cells.
std::vector<Mask> every_mask(Size size);

Directions directions_of(std::initializer_list<Direction> directions);

}  // namespace lode::test
