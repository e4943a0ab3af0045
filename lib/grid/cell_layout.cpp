#include "grid/cell_layout.hpp"

#include <algorithm>
#include <array>
#include <numeric>

namespace lode {
namespace {

using Kind = CellLayout::Kind;
using Positions = std::vector<std::size_t>;

bool is_blank(std::string_view character) {
    return character == " " || character == "\u00A0" || character == "\u3000";
}

std::string_view trimmed(std::string_view text) {
    for (bool more = true; more;) {
        more = false;
        for (const std::string_view blank : {" ", "\u00A0", "\u3000"}) {
            for (; text.starts_with(blank); more = true) text.remove_prefix(blank.size());
            for (; text.ends_with(blank); more = true) text.remove_suffix(blank.size());
        }
    }
    return text;
}

// Fields as tables have them, with quotes or without.
void split_fields(std::string_view row, char separator, std::vector<std::string_view>& fields) {
    fields.clear();
    for (bool more = true; more;) {
        const std::size_t end = std::min(row.find(separator), row.size());
        std::string_view field = trimmed(row.substr(0, end));
        if (field.size() >= 2 && field.front() == '"' && field.back() == '"')
            field = trimmed(field.substr(1, field.size() - 2));
        fields.push_back(field);
        more = end < row.size();
        row.remove_prefix(std::min(end + 1, row.size()));
    }
}

// Where all characters but the blanks stand.
void find_filled(const RowText& row, Positions& filled) {
    filled.clear();
    for (std::size_t at = 0; at < row.characters.size(); ++at)
        if (!is_blank(row.characters[at])) filled.push_back(at);
}

void split_at_blanks(const RowText& row, std::vector<std::string_view>& cells) {
    cells.clear();
    bool in_cell = false;
    for (const std::string_view character : row.characters) {
        if (is_blank(character)) {
            in_cell = false;
        } else if (in_cell) {
            // Characters of a row follow each other in its text.
            cells.back() = {cells.back().data(), cells.back().size() + character.size()};
        } else {
            cells.push_back(character);
            in_cell = true;
        }
    }
}

// What the rows have in common, and where they differ.
class RowsSeen {
  public:
    void see(const RowText& row) {
        find_filled(row, filled_);
        ++rows;
        if (filled_.empty()) {
            same_counts = same_positions = false;
            return;
        }
        const std::size_t first = filled_.front();
        const std::size_t last = filled_.back();
        bool touching = false;
        bool gap = false;
        bool wide_gap = false;
        for (std::size_t at = 0; at + 1 < filled_.size(); ++at) {
            const std::size_t step = filled_[at + 1] - filled_[at];
            touching |= step == 1;
            gap |= step > 1;
            wide_gap |= step > 2;
            pitch = std::gcd(pitch, step);
        }
        if (first_filled_.empty()) {
            first_filled_ = filled_;
            indent = first;
        }
        if (first != first_filled_.front() && !shifted_row) shifted_row = rows - 1;
        pitch = std::gcd(pitch, first > indent ? first - indent : indent - first);
        same_counts &= filled_.size() == first_filled_.size();
        same_positions &= filled_ == first_filled_;
        indent = std::min(indent, first);
        end = std::max(end, last + 1);
        any_touching |= touching;
        any_gap |= gap;
        any_wide_gap |= wide_gap;
        // Three letters with a blank after each: so do people write who part letters by blanks.
        if (filled_.size() >= 3 && !touching && !wide_gap && !spaced_row) spaced_row = rows - 1;
        if (touching && !touching_row) {
            touching_row = rows - 1;
            for (std::size_t at = 0; at + 1 < filled_.size() && touching_at == 0; ++at)
                if (filled_[at + 1] == filled_[at] + 1) touching_at = at + 1;
        }
    }

    // Where all rows are filled alike.
    [[nodiscard]] std::size_t filled_columns() const { return first_filled_.size(); }

    std::size_t rows = 0;
    std::size_t indent = 0;  // of the row that begins first
    std::size_t end = 0;
    std::size_t pitch = 0;  // the greatest that all filled columns of the text fit; 0 where there is only one
    std::optional<std::size_t> shifted_row;  // that does not begin where the first does
    bool same_counts = true;
    bool same_positions = true;
    bool any_touching = false;
    bool any_gap = false;       // a blank inside a row
    bool any_wide_gap = false;  // two or more together
    std::optional<std::size_t> spaced_row;
    std::optional<std::size_t> touching_row;
    std::size_t touching_at = 0;  // the letter of that row, from 1, that touches the next

  private:
    Positions first_filled_;
    Positions filled_;
};

CellLayout aligned(const RowsSeen& seen, std::size_t pitch) {
    CellLayout layout{Kind::aligned, {}, false, seen.indent, pitch, 0};
    layout.columns = (seen.end - 1 - seen.indent) / pitch + 1;
    return layout;
}

LayoutFound parted() {
    CellLayout layout;
    layout.kind = Kind::parted;
    return {layout, {}};
}

LayoutFound unclear_indent(const RowsSeen& seen) {
    return {{},
            LayoutFault{*seen.shifted_row,
                        "this row does not begin in the same column as the first, and has as many letters.",
                        "Begin all rows in the same column, or draw closed cells with '.', '#' or '·'."}};
}

// Every character stands alone.
LayoutFound layout_of_spaced(const RowsSeen& seen) {
    const bool in_step = seen.pitch >= 2;
    if (seen.same_positions) {
        // Wider gaps at the same place in all rows: a column of closed cells, or only blanks.
        if (in_step && aligned(seen, seen.pitch).columns > seen.filled_columns())
            return {
                {},
                LayoutFault{0, "its wider gaps may be closed cells, or blanks and nothing more.",
                            "Draw closed cells with '.', '#' or '·', and else put the same blanks between "
                            "all letters."}};
        return parted();
    }
    if (in_step && seen.same_counts && seen.shifted_row && !seen.any_wide_gap) return unclear_indent(seen);
    // Blanks that are cells show at the start of a row or as a gap; a row that only ends early is too short.
    if (in_step && (seen.shifted_row || seen.any_wide_gap)) return {aligned(seen, seen.pitch), {}};
    return parted();
}

// The separator that most rows have, of those that tables have. A single stray one is no table.
std::optional<char> table_separator(std::size_t rows,
                                    const std::function<const RowText&(std::size_t)>& read) {
    constexpr std::array separators{'\t', ';', ','};
    std::array<std::size_t, separators.size()> with{};
    for (std::size_t row = 0; row < rows; ++row) {
        const std::string_view text = read(row).text;
        for (std::size_t at = 0; at < separators.size(); ++at)
            if (text.find(separators[at]) != std::string_view::npos) ++with[at];
    }
    for (std::size_t at = 0; at < separators.size(); ++at)
        if (2 * with[at] > rows) return separators[at];
    return std::nullopt;
}

CellLayout layout_of_table(char separator, std::size_t rows,
                           const std::function<const RowText&(std::size_t)>& read) {
    CellLayout layout{Kind::separated, separator, true, static_cast<std::size_t>(-1), 1, 0};
    std::vector<std::string_view> fields;
    for (std::size_t row = 0; row < rows; ++row) {
        split_fields(read(row).text, separator, fields);
        const auto first =
            std::find_if(fields.begin(), fields.end(), [](std::string_view field) { return !field.empty(); });
        layout.indent = std::min(layout.indent, static_cast<std::size_t>(first - fields.begin()));
        layout.ends_in_separator &= fields.size() > 1 && fields.back().empty();
    }
    return layout;
}

// Whether all that stands between blanks is one letter each.
bool all_cells(std::size_t rows, const std::function<const RowText&(std::size_t)>& read,
               const std::function<bool(std::string_view)>& is_one_letter) {
    std::vector<std::string_view> cells;
    for (std::size_t row = 0; row < rows; ++row) {
        split_at_blanks(read(row), cells);
        if (!std::all_of(cells.begin(), cells.end(), is_one_letter)) return false;
    }
    return true;
}

}  // namespace

LayoutFound find_cell_layout(std::size_t rows, const std::function<const RowText&(std::size_t)>& read,
                             const std::function<bool(std::string_view)>& is_one_letter) {
    if (const auto separator = table_separator(rows, read))
        return {layout_of_table(*separator, rows, read), {}};

    RowsSeen seen;
    for (std::size_t row = 0; row < rows; ++row) seen.see(read(row));
    if (!seen.any_gap) {
        // A single column of letters that several characters make has no place for blanks.
        if (seen.any_touching && !seen.shifted_row && all_cells(rows, read, is_one_letter)) return parted();
        if (!seen.shifted_row) return {{}, {}};
        return seen.same_counts ? unclear_indent(seen) : LayoutFound{aligned(seen, 1), {}};
    }
    if (!seen.any_touching) return layout_of_spaced(seen);

    // Blanks between some: of letters that several characters make, or of columns that line up.
    const bool letters_alone = all_cells(rows, read, is_one_letter);
    bool same_groups = true;
    std::size_t groups = 0;
    std::vector<std::string_view> cells;
    for (std::size_t row = 0; row < rows; ++row) {
        split_at_blanks(read(row), cells);
        if (row == 0) groups = cells.size();
        same_groups &= cells.size() == groups;
    }
    if (letters_alone) return parted();
    if (seen.spaced_row)
        return {{},
                LayoutFault{*seen.touching_row,
                            "letter " + std::to_string(seen.touching_at) + " touches the next, and row " +
                                std::to_string(*seen.spaced_row + 1) + " has a blank after each.",
                            "Write blanks between the letters of all rows or of none; draw closed cells with "
                            "'.', '#' or '·'. Where a language writes one letter with several characters, "
                            "--locale says so."}};
    if (same_groups && groups > 1)
        return {{},
                LayoutFault{0, "its blanks may part letters of several characters, or be closed cells.",
                            "Draw closed cells with '.', '#' or '·'; --locale says where several characters "
                            "are one letter."}};
    return {aligned(seen, 1), {}};
}

void split_cells(const CellLayout& layout, const RowText& row, std::vector<std::string_view>& cells) {
    switch (layout.kind) {
        case Kind::packed:
            cells.clear();
            for (const std::string_view character : row.characters)
                if (!is_blank(character)) cells.push_back(character);
            return;
        case Kind::parted:
            split_at_blanks(row, cells);
            return;
        case Kind::aligned:
            cells.assign(layout.columns, {});
            for (std::size_t at = layout.indent; at < row.characters.size(); ++at)
                if (!is_blank(row.characters[at]))
                    cells[(at - layout.indent) / layout.pitch] = row.characters[at];
            return;
        case Kind::separated:
            split_fields(row.text, layout.separator, cells);
            if (layout.ends_in_separator) cells.pop_back();
            cells.erase(cells.begin(),
                        cells.begin() + static_cast<std::ptrdiff_t>(std::min(layout.indent, cells.size())));
            return;
    }
}

}  // namespace lode
