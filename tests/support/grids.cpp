#include "support/grids.hpp"

#include <stdexcept>

namespace lode::test {

Letters word_of(std::string_view text) {
    Letters word;
    for (const char letter : text) word.push_back(static_cast<Letter>(letter - 'A'));
    return word;
}

std::string text_of(const Letters& word) {
    std::string text;
    for (const Letter letter : word) text += static_cast<char>('A' + letter);
    return text;
}

std::vector<Letters> words_of(const std::vector<std::string>& texts) {
    std::vector<Letters> words;
    for (const auto& text : texts) words.push_back(word_of(text));
    return words;
}

Grid grid_of(const std::vector<std::string>& rows) {
    Grid grid({static_cast<int>(rows.size()), static_cast<int>(rows.at(0).size())});
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            const char mark = rows[static_cast<std::size_t>(row)].at(static_cast<std::size_t>(column));
            if (mark == '.')
                grid[{row, column}] = closed_cell;
            else if (mark != '_')
                grid[{row, column}] = static_cast<Letter>(mark - 'A');
        }
    return grid;
}

std::vector<std::string> rows_of(const Grid& grid) {
    std::vector<std::string> rows;
    for (int row = 0; row < grid.size().rows; ++row) {
        rows.emplace_back();
        for (int column = 0; column < grid.size().columns; ++column) {
            const Letter letter = grid[{row, column}];
            rows.back() += letter == closed_cell  ? '.'
                           : letter == empty_cell ? '_'
                                                  : static_cast<char>('A' + letter);
        }
    }
    return rows;
}

Mask mask_of(const std::vector<std::string>& rows) {
    Mask mask({static_cast<int>(rows.size()), static_cast<int>(rows.at(0).size())});
    for (int row = 0; row < mask.size().rows; ++row)
        for (int column = 0; column < mask.size().columns; ++column)
            mask.set({row, column},
                     rows[static_cast<std::size_t>(row)].at(static_cast<std::size_t>(column)) != '.');
    return mask;
}

const Alphabet& a_to_z() {
    static const Alphabet alphabet = [] {
        Alphabet letters;
        for (char letter = 'A'; letter <= 'Z'; ++letter) letters.add(std::string(1, letter));
        return letters;
    }();
    return alphabet;
}

LetteredGrid lettered(const std::vector<std::string>& rows) {
    return {a_to_z(), grid_of(rows)};
}

Segmenter segmenter_of(const std::string& locale, LetterCase letters) {
    return std::move(Segmenter::open({locale, letters})).value();
}

std::vector<Mask> every_mask(Size size) {
    if (size.cells() > 16) throw std::invalid_argument("too many masks");
    std::vector<Mask> masks;
    for (unsigned bits = 0; bits < 1u << size.cells(); ++bits) {
        Mask mask(size);
        unsigned rest = bits;
        for (int row = 0; row < size.rows; ++row)
            for (int column = 0; column < size.columns; ++column, rest >>= 1)
                mask.set({row, column}, (rest & 1) != 0);
        masks.push_back(std::move(mask));
    }
    return masks;
}

Directions directions_of(std::initializer_list<Direction> directions) {
    Directions set;
    for (const Direction direction : directions) set.insert(direction);
    return set;
}

}  // namespace lode::test
