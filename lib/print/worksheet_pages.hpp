#pragma once
// Worksheets and keys as pages, one after the other. What a worksheet needs is worked out before its first
// mark is made, so that the contents in front can name pages.

#include <letterlode/print.hpp>

#include "print/list_columns.hpp"
#include "print/pdf_document.hpp"
#include "print/sheet_layout.hpp"

namespace lode {

// Of a key's grid; where letters are smaller, its table alone tells where words stand.
inline constexpr double least_key_letter_pt = 5;

// What all pages share.
struct PageFrame {
    PageSize paper;
    double margin_mm = 0;
    double foot_mm = 0;  // kept for the page's number; 0 where pages have none
    bool large_print = false;

    [[nodiscard]] Box room() const {
        return {margin_mm, margin_mm, paper.width_mm - margin_mm, paper.height_mm - margin_mm - foot_mm};
    }
};

// A worksheet, or its key, laid out.
struct LaidOutSheet {
    const Worksheet& worksheet;
    bool is_key = false;
    std::vector<PlacedWord> words;  // in the list's order
    ListFlow list;
    SheetLayout layout;
    double letter_share = 0;
    std::vector<ListColumns> more_pages;  // of the list
    bool is_right_to_left = false;
    bool has_cut_title = false;  // too long even in several small lines

    [[nodiscard]] int pages() const { return 1 + static_cast<int>(more_pages.size()); }
};

// Refused as unusable: a grid whose letters would be too small.
[[nodiscard]] Outcome<LaidOutSheet> lay_out_worksheet(const PdfDocument& document, const PageFrame& frame,
                                                      const Worksheet& worksheet,
                                                      const PrintOptions& options);
[[nodiscard]] LaidOutSheet lay_out_key(const PdfDocument& document, const PageFrame& frame,
                                       const Worksheet& worksheet, const PrintOptions& options);

// Draws onto the document's last page, which is empty, and onto as many more as the sheet has; `place` is
// what bookmarks and contents lead to.
void draw(PdfDocument& document, const PageFrame& frame, const LaidOutSheet& sheet,
          const PrintOptions& options, const std::string& place, int first_page);

// "Herb bed, A"
[[nodiscard]] std::string heading_text(const Worksheet& worksheet);

// The page's number at its foot, where the frame keeps room for it.
void draw_foot(PdfDocument& document, const PageFrame& frame, int page);

}  // namespace lode
