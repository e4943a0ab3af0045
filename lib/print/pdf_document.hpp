#pragma once
// Pages as PDF: real text that can be searched and copied, shapes with their curves, lines, tables.
//
// Millimetres from the page's upper left corner, x to the right, y down; sizes of type in points, of which an
// inch has 72. The same calls give the same bytes: no date is written unless one is given.
//
// What is drawn while a tag lives has the tag's role for those who hear the page or have it in braille; what
// is drawn outside all tags is decoration to them, and passed over. Tags follow each other in reading order.
//
//     PdfDocument pages({210, 297}, "Tool shed", PrintFonts::open(...));
//     {
//         const auto heading = pages.tag(Role::heading);
//         pages.text("Words", {20, 20}, {14, true});
//     }
//     pages.add_page();
//     ...
//     pages.bytes();

#include <cairo.h>

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <letterlode/colour.hpp>
#include <letterlode/paper.hpp>
#include <letterlode/path.hpp>

#include "print/pdf_tags.hpp"
#include "print/print_fonts.hpp"

namespace lode {

inline constexpr double points_a_mm = 72 / 25.4;
inline constexpr Colour ink{0x1c, 0x1f, 0x21};

struct TextStyle {
    double size_pt = 10;
    bool bold = false;
    Colour colour = ink;
};
enum class Align : std::uint8_t { left, centre, right };

struct LineStyle {
    double width_mm = 0.25;
    Colour colour = ink;
    std::vector<double> dashes_mm;  // lengths of dashes and gaps by turns; none: a line without gaps
};

struct TableColumn {
    double width_mm = 0;
    Align align = Align::left;
};

class PdfDocument {
  public:
    // Begins with one page. Calls for text need fonts, and throw std::logic_error where there are none.
    PdfDocument(PageSize page, std::string_view title, std::optional<PrintFonts> fonts = {});

    [[nodiscard]] PageSize page() const { return page_; }
    [[nodiscard]] int pages() const { return pages_; }
    void add_page();

    // The date of the document, in seconds since 1970 (as SOURCE_DATE_EPOCH counts them).
    void set_date(std::int64_t seconds);

    void fill(const Path& path, Colour colour, double opacity = 1);
    void stroke(const Path& path, const LineStyle& style);
    void line(Point from, Point to, const LineStyle& style);
    void fill(const Box& box, Colour colour, double opacity = 1);
    void stroke(const Box& box, const LineStyle& style);

    // As long as one of these lives, what is drawn is clipped to a box, or moved, then scaled about the place
    // moved to; a negative scale mirrors. They end in the opposite order, before the page does.
    class [[nodiscard]] Kept {
      public:
        Kept(Kept&&) noexcept = default;
        Kept& operator=(Kept&&) = delete;
        ~Kept() = default;

      private:
        friend class PdfDocument;
        struct Restore {
            void operator()(cairo_t* context) const { cairo_restore(context); }
        };
        explicit Kept(cairo_t* context) : context_(context) {}
        std::unique_ptr<cairo_t, Restore> context_;
    };
    Kept clip(const Box& box);
    Kept place(Point at, double scale_x = 1, double scale_y = 1);

    // As long as it lives, what is drawn belongs to a part of the document; parts hold parts, as Role allows
    // (std::logic_error otherwise: a cell outside a row, text of a list outside its items), and may go on
    // over several pages. A section, a list, a table, a row and contents hold parts alone: what is drawn
    // beside these, a page's foot, say, or the lines of a grid, is decoration; so is all that is drawn in a
    // decoration.
    //
    // The description is what is heard in the place of a figure, which must have one, and before a table; the
    // other roles pass it over. The language is the part's own where the document's is another one.
    class [[nodiscard]] Tagged {
      public:
        Tagged(Tagged&& other) noexcept : tags_(std::exchange(other.tags_, nullptr)) {}
        Tagged& operator=(Tagged&&) = delete;
        ~Tagged() {
            if (tags_) tags_->end();
        }

      private:
        friend class PdfDocument;
        explicit Tagged(PdfTags* tags) : tags_(tags) {}
        PdfTags* tags_;
    };
    Tagged tag(Role role, std::string_view description = {}, std::string_view language = {});

    // The language of the whole text, as BCP 47 names it ("en", "cy"); none is written where none is set.
    void set_language(std::string_view language);
    // A place on this page that links and bookmarks lead to; names are the caller's. A name that is set
    // twice, or (when the document ends) not at all, throws std::logic_error.
    void set_place(std::string_view name, Point at);
    // What is drawn while it lives is a part that leads to a place, which may be set later. The description
    // is told beside the link; without one it is the link's own text.
    Tagged link(std::string_view place, std::string_view description = {});
    // A line of the outline that a reader shows beside the pages; level 0 is the outermost.
    void bookmark(std::string_view title, std::string_view place, int level = 0);

    // How wide a line is, in mm.
    [[nodiscard]] double width_of(std::string_view text, const TextStyle& style) const;
    // From one line to the next, in mm.
    [[nodiscard]] static double line_pitch(const TextStyle& style) {
        return 1.32 * style.size_pt / points_a_mm;
    }
    // The text in lines no wider than this: broken at blanks, and within a word where one alone is wider. A
    // line's end in the text is kept.
    [[nodiscard]] std::vector<std::string> wrapped(std::string_view text, double width_mm,
                                                   const TextStyle& style) const;
    // The text, or as much of it as fits in front of an ellipsis.
    [[nodiscard]] std::string shortened(std::string_view text, double width_mm, const TextStyle& style) const;

    // One line on its baseline, which starts, has its middle or ends at the point; shortened to the width, or
    // else to what the page has on that side. Texts of one part that follow each other are words apart.
    void text(std::string_view text, Point baseline, const TextStyle& style, Align align = Align::left,
              std::optional<double> most_width_mm = {});
    // Wrapped lines in a column whose upper left corner is given; the last of the lines that are allowed is
    // shortened where more would follow. Gives the height that was used.
    double paragraph(std::string_view text, Point corner, double width_mm, const TextStyle& style,
                     Align align = Align::left, std::size_t most_lines = 1'000);

    // The lines that a text was wrapped in, from the first one's baseline on: read as the text is, whether it
    // was broken at a blank or within a word.
    void lines(std::string_view text, std::span<const std::string> lines, Point baseline,
               const TextStyle& style, Align align, double width_mm);

    // A row of a table: a cell for each column, wrapped; a fine line below. Gives the height, which
    // row_height tells beforehand, so that the caller can begin a new page.
    double row(Point corner, std::span<const TableColumn> columns, std::span<const std::string> cells,
               const TextStyle& style);
    [[nodiscard]] double row_height(std::span<const TableColumn> columns, std::span<const std::string> cells,
                                    const TextStyle& style) const;

    // Ends the document, and the parts that are open: nothing can be drawn afterwards. Throws std::bad_alloc
    // where memory ran out. A document with parts, a language, places or bookmarks takes twice the time: it
    // is written by Cairo, and again with its structure.
    [[nodiscard]] std::string bytes();

  private:
    struct Line {
        std::string text;
        bool continues = false;    // the line before, of the same text
        bool blank_after = false;  // that the line's end stands for
    };
    // Begins and ends stretches of the page as its parts ask for; before anything is drawn.
    void mark();
    void end_mark();
    // That the part being drawn reaches this far, in the units in which it is drawn.
    void note_extent(Box box);
    void note_path();
    void note_stroke();
    void show(const Line& line, Point baseline, const TextStyle& style, Align align,
              std::optional<double> most_width_mm);
    void show_glyphs(const ShapedRun& run, double left, double baseline, double em);
    [[nodiscard]] ShapedLine shaped(std::string_view text, const TextStyle& style) const;
    void set_colour(Colour colour, double opacity);
    void set_line(const LineStyle& style);

    struct Destroy {
        void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
        void operator()(cairo_t* context) const { cairo_destroy(context); }
    };
    PageSize page_;
    int pages_ = 1;
    std::optional<PrintFonts> fonts_;
    std::unique_ptr<std::string> bytes_;  // Cairo knows its address
    std::unique_ptr<cairo_surface_t, Destroy> surface_;
    std::unique_ptr<cairo_t, Destroy> context_;
    std::string title_;
    std::string language_;
    std::string date_;
    std::unique_ptr<PdfTags> tags_;        // what Tagged holds on to, wherever the document is moved
    std::optional<std::size_t> marked_;    // the part whose stretch of the page is open
    std::optional<std::size_t> shown_in_;  // the block that has the last text
};

}  // namespace lode
