#include <letterlode/grid.hpp>

#include "grid/cell_letters.hpp"

namespace lode {
namespace {

bool is_ascii(std::string_view text) {
    for (const char byte : text)
        if (static_cast<unsigned char>(byte) >= 0x80) return false;
    return true;
}

Refusal bad_cell(Cell cell, const std::string& fault, const std::string& advice) {
    return {
        Refusal::Reason::unusable,
        "row " + std::to_string(cell.row + 1) + ", column " + std::to_string(cell.column + 1) + " " + fault,
        {},
        {advice},
        {},
        cell.row + 1,
        cell.column + 1};
}

}  // namespace

Outcome<LetteredGrid> read_cells(std::span<const std::optional<std::string_view>> cells, Size size,
                                 const Segmenter& segmenter) {
    const auto checked = checked_size(size.columns, size.rows);
    if (!checked) return checked.refusal();
    if (cells.size() != size.cells())
        throw std::invalid_argument("there are not as many cells as rows times columns");
    CellLetters letters(segmenter);
    LetteredGrid read{{}, Grid(size, closed_cell)};
    auto written = cells.begin();
    for (int row = 0; row < size.rows; ++row)
        for (int column = 0; column < size.columns; ++column, ++written) {
            if (!*written) continue;
            const Cell cell{row, column};
            std::string composed;
            std::string_view text = **written;
            if (!is_ascii(text)) {
                auto normal = normalised(text);
                if (!normal) return bad_cell(cell, "holds no UTF-8 text.", "Convert it to UTF-8.");
                composed = std::move(*normal);
                text = composed;
            }
            const auto letter = letters.letter(text);
            if (!letter) {
                const auto [fault, advice] = letters.fault(text);
                return bad_cell(cell, fault, advice);
            }
            read.grid[cell] = *letter;
        }
    read.alphabet = letters.take();
    return read;
}

}  // namespace lode
