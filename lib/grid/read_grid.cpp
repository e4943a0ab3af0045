#include <algorithm>

#include <letterlode/grid.hpp>

#include "grid/rows_of_text.hpp"
#include "text/quoted.hpp"
#include "text/utf8.hpp"

namespace lode {
namespace {

bool is_closed(const std::string& cell) {
    const icu::UnicodeString text = to_icu(cell);
    return text.countChar32() == 1 && is_closed_mark(text.char32At(0));
}

bool is_blank(const std::string& cluster) {
    return cluster == " " || cluster == "\t" || cluster == "\u00A0";
}

// Where every letter is followed by a blank, blanks part the cells, and a cell may hold several clusters
// ("LL").
std::vector<std::string> cells_of(const std::vector<std::string>& clusters, bool parted) {
    std::vector<std::string> cells;
    bool in_cell = false;
    for (const auto& cluster : clusters) {
        if (is_blank(cluster)) {
            in_cell = false;
            continue;
        }
        if (parted && in_cell)
            cells.back() += cluster;
        else
            cells.push_back(cluster);
        in_cell = true;
    }
    return cells;
}

}  // namespace

Outcome<LetteredGrid> read_grid(std::string_view text, std::string_view source, const Segmenter& segmenter) {
    const auto rows = rows_of_text(text, source);
    if (!rows) return rows.refusal();
    const auto refuse = [&](int row, const std::string& fault, const std::string& advice) {
        const int line = row < 0 ? 0 : rows->first_line + row;
        return Refusal{Refusal::Reason::unusable,
                       place_in(source, line) + fault,
                       {},
                       {advice},
                       std::string(source),
                       line};
    };

    std::vector<std::vector<std::string>> clusters;
    clusters.reserve(rows->rows.size());
    for (const auto& row : rows->rows) clusters.push_back(segmenter.clusters(row));
    // One blank anywhere inside a row means that blanks part the cells of the whole grid.
    const bool parted = std::any_of(clusters.begin(), clusters.end(), [](const auto& row) {
        const auto first = std::find_if_not(row.begin(), row.end(), is_blank);
        const auto last = std::find_if_not(row.rbegin(), row.rend(), is_blank).base();
        return first < last && std::any_of(first, last, is_blank);
    });

    LetteredGrid read;
    for (std::size_t row = 0; row < clusters.size(); ++row) {
        const int at = static_cast<int>(row);
        const std::string row_name = "row " + std::to_string(row + 1);
        const auto cells = cells_of(clusters[row], parted);
        if (cells.empty())
            return refuse(at, "a blank line stands between the rows of the grid.",
                          "Give one grid a file and nothing else, its rows on lines that follow each other; "
                          "of a puzzle that "
                          "letterlode made, give puzzle.json.");
        if (row == 0) {
            const auto size =
                checked_size(static_cast<long long>(cells.size()), static_cast<long long>(clusters.size()));
            if (!size) return refuse(-1, size.refusal().message, size.refusal().advice.front());
            read.grid = Grid(*size, closed_cell);
        } else if (static_cast<int>(cells.size()) != read.grid.size().columns) {
            return refuse(at,
                          row_name + " has " + std::to_string(cells.size()) +
                              (cells.size() == 1 ? " cell" : " cells") + " and the rows above have " +
                              std::to_string(read.grid.size().columns) + ".",
                          "Give every row the same number of cells, with blanks between the letters of all "
                          "rows or of none; draw a "
                          "closed cell with '.', '#' or '·'.");
        }
        for (std::size_t column = 0; column < cells.size(); ++column) {
            if (is_closed(cells[column])) continue;
            const auto spelling = segmenter.spell(cells[column]);
            std::string letter;
            for (const auto& part : spelling.letters) letter += part;
            if (letter.empty() || !spelling.bad.empty() || letter != cells[column])
                return refuse(at,
                              row_name + ", column " + std::to_string(column + 1) + " holds " +
                                  quoted(cells[column]) + ", which is no letter.",
                              "Letters and digits fill cells; draw a closed cell with '.', '#' or '·'.");
            if (read.alphabet.size() == max_letters && !read.alphabet.find(letter))
                return refuse(at,
                              "the grid has more than " + std::to_string(max_letters) + " different letters.",
                              "Give the grid in parts.");
            read.grid[{at, static_cast<int>(column)}] = read.alphabet.add(letter);
        }
    }
    return read;
}

}  // namespace lode
