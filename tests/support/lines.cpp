#include "support/lines.hpp"

#include <algorithm>
#include <memory>
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

template <class Text, class Append>
Text joined(const Line& line, Append append) {
    Text text;
    for (const auto& letter : line.letters) append(text, letter);
    return text;
}

void append_utf8(std::string& text, const std::string& letter) {
    text += letter;
}

void append_utf16(icu::UnicodeString& text, const std::string& letter) {
    text += icu::UnicodeString::fromUTF8(letter);
}

// Adds the cells whose text the match is, if it begins and ends between cells.
template <class Text, class Append>
void add_match(const Line& line, std::int64_t begin, std::int64_t end, Append append, CellSets& copies) {
    Text text;
    std::set<std::pair<int, int>> cells;
    bool begins = false;
    for (std::size_t cell = 0; cell < line.cells.size(); ++cell) {
        const auto at = static_cast<std::int64_t>(text.length());
        if (at >= end) break;
        begins = begins || at == begin;
        if (at >= begin) cells.insert(line.cells[cell]);
        append(text, line.letters[cell]);
    }
    if (begins && static_cast<std::int64_t>(text.length()) == end) copies.insert(cells);
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
        const auto text = joined<std::string>(line, append_utf8);
        for (auto at = text.find(sought); at != std::string::npos; at = text.find(sought, at + 1))
            add_match<std::string>(line, static_cast<std::int64_t>(at),
                                   static_cast<std::int64_t>(at + sought.size()), append_utf8, copies);
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
        const auto text = joined<icu::UnicodeString>(line, append_utf16);
        UErrorCode code = U_ZERO_ERROR;
        icu::StringSearch search(sought, text, static_cast<icu::RuleBasedCollator*>(order.get()), nullptr,
                                 code);
        search.setAttribute(USEARCH_OVERLAP, USEARCH_ON, code);
        for (auto at = search.first(code); at != USEARCH_DONE; at = search.next(code)) {
            if (U_FAILURE(code)) throw std::runtime_error("ICU could not search");
            add_match<icu::UnicodeString>(line, at, at + search.getMatchedLength(), append_utf16, copies);
        }
    });
}

}  // namespace lode::test
