#pragma once
// The pages of a job sheet as they fill from top to bottom. What is set can be tried without a mark on paper
// first: the same calls, with drawing off, tell how many pages they take.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cut/job_sheet.hpp"
#include "print/pdf_document.hpp"

namespace lode {

// How large things are set. Lengths in mm, type in points.
struct SheetLook {
    double body_pt = 8;
    double load_height = 80;      // of a load's picture, at the most
    std::size_t loads_a_row = 2;  // at the least, where there are so many
    double step_height = 56;      // of a picture in the order of application, at the most
    double key = 88;              // the longer side of the answer key's grid
};

inline constexpr Colour quiet{0x62, 0x68, 0x6b};  // of what explains
inline constexpr Colour hairline{0xb8, 0xbc, 0xbf};
inline constexpr Colour ground{0xf1, 0xf2, 0xef};  // behind blanks and notices
inline constexpr Colour alert{0xb0, 0x2a, 0x1e};

class SheetPages {
  public:
    SheetPages(PdfDocument& document, const SheetLook& look, std::string running,
               std::optional<int> of_pages);

    // Whether marks are made: not while the pages are counted.
    [[nodiscard]] bool drawing() const { return of_pages_.has_value(); }
    [[nodiscard]] PdfDocument& document() { return document_; }
    [[nodiscard]] const SheetLook& look() const { return look_; }
    [[nodiscard]] TextStyle body() const { return {look_.body_pt, false, ink}; }
    [[nodiscard]] TextStyle bold() const { return {look_.body_pt, true, ink}; }
    [[nodiscard]] TextStyle small() const { return {look_.body_pt - 1, false, quiet}; }

    [[nodiscard]] int pages() const { return pages_; }
    [[nodiscard]] double left() const { return margin; }
    [[nodiscard]] double width() const { return document_.page().width_mm - 2 * margin; }
    [[nodiscard]] double room() const { return bottom() - y; }
    // What stayed unused at the foot of all pages but the last.
    [[nodiscard]] double blank() const { return blank_; }
    [[nodiscard]] double whole_room() const { return bottom() - margin; }

    double y = margin;  // where the next thing begins

    // Begins a new page unless so much room is left on this one.
    void need(double height);
    void new_page();
    // Sets the last page's foot.
    void finish();

    // A section's name over the whole width, with what explains it in finer type beside or below it. The
    // height that must be left for what follows is asked for.
    void section(std::string_view name, std::string_view explanation, double then);
    // In a column; gives the height.
    double paragraph(std::string_view text, Point corner, double width, const TextStyle& style,
                     std::size_t most_lines = 1'000);
    void text(std::string_view text, Point baseline, const TextStyle& style, Align align = Align::left,
              std::optional<double> most_width = {});

  private:
    static constexpr double margin = 12;
    static constexpr double foot = 7;
    [[nodiscard]] double bottom() const { return document_.page().height_mm - margin - foot; }

    PdfDocument& document_;
    SheetLook look_;
    std::string running_;
    std::optional<int> of_pages_;
    int pages_ = 1;
    double blank_ = 0;
};

// "187.3 mm (7.37 in)" and "187.3 x 210.5 mm (7.37 x 8.29 in)": as fine as a rule is read.
[[nodiscard]] std::string rule_text(double mm);
[[nodiscard]] std::string rule_text(double width_mm, double height_mm);

// A coloured square that stands for film, its upper left corner given.
void set_swatch(SheetPages& pages, Point corner, double side, Colour colour);

// The text, or its beginning with an ellipsis where it has more bytes than that: before it is measured, so
// that an endless one costs no time.
[[nodiscard]] std::string clipped(const std::string& text, std::size_t most_bytes);

// Whether film of this colour is hard to see on paper, so that what is cut from it needs an outline.
[[nodiscard]] bool is_pale(Colour colour);

// The parts of the sheet, each a file; each moves y on.
void set_title(SheetPages& pages, const JobSheet& sheet);
void set_films(SheetPages& pages, const JobSheet& sheet);   // job_sheet_films.cpp
void set_loads(SheetPages& pages, const JobSheet& sheet);   // job_sheet_loads.cpp
void set_order(SheetPages& pages, const JobSheet& sheet);   // job_sheet_order.cpp
void set_key(SheetPages& pages, const JobSheet& sheet);     // job_sheet_key.cpp
void set_advice(SheetPages& pages, const JobSheet& sheet);  // job_sheet_advice.cpp

// Of the artwork's layers in order of application, each once.
[[nodiscard]] std::vector<Colour> colours_of(const Artwork& artwork);
// "A" to "Z", then "27" and so on.
[[nodiscard]] std::string film_letter(std::size_t film);

}  // namespace lode
