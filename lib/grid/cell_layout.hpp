#pragma once
// How a text sets the cells of a grid apart. People write letters one against the other, with blanks between,
// or as the fields of a table; and a closed cell as a mark, as an empty field, or as a blank where the
// columns of all rows line up.

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace lode {

struct CellLayout {
    enum class Kind {
        packed,     // every character is a cell; blanks at either end are nothing
        parted,     // blanks part the cells
        aligned,    // each cell has its column in the text; a blank there is a closed cell
        separated,  // fields of a table; an empty one is a closed cell
    };
    Kind kind = Kind::packed;
    char separator = '\t';           // where separated
    bool ends_in_separator = false;  // where separated: every row does, and nothing is meant by it
    std::size_t indent = 0;   // where aligned: columns of the text before the first cells; where separated:
                              // empty fields that every row begins with
    std::size_t pitch = 1;    // where aligned: columns of the text from cell to cell
    std::size_t columns = 0;  // where aligned: cells of a row
};

// A row as it is read: what cannot be seen left out. The characters are user-perceived ones, each a part of
// the text, blanks included.
struct RowText {
    std::string_view text;
    std::vector<std::string_view> characters;
};

// A text whose layout is not clear; `row` counts from 0.
struct LayoutFault {
    std::size_t row = 0;
    std::string fault;
    std::string advice;
};

struct LayoutFound {
    CellLayout layout;
    std::optional<LayoutFault> fault;
};

// Looks at all rows, once or twice. `read(row)` gives a row, until it is called again; `is_one_letter` says
// whether characters that stand together are one letter. Linear in the text.
[[nodiscard]] LayoutFound find_cell_layout(std::size_t rows,
                                           const std::function<const RowText&(std::size_t)>& read,
                                           const std::function<bool(std::string_view)>& is_one_letter);

// The cells of a row by the layout, as they are written; an empty text is a closed cell. A row of an aligned
// text that ends early is closed at its end. Overwrites `cells`.
void split_cells(const CellLayout& layout, const RowText& row, std::vector<std::string_view>& cells);

}  // namespace lode
