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

// In one walk down the rows, on which a run grows from the cell before it, or from one of the three above.
// Turned round a line is as long: four directions are enough.
int longest_run(const Mask& mask, Directions directions) {
    const Size size = mask.size();
    struct Runs {
        int right = 0;
        int down = 0;
        int down_right = 0;
        int down_left = 0;
    };
    // By column; one beyond each side stays closed.
    std::vector<Runs> runs(static_cast<std::size_t>(size.columns) + 2);
    Runs longest;
    for (int row = 0; row < size.rows; ++row) {
        int left_above = 0;
        for (int column = 0; column < size.columns; ++column) {
            Runs& here = runs[static_cast<std::size_t>(column) + 1];
            const Runs above = here;
            here = {};
            if (mask.open({row, column}))
                here = {1 + (&here)[-1].right, 1 + above.down, 1 + left_above, 1 + (&here)[1].down_left};
            left_above = above.down_right;
            longest = {std::max(longest.right, here.right), std::max(longest.down, here.down),
                       std::max(longest.down_right, here.down_right),
                       std::max(longest.down_left, here.down_left)};
        }
    }
    const auto wanted = [&](Direction direction, int length) {
        return directions.contains(direction) || directions.contains(opposite(direction)) ? length : 0;
    };
    return std::max({wanted(Direction::right, longest.right), wanted(Direction::down, longest.down),
                     wanted(Direction::down_right, longest.down_right),
                     wanted(Direction::down_left, longest.down_left)});
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
