#include <algorithm>

#include <letterlode/grid.hpp>

#include "grid/cell_layout.hpp"
#include "grid/cell_letters.hpp"
#include "grid/rows_of_text.hpp"
#include "text/direction.hpp"
#include "text/quoted.hpp"
#include "text/utf8.hpp"
#include "text/word_lines.hpp"

namespace lode {
namespace {

using Views = std::vector<std::string_view>;

Refusal refused(std::string_view source, int line, const std::string& fault, const std::string& advice) {
    return {
        Refusal::Reason::unusable, place_in(source, line) + fault, {}, {advice}, std::string(source), line};
}

bool is_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(),
                       [](char byte) { return static_cast<unsigned char>(byte) < 0x80; });
}

// The rows of a text in user-perceived characters, one row at a time.
class Rows {
  public:
    explicit Rows(const Segmenter& segmenter) : segmenter_(segmenter) {}

    const RowText& read(std::string_view row) {
        read_.characters.clear();
        if (is_ascii(row)) {
            read_.text = row;
            for (std::size_t at = 0; at < row.size(); ++at) read_.characters.push_back(row.substr(at, 1));
            return read_;
        }
        composed_.clear();
        ends_.clear();
        for (const auto& character : segmenter_.clusters(row)) {
            if (is_direction_mark(character)) continue;
            composed_ += character;
            ends_.push_back(composed_.size());
        }
        read_.text = composed_;
        std::size_t start = 0;
        for (const std::size_t end : ends_) {
            read_.characters.push_back(read_.text.substr(start, end - start));
            start = end;
        }
        return read_;
    }

  private:
    const Segmenter& segmenter_;
    RowText read_;
    std::string composed_;
    std::vector<std::size_t> ends_;
};

// Which rows are read from the right: the first letter of a right-to-left line is its rightmost cell, unless
// U+202D says that it stands in columns; rows without letters of their own direction go with the others.
// `mixed` is a row whose letters run in both directions, so that its order is not clear.
struct FromRight {
    std::vector<bool> rows;
    std::optional<std::size_t> mixed;
};

FromRight rows_from_right(const Views& rows) {
    FromRight found{std::vector<bool>(rows.size(), false), {}};
    if (std::all_of(rows.begin(), rows.end(), is_ascii)) return found;
    bool any = false;
    for (std::size_t row = 0; row < rows.size(); ++row) {
        const LineDirections directions = directions_of(rows[row]);
        if (directions.in_columns) continue;
        if (directions.right_to_left && directions.left_to_right && !found.mixed) found.mixed = row;
        any |= directions.right_to_left;
        found.rows[row] = !directions.left_to_right;
    }
    if (!any) found.rows.assign(rows.size(), false);
    return found;
}

std::string counted(std::size_t count, const char* what) {
    return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

// A spreadsheet writes an empty row as separators alone.
bool is_blank_line(std::string_view line) {
    return line.find_first_not_of(" \t,;") == std::string_view::npos;
}

// Rows that follow each other, from the first on.
std::size_t rows_before_blank(const Views& rows) {
    const auto blank = std::find_if(rows.begin(), rows.end(), is_blank_line);
    return static_cast<std::size_t>(blank - rows.begin());
}

// Where nothing stands between letters, two cells may be one.
bool letters_touch(const CellLayout& layout) {
    return layout.kind == CellLayout::Kind::packed ||
           (layout.kind == CellLayout::Kind::aligned && layout.pitch == 1);
}

Outcome<LetteredGrid> grid_of(const Views& rows, int first_line, std::string_view source,
                              const Segmenter& segmenter) {
    const auto refuse = [&](std::size_t row, const std::string& fault, const std::string& advice) {
        return refused(source, first_line + static_cast<int>(row), fault, advice);
    };
    const auto row_name = [](std::size_t row) { return "row " + std::to_string(row + 1); };

    // Characters by the locale in the case that they are written in: a letter may have two in another.
    TextRules as_written = segmenter.rules();
    as_written.letters = LetterCase::keep;
    const auto characters = Segmenter::open(as_written);
    if (!characters) return characters.refusal();
    Rows reader(*characters);
    CellLetters letters(segmenter);
    const auto found = find_cell_layout(
        rows.size(), [&](std::size_t row) -> const RowText& { return reader.read(rows[row]); },
        [&](std::string_view written) { return letters.is_one_letter(written); });
    if (found.fault)
        return refuse(found.fault->row, row_name(found.fault->row) + ": " + found.fault->fault,
                      found.fault->advice);

    const FromRight from_right = rows_from_right(rows);
    if (from_right.mixed)
        return refuse(*from_right.mixed,
                      row_name(*from_right.mixed) + " has letters that run from the left and from the right.",
                      "Write U+202D before each row and U+202C after it, its first column first, or give a "
                      "puzzle in JSON.");
    const bool may_join = segmenter.joins_letters() && letters_touch(found.layout);
    LetteredGrid read;
    Views cells;
    std::size_t columns = found.layout.columns;
    for (std::size_t row = 0; row < rows.size(); ++row) {
        const RowText& text = reader.read(rows[row]);
        if (row == 0) {
            if (columns == 0) {
                split_cells(found.layout, text, cells);
                columns = cells.size();
            }
            const auto size =
                checked_size(static_cast<long long>(columns), static_cast<long long>(rows.size()));
            if (!size) return refused(source, 0, size.refusal().message, size.refusal().advice.front());
            read.grid = Grid(*size, closed_cell);
        }
        if (may_join)
            if (const std::string joined = letters.joined_in(text); !joined.empty())
                return refuse(row,
                              row_name(row) + " can be read in two ways: " + quoted(joined) +
                                  " is one letter of the locale's alphabet, or " +
                                  std::to_string(segmenter.clusters(joined).size()) + ".",
                              "Put blanks between the letters of all rows, or say --digraphs split.");
        split_cells(found.layout, text, cells);
        if (from_right.rows[row]) std::reverse(cells.begin(), cells.end());
        if (cells.size() != columns)
            return refuse(
                row,
                row_name(row) + " has " + counted(cells.size(), "cell") + " and the rows above have " +
                    std::to_string(columns) + ".",
                "Give every row the same number of cells; draw a closed cell with '.', '#' or '·'.");
        for (std::size_t column = 0; column < columns; ++column) {
            const auto letter = letters.letter(cells[column]);
            if (!letter) {
                const auto fault = letters.fault(cells[column]);
                Refusal refusal =
                    refuse(row, row_name(row) + ", column " + std::to_string(column + 1) + " " + fault.text,
                           fault.advice);
                refusal.position = static_cast<int>(column) + 1;
                return refusal;
            }
            read.grid[{static_cast<int>(row), static_cast<int>(column)}] = *letter;
        }
    }
    read.alphabet = letters.take();
    return read;
}

// Rows of a table may be empty before the first that is not.
Outcome<RowsOfText> rows_of_grid(std::string_view text, std::string_view source) {
    auto rows = rows_of_text(text, source);
    if (!rows) return rows;
    auto& views = rows->rows;
    while (!views.empty() && is_blank_line(views.back())) views.pop_back();
    std::size_t empty = 0;
    while (empty < views.size() && is_blank_line(views[empty])) ++empty;
    views.erase(views.begin(), views.begin() + static_cast<std::ptrdiff_t>(empty));
    rows->first_line += static_cast<int>(empty);
    if (views.empty()) return refused(source, 0, "there is no letter in it.", "Write a line a row.");
    return rows;
}

}  // namespace

Outcome<LetteredGrid> read_grid(std::string_view text, std::string_view source, const Segmenter& segmenter) {
    auto rows = rows_of_grid(text, source);
    if (!rows) return rows.refusal();
    Views& views = rows->rows;
    const std::size_t own = rows_before_blank(views);
    if (own == views.size()) return grid_of(views, rows->first_line, source, segmenter);

    // What follows a blank line: another grid, as one may forget, or something else.
    std::size_t next = own;
    while (is_blank_line(views[next])) ++next;
    const int line = rows->first_line + static_cast<int>(next);
    Views rest(views.begin() + static_cast<std::ptrdiff_t>(next), views.end());
    rest.resize(rows_before_blank(rest));
    const auto second = grid_of(rest, line, source, segmenter);
    const std::string what = second && second->grid.size().columns > 1 && second->grid.size().rows > 1
                                 ? "a second grid of " + counted(rest.size(), "row") + " begins here"
                                 : "more text follows";
    return refused(
        source, line, "a blank line ends the grid after row " + std::to_string(own) + ", and " + what + ".",
        "Give one grid a file, its rows on lines that follow each other. A list of words under the "
        "grid is read with --words -; of a puzzle that letterlode made, give puzzle.json.");
}

Outcome<GridWithList> read_grid_with_list(std::string_view text, std::string_view source,
                                          const Segmenter& segmenter) {
    auto rows = rows_of_grid(text, source);
    if (!rows) return rows.refusal();
    Views& views = rows->rows;
    const std::size_t own = rows_before_blank(views);
    const int end_line = rows->first_line + static_cast<int>(own);
    if (own == views.size())
        return refused(source, end_line - 1, "no list of words follows the grid.",
                       "Write it under the grid after a blank line, or name a file with --words FILE.");
    const Views listed(views.begin() + static_cast<std::ptrdiff_t>(own), views.end());
    views.resize(own);
    auto grid = grid_of(views, rows->first_line, source, segmenter);
    if (!grid) return grid.refusal();
    auto words = words_in_columns(listed, source, end_line);
    if (!words) return words.refusal();
    return GridWithList{std::move(*grid), std::move(*words)};
}

}  // namespace lode
