#include "support/judge.hpp"

#include <algorithm>
#include <memory>
#include <set>
#include <sstream>
#include <stdexcept>

#include <unicode/translit.h>

#include "support/lines.hpp"
#include "support/naive.hpp"
#include "support/recipes.hpp"

namespace lode::test {
namespace {

// Without case and marks, by ICU's transliterator.
LetteredGrid bare(const LetteredGrid& grid) {
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<icu::Transliterator> strip(
        icu::Transliterator::createInstance("NFD; [:M:] Remove; Upper; NFC", UTRANS_FORWARD, status));
    if (U_FAILURE(status)) throw std::runtime_error("ICU has no such transliterator");
    LetteredGrid plain{{}, Grid(grid.grid.size(), closed_cell)};
    for (int row = 0; row < grid.grid.size().rows; ++row)
        for (int column = 0; column < grid.grid.size().columns; ++column) {
            const Letter letter = grid.grid[{row, column}];
            if (letter == closed_cell || letter == empty_cell) continue;
            icu::UnicodeString text = icu::UnicodeString::fromUTF8(grid.alphabet.text(letter));
            strip->transliterate(text);
            std::string bytes;
            plain.grid[{row, column}] = plain.alphabet.add(text.toUTF8String(bytes));
        }
    return plain;
}

std::vector<std::string> one_by_one(const std::string& ascii) {
    std::vector<std::string> letters;
    for (const char letter : ascii) letters.emplace_back(1, letter);
    return letters;
}

// One, and where nested words have places of their own besides, one more for each place inside another.
std::size_t expected_copies(const Puzzle& puzzle, const PlacedWord& word) {
    std::size_t expected = 1;
    if (puzzle.recipe.nested == Nested::inside) return expected;
    for (const auto& other : puzzle.words) {
        if (other.letters == word.letters) continue;
        LetteredGrid row{{}, Grid({1, static_cast<int>(other.letters.size())})};
        for (int at = 0; at < row.grid.size().columns; ++at)
            row.grid[{0, at}] = row.alphabet.add(other.letters[static_cast<std::size_t>(at)]);
        expected += copies_by_string_find(lines_of(row), word.letters).size();
    }
    return expected;
}

}  // namespace

std::vector<std::string> faults_in(const Puzzle& puzzle, const Mask& mask,
                                   const std::vector<std::string>& avoided) {
    const Grid& grid = puzzle.grid.grid;
    std::vector<std::string> faults;
    if (grid.size() != mask.size()) return {"the grid has another size"};
    for (int row = 0; row < mask.size().rows; ++row)
        for (int column = 0; column < mask.size().columns; ++column) {
            const Letter letter = grid[{row, column}];
            if (mask.open({row, column}) ? letter >= puzzle.grid.alphabet.size() : letter != closed_cell)
                faults.push_back("row " + std::to_string(row + 1) + ", column " + std::to_string(column + 1) +
                                 " holds what it should not");
        }
    if (puzzle.words.size() != puzzle.recipe.words.words.size()) faults.push_back("another number of words");

    const auto lines = lines_of(puzzle.grid);
    for (const auto& word : puzzle.words) {
        const auto cells = cells_from(grid.size(), word.placed.first, word.placed.direction,
                                      static_cast<int>(word.letters.size()));
        if (!puzzle.recipe.directions || !puzzle.recipe.directions->contains(word.placed.direction))
            faults.push_back(word.shown + " runs in a direction that was not asked for");
        if (cells.empty()) faults.push_back(word.shown + " leads out of the grid");
        const auto copies = copies_by_string_find(lines, word.letters);
        if (copies.size() != expected_copies(puzzle, word))
            faults.push_back(word.shown + " stands " + std::to_string(copies.size()) + " times");
        if (copies.count({cells.begin(), cells.end()}) == 0)
            faults.push_back(word.shown + " does not stand where it is said to");
        for (std::size_t at = 0; at < cells.size(); ++at) {
            const Letter letter = grid[{cells[at].first, cells[at].second}];
            if (letter >= puzzle.grid.alphabet.size() ||
                puzzle.grid.alphabet.text(letter) != word.letters[at])
                faults.push_back(word.shown + " has another letter " + std::to_string(at + 1));
        }
    }
    const auto bare_lines = lines_of(bare(puzzle.grid));
    for (const auto& word : avoided)
        if (!copies_by_string_find(bare_lines, one_by_one(word)).empty())
            faults.push_back("the avoided word " + word + " stands in the grid");
    return faults;
}

std::vector<std::string> english_avoid_list() {
    std::istringstream lines(data_file("avoid/en.txt"));
    std::vector<std::string> words;
    for (std::string line; std::getline(lines, line);) {
        if (line.empty() || line.front() == '#') continue;
        std::transform(line.begin(), line.end(), line.begin(),
                       [](char letter) { return static_cast<char>(letter - 'a' + 'A'); });
        words.push_back(line);
    }
    return words;
}

}  // namespace lode::test
