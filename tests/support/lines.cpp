#include "support/lines.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>

#include <unicode/coll.h>
#include <unicode/stsearch.h>
#include <unicode/unistr.h>

namespace lode::test {
namespace {

using CellSets = std::set<std::set<std::pair<int, int>>>;

void add_line(const LetteredGrid& grid, int row, int column, int down, int across, std::vector<Line>& lines) {
    Line line;
    const auto flush = [&] {
        if (!line.cells.empty()) lines.push_back(std::move(line));
        line = {};
    };
    for (; row >= 0 && row < grid.grid.size().rows && column >= 0 && column < grid.grid.size().columns;
         row += down, column += across) {
        const Letter letter = grid.grid[{row, column}];
        if (letter == closed_cell || letter == empty_cell) {
            flush();
            continue;
        }
        line.cells.emplace_back(row, column);
        line.letters.push_back(grid.alphabet.text(letter));
    }
    flush();
}

// Where each cell's text begins in the joined line; the last entry is the end.
template <class Text, class Append>
Text joined(const Line& line, std::map<std::int64_t, std::size_t>& cell_at, Append append) {
    Text text;
    for (std::size_t cell = 0; cell < line.letters.size(); ++cell) {
        cell_at[static_cast<std::int64_t>(text.length())] = cell;
        append(text, line.letters[cell]);
    }
    cell_at[static_cast<std::int64_t>(text.length())] = line.letters.size();
    return text;
}

void add_match(const Line& line, const std::map<std::int64_t, std::size_t>& cell_at, std::int64_t begin,
               std::int64_t end, CellSets& copies) {
    const auto first = cell_at.find(begin);
    const auto after = cell_at.find(end);
    if (first == cell_at.end() || after == cell_at.end()) return;
    copies.emplace(line.cells.begin() + static_cast<std::ptrdiff_t>(first->second),
                   line.cells.begin() + static_cast<std::ptrdiff_t>(after->second));
}

Line turned(const Line& line) {
    Line other = line;
    std::reverse(other.cells.begin(), other.cells.end());
    std::reverse(other.letters.begin(), other.letters.end());
    return other;
}

template <class Search>
CellSets both_ways(const std::vector<Line>& lines, std::size_t length, Search search) {
    CellSets copies;
    for (const Line& line : lines) {
        if (line.cells.size() < length) continue;
        search(line, copies);
        search(turned(line), copies);
    }
    return copies;
}

}  // namespace

std::vector<Line> lines_of(const LetteredGrid& grid) {
    const auto [rows, columns] = grid.grid.size();
    std::vector<Line> lines;
    for (int row = 0; row < rows; ++row) add_line(grid, row, 0, 0, 1, lines);
    for (int column = 0; column < columns; ++column) add_line(grid, 0, column, 1, 0, lines);
    // Diagonals begin in the top row or, below it, in the first or the last column.
    for (int column = 0; column < columns; ++column) {
        add_line(grid, 0, column, 1, 1, lines);
        add_line(grid, 0, column, 1, -1, lines);
    }
    for (int row = 1; row < rows; ++row) {
        add_line(grid, row, 0, 1, 1, lines);
        add_line(grid, row, columns - 1, 1, -1, lines);
    }
    return lines;
}

CellSets copies_by_string_find(const std::vector<Line>& lines, const std::vector<std::string>& word) {
    std::string sought;
    for (const auto& letter : word) sought += letter;
    return both_ways(lines, word.size(), [&](const Line& line, CellSets& copies) {
        std::map<std::int64_t, std::size_t> cell_at;
        const auto text = joined<std::string>(
            line, cell_at, [](std::string& all, const std::string& letter) { all += letter; });
        for (auto at = text.find(sought); at != std::string::npos; at = text.find(sought, at + 1))
            add_match(line, cell_at, static_cast<std::int64_t>(at),
                      static_cast<std::int64_t>(at + sought.size()), copies);
    });
}

CellSets copies_by_icu(const std::vector<Line>& lines, const std::vector<std::string>& word) {
    UErrorCode status = U_ZERO_ERROR;
    const std::unique_ptr<icu::Collator> order(icu::Collator::createInstance(icu::Locale::getRoot(), status));
    if (U_FAILURE(status)) throw std::runtime_error("ICU has no collator");
    order->setStrength(icu::Collator::IDENTICAL);
    icu::UnicodeString sought;
    for (const auto& letter : word) sought += icu::UnicodeString::fromUTF8(letter);

    return both_ways(lines, word.size(), [&](const Line& line, CellSets& copies) {
        std::map<std::int64_t, std::size_t> cell_at;
        const auto text =
            joined<icu::UnicodeString>(line, cell_at, [](icu::UnicodeString& all, const std::string& letter) {
                all += icu::UnicodeString::fromUTF8(letter);
            });
        UErrorCode code = U_ZERO_ERROR;
        icu::StringSearch search(sought, text, static_cast<icu::RuleBasedCollator*>(order.get()), nullptr,
                                 code);
        search.setAttribute(USEARCH_OVERLAP, USEARCH_ON, code);
        for (auto at = search.first(code); at != USEARCH_DONE; at = search.next(code)) {
            if (U_FAILURE(code)) throw std::runtime_error("ICU could not search");
            add_match(line, cell_at, at, at + search.getMatchedLength(), copies);
        }
    });
}

}  // namespace lode::test
