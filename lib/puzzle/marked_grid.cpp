// A grid with the letters of findings marked, and its rows and columns numbered.

#include <algorithm>
#include <string_view>

#include <letterlode/puzzle.hpp>

#include "puzzle/place_text.hpp"
#include "text/direction.hpp"
#include "text/display_width.hpp"

namespace lode {
namespace {

// What a page or a terminal shows at once.
constexpr Size most_at_once{60, 50};
constexpr std::size_t most_parts = 10;
constexpr int margin = 2;  // around a finding

// As bits, since a letter may belong to findings of both kinds.
constexpr unsigned stray = 1;
constexpr unsigned avoided = 2;

struct Finding {
    Copy copy;
    unsigned kind;
    std::string_view word;
};

std::vector<Finding> findings_of(const Audit& audit) {
    std::vector<Finding> findings;
    for (const auto& word : audit.words)
        for (const Copy& copy : word.stray) findings.push_back({copy, stray, word.shown});
    for (const auto& finding : audit.avoided) findings.push_back({finding.copy, avoided, finding.word});
    return findings;
}

struct Part {
    Cell first;
    Size size;

    [[nodiscard]] bool holds(Cell cell) const {
        return cell.row >= first.row && cell.row < first.row + size.rows && cell.column >= first.column &&
               cell.column < first.column + size.columns;
    }
    [[nodiscard]] std::size_t index(Cell cell) const {
        return static_cast<std::size_t>(cell.row - first.row) * static_cast<std::size_t>(size.columns) +
               static_cast<std::size_t>(cell.column - first.column);
    }
    [[nodiscard]] bool can_be_shown() const {
        return size.rows <= most_at_once.rows && size.columns <= most_at_once.columns;
    }
};

Part part_around(const Copy& copy, Size grid) {
    const Cell last = copy.last();
    const Cell low{std::max(std::min(copy.first.row, last.row) - margin, 0),
                   std::max(std::min(copy.first.column, last.column) - margin, 0)};
    const Cell high{std::min(std::max(copy.first.row, last.row) + margin, grid.rows - 1),
                    std::min(std::max(copy.first.column, last.column) + margin, grid.columns - 1)};
    return {low, {high.row - low.row + 1, high.column - low.column + 1}};
}

class MarkedGrid {
  public:
    MarkedGrid(const LetteredGrid& grid, const std::vector<Finding>& findings, Marking marking)
        : grid_(grid), findings_(findings), marking_(marking) {
        for (std::size_t letter = 0; letter < grid.alphabet.size(); ++letter)
            letter_width_ =
                std::max(letter_width_, display_width(grid.alphabet.text(static_cast<Letter>(letter))));
    }

    [[nodiscard]] std::string drawn(const Part& part) const {
        std::vector<unsigned> kinds(part.size.cells());
        for (const Finding& finding : findings_)
            for (int at = 0; at < finding.copy.length; ++at) {
                const Cell cell = moved(finding.copy.first, finding.copy.direction, at);
                if (part.holds(cell)) kinds[part.index(cell)] |= finding.kind;
            }
        const std::size_t edge = std::to_string(part.first.row + part.size.rows).size();
        std::string text = column_numbers(part, edge);
        for (int row = part.first.row; row < part.first.row + part.size.rows; ++row) {
            std::string line = padded_before(std::to_string(row + 1), edge) + " ";
            for (int column = part.first.column; column < part.first.column + part.size.columns; ++column)
                line += cell_text(grid_.grid[{row, column}], kinds[part.index({row, column})]);
            while (line.ends_with(' ')) line.pop_back();
            text += in_columns(line) + "\n";
        }
        return text;
    }

    // What the marks mean that were used.
    [[nodiscard]] std::string legend() const {
        unsigned used = 0;
        for (const Finding& finding : findings_) used |= finding.kind;
        std::string text;
        if ((used & stray) != 0) text += marked("A", stray) + " in a stray copy";
        if (used == (stray | avoided)) text += "   ";
        if ((used & avoided) != 0) text += marked("A", avoided) + " in an avoided word";
        return text.empty() ? text : text + "\n";
    }

  private:
    // Colours are not told by hue alone: one kind is reversed, the other underlined.
    [[nodiscard]] std::string marked(const std::string& letter, unsigned kind) const {
        const bool is_stray = (kind & stray) != 0;
        if (marking_ == Marking::brackets) return is_stray ? "[" + letter + "]" : "(" + letter + ")";
        return (is_stray ? "\x1b[1;7;31m " : "\x1b[1;4;35m ") + letter + " \x1b[0m";
    }

    [[nodiscard]] std::string cell_text(Letter letter, unsigned kind) const {
        const bool is_letter = letter < grid_.alphabet.size();
        const std::string shown =
            padded(is_letter ? grid_.alphabet.text(letter) : std::string("."), letter_width_);
        return kind == 0 ? " " + shown + " " : marked(shown, kind);
    }

    // Each number ends above its column's letters; where there is no room for all, every fifth is shown.
    [[nodiscard]] std::string column_numbers(const Part& part, std::size_t edge) const {
        const std::size_t cell_width = letter_width_ + 2;
        const int last = part.first.column + part.size.columns;
        const bool room_for_all = std::to_string(last).size() < cell_width;
        std::string line;
        std::size_t end = edge + 1 + 1 + letter_width_;
        for (int number = part.first.column + 1; number <= last; ++number, end += cell_width) {
            const std::string digits = std::to_string(number);
            if ((room_for_all || number % 5 == 0) && line.size() + digits.size() <= end)
                line += padded_before(digits, end - line.size());
        }
        return line + "\n";
    }

    const LetteredGrid& grid_;
    const std::vector<Finding>& findings_;
    Marking marking_;
    std::size_t letter_width_ = 1;
};

}  // namespace

std::string marked_grid_text(const LetteredGrid& grid, const Audit& audit, Marking marking) {
    const auto findings = findings_of(audit);
    const MarkedGrid marked(grid, findings, marking);
    const Size size = grid.grid.size();
    if (const Part whole{{0, 0}, size}; whole.can_be_shown()) return marked.drawn(whole) + marked.legend();

    std::string text;
    std::size_t drawn = 0;
    for (const Finding& finding : findings) {
        const Part part = part_around(finding.copy, size);
        if (drawn == most_parts || !part.can_be_shown()) continue;
        ++drawn;
        text +=
            std::string(finding.word) + ", " + copy_text(finding.copy) + ":\n" + marked.drawn(part) + "\n";
    }
    if (const std::size_t left = findings.size() - drawn; left > 0)
        text += std::to_string(left) + (left == 1 ? " finding more is" : " findings more are") +
                " not drawn: the table above has them.\n";
    return drawn > 0 ? text + marked.legend() : text;
}

}  // namespace lode
