#pragma once
// Entries set in columns, filled one after the other: a worksheet's words, an answer key's table. An entry
// that is wider than its column has several lines, and is never parted between columns.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "print/pdf_document.hpp"

namespace lode {

struct ListColumn {
    std::size_t first = 0;  // entry
    std::size_t count = 0;
};

struct ListColumns {
    double size_pt = 0;
    double column_mm = 0;  // width of a column, and from its edge to the next one's
    double gap_mm = 0;
    double height_mm = 0;  // heads included
    std::vector<ListColumn> columns;

    [[nodiscard]] double width_mm() const {
        const auto count = static_cast<double>(columns.size());
        return count * column_mm + (count - 1) * gap_mm;
    }
    [[nodiscard]] std::size_t entries() const {
        return columns.empty() ? 0 : columns.back().first + columns.back().count - columns.front().first;
    }
};

class ListFlow {
  public:
    // fixed_em: what stands beside each entry in a column, in em of the list's type; head_lines: lines above
    // each column's entries. The document must live as long.
    ListFlow(const PdfDocument& document, std::vector<std::string> entries, double fixed_em = 0,
             double head_lines = 0);

    [[nodiscard]] const std::vector<std::string>& entries() const { return entries_; }
    [[nodiscard]] double fixed_em() const { return fixed_em_; }
    [[nodiscard]] double head_lines() const { return head_lines_; }

    // All entries from `first` on, over the whole width, in as many columns as make them lowest.
    [[nodiscard]] ListColumns lowest(std::size_t first, double width_mm, double size_pt) const;
    // All entries in columns of this height, none of them broken: as narrow as that can be.
    [[nodiscard]] ListColumns narrowest(double height_mm, double size_pt) const;
    // As many entries from `first` on as this box holds; at least one, whether it fits or not.
    [[nodiscard]] ListColumns as_many(std::size_t first, double width_mm, double height_mm,
                                      double size_pt) const;

    // An entry's lines in a column.
    [[nodiscard]] std::vector<std::string> lines(std::size_t entry, const ListColumns& in) const;

  private:
    [[nodiscard]] double column_width(double width_mm, std::size_t columns, double size_pt) const;
    [[nodiscard]] double text_width(double column_mm, double size_pt) const;
    [[nodiscard]] std::vector<std::size_t> line_counts(std::size_t first, double column_mm,
                                                       double size_pt) const;
    // The most columns in which no word is broken; 1 where that needs breaking even so.
    [[nodiscard]] std::size_t most_columns(double width_mm, double size_pt) const;

    const PdfDocument& document_;
    std::vector<std::string> entries_;
    std::vector<double> widths_em_;
    double widest_em_ = 0;
    double widest_piece_em_ = 0;  // what stands between blanks
    double fixed_em_ = 0;
    double head_lines_ = 0;
};

}  // namespace lode
