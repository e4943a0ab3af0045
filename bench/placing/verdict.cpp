#include "verdict.hpp"

#include <algorithm>
#include <set>

namespace lode::bench {
namespace {

constexpr int down[] = {0, 1, 1, -1, 0, -1, -1, 1};
constexpr int across[] = {1, 0, 1, 1, -1, 0, -1, -1};

// The cells from one on, as numbers in row order; empty where they leave the grid.
std::vector<int> cells_from(Size size, int row, int column, int direction, std::size_t length) {
    std::vector<int> cells;
    for (std::size_t at = 0; at < length; ++at, row += down[direction], column += across[direction]) {
        if (row < 0 || row >= size.rows || column < 0 || column >= size.columns) return {};
        cells.push_back(row * size.columns + column);
    }
    return cells;
}

std::vector<int> cells_of(const Instance& instance, const Answer& answer, std::size_t word) {
    const Placement& there = answer.placements[word];
    return cells_from(instance.size, there.first.row, there.first.column, static_cast<int>(there.direction),
                      instance.words[word].size());
}

}  // namespace

std::string fault_in(const Instance& instance, const Answer& answer) {
    if (answer.placements.size() != instance.words.size()) return "not every word has a place";
    std::vector<int> written(instance.size.cells(), -1);
    std::size_t covered = 0;
    for (std::size_t word = 0; word < instance.words.size(); ++word) {
        const auto cells = cells_of(instance, answer, word);
        if (cells.empty()) return "a word leaves the grid";
        for (std::size_t at = 0; at < cells.size(); ++at) {
            int& there = written[static_cast<std::size_t>(cells[at])];
            if (there != -1 && !instance.may_cross) return "two words share a cell";
            if (there != -1 && there != instance.words[word][at]) return "letters clash";
            if (there == -1) ++covered;
            there = instance.words[word][at];
        }
    }
    if (instance.leftover && covered + *instance.leftover != instance.size.cells())
        return "too many cells are left over or too few";
    if (answer.filled.empty()) return "";
    if (answer.filled.size() != written.size()) return "the finished grid has another size";
    for (std::size_t cell = 0; cell < written.size(); ++cell) {
        if (answer.filled[cell] >= 26) return "a cell of the finished grid holds no letter";
        if (written[cell] != -1 && written[cell] != answer.filled[cell])
            return "the finished grid holds another letter than a word has there";
    }
    return "";
}

bool reads_each_word_once(const Instance& instance, const Answer& answer) {
    std::vector<Letter> letters(answer.filled);
    if (letters.empty()) {
        letters.assign(instance.size.cells(), empty_cell);
        for (std::size_t word = 0; word < instance.words.size(); ++word) {
            const auto cells = cells_of(instance, answer, word);
            for (std::size_t at = 0; at < cells.size(); ++at)
                letters[static_cast<std::size_t>(cells[at])] = instance.words[word][at];
        }
    }
    for (const Letters& word : instance.words) {
        std::set<std::set<int>> copies;
        for (int row = 0; row < instance.size.rows; ++row)
            for (int column = 0; column < instance.size.columns; ++column) {
                const int first = row * instance.size.columns + column;
                if (letters[static_cast<std::size_t>(first)] != word.front()) continue;
                for (int direction = 0; direction < 8; ++direction) {
                    const auto cells = cells_from(instance.size, row, column, direction, word.size());
                    if (cells.empty()) continue;
                    bool reads = true;
                    for (std::size_t at = 0; at < cells.size() && reads; ++at)
                        reads = letters[static_cast<std::size_t>(cells[at])] == word[at];
                    if (reads) copies.emplace(cells.begin(), cells.end());
                }
            }
        if (copies.size() != 1) return false;
    }
    return true;
}

}  // namespace lode::bench
