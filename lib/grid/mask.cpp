#include <algorithm>

#include <unicode/uchar.h>
#include <letterlode/grid.hpp>

#include "grid/rows_of_text.hpp"
#include "text/quoted.hpp"
#include "text/utf8.hpp"

namespace lode {

Mask::Mask(Size size, bool open) : size_(size), open_(size.cells(), open ? 1 : 0) {}

std::size_t Mask::open_count() const {
    return static_cast<std::size_t>(std::count(open_.begin(), open_.end(), std::uint8_t{1}));
}

int longest_run(const Mask& mask, Directions directions) {
    const Size size = mask.size();
    int longest = 0;
    std::vector<int> runs(size.cells());
    // Turned round a line is as long: four directions are enough.
    for (const Direction direction :
         {Direction::right, Direction::down, Direction::down_right, Direction::up_right}) {
        if (!directions.contains(direction) && !directions.contains(opposite(direction))) continue;
        // Each run grows from the cell behind, which must have been counted before: up-right comes from
        // below.
        const bool upward = step(direction).row < 0;
        for (int at = 0; at < size.rows; ++at)
            for (int column = 0; column < size.columns; ++column) {
                const Cell cell{upward ? size.rows - 1 - at : at, column};
                const auto index = [&](Cell of) {
                    return static_cast<std::size_t>(of.row) * static_cast<std::size_t>(size.columns) +
                           static_cast<std::size_t>(of.column);
                };
                const Cell behind = moved(cell, direction, -1);
                int run = 0;
                if (mask.open(cell)) run = 1 + (mask.inside(behind) ? runs[index(behind)] : 0);
                runs[index(cell)] = run;
                longest = std::max(longest, run);
            }
    }
    return longest;
}

Outcome<Mask> read_mask(std::string_view text, std::string_view source) {
    const auto rows = rows_of_text(text, source);
    if (!rows) return rows.refusal();

    int columns = 0;
    for (const auto& row : rows->rows) columns = std::max(columns, to_icu(row).countChar32());
    const auto size = checked_size(columns, static_cast<long long>(rows->rows.size()));
    if (!size) {
        Refusal refusal = size.refusal();
        refusal.source = source;
        refusal.message = place_in(source, 0) + refusal.message;
        return refusal;
    }

    Mask mask(*size, false);
    for (int row = 0; row < size->rows; ++row) {
        const icu::UnicodeString line = to_icu(rows->rows[static_cast<std::size_t>(row)]);
        int column = 0;
        for (std::int32_t at = 0; at < line.length(); ++column) {
            const UChar32 mark = line.char32At(at);
            at += U16_LENGTH(mark);
            if (is_closed_mark(mark) || mark == ' ') continue;
            if (!u_isalnum(mark)) {
                const int file_line = rows->first_line + row;
                return Refusal{Refusal::Reason::unusable,
                               place_in(source, file_line) + "column " + std::to_string(column + 1) +
                                   " of the mask holds " + quoted(to_utf8(icu::UnicodeString(mark))) + ".",
                               {},
                               {"Draw open cells with a letter or a digit (O, say) and closed ones with '.', "
                                "'#', '·' or a blank."},
                               std::string(source),
                               file_line,
                               column + 1};
            }
            mask.set({row, column}, true);
        }
    }
    if (mask.open_count() == 0)
        return Refusal{Refusal::Reason::unusable,
                       place_in(source, 0) + "the mask has no open cell.",
                       {},
                       {"Draw open cells with a letter or a digit (O, say)."},
                       std::string(source),
                       0};
    return mask;
}

}  // namespace lode
