#pragma once
// What the parts of a document are, as its pages are drawn: a tree of parts in reading order, and which
// stretch of which page belongs to which part. Nothing here knows how a PDF is written.
//
// A part is called as ISO 32000-1 calls structure types (14.8.4); what may stand in what follows the same
// clause.

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include <letterlode/path.hpp>

namespace lode {

// What a part of a document is: the standard structure types of ISO 32000-1, 14.8.4 (Sect, H1, H2, P, L, LI,
// Lbl, Table, TR, TH, TD, Figure, TOC, TOCI).
enum class Role : std::uint8_t {
    section,
    heading,
    subheading,
    paragraph,
    list,
    list_item,
    label,  // what an item of a list or of contents begins with: a number, a box to tick
    table,
    table_row,
    column_header,  // a TH for the cells below it
    row_header,     // a TH for the cells beside it
    table_cell,
    figure,
    contents,
    contents_item,
    decoration  // no part: passed over, wherever it is drawn
};

class PdfTags {
  public:
    // A stretch of a page: the pages count from 0, the stretches of each page as well.
    struct Content {
        int page = 0;
        int mark = 0;
    };
    using Kid = std::variant<std::size_t, Content>;  // another part, or what the part itself shows

    struct Part {
        std::string_view type;
        std::string_view scope{};   // of a TH
        std::string description{};  // of a Figure, a Table, a Link
        std::string language{};
        std::string said{};   // of a Span: what is to be read in the place of its glyphs
        std::string place{};  // of a Link: where it leads
        std::size_t parent = 0;
        std::vector<Kid> kids{};
        std::map<int, std::vector<Box>> extents{};  // by page, in points from its upper left corner
    };

    struct Place {
        int page = 0;
        Point at;  // points from the upper left corner
    };
    struct Bookmark {
        std::string title;
        std::string place;
        int level = 0;
    };

    PdfTags();

    // A part begins in the innermost one that is open, and ends. Throws std::logic_error where it may not
    // stand there, or where a figure has no description.
    void begin(Role role, std::string_view description, std::string_view language);
    void begin_link(std::string_view place, std::string_view description);
    void begin_span(std::string_view said);
    void end() noexcept { open_.pop_back(); }

    // The part that what is drawn now belongs to: none where it is decoration, as all is that is drawn in no
    // part or beside the parts of a section, a list, a table, a row or contents.
    std::optional<std::size_t> holder();
    // The same, or what the link or the span stands in that this part is: what texts in it are read as one
    // with.
    std::optional<std::size_t> block();
    // Begins a stretch of a page that shows a part.
    void add_content(std::size_t part, int page);
    // Told of what is drawn in that stretch: where, and which text with its blanks.
    void add_extent(std::size_t part, int page, const Box& points);
    void add_text(std::size_t part, std::string_view text);

    // Each name once, or std::logic_error.
    void set_place(std::string_view name, Place place);
    void add_bookmark(Bookmark bookmark) { bookmarks_.push_back(std::move(bookmark)); }

    [[nodiscard]] bool any_part() const { return parts_.size() > 1; }
    [[nodiscard]] const std::vector<Part>& parts() const { return parts_; }  // the first is the document
    [[nodiscard]] const std::map<std::string, Place, std::less<>>& places() const { return places_; }
    [[nodiscard]] const std::vector<Bookmark>& bookmarks() const { return bookmarks_; }
    // How many stretches each page has, by page; pages without any may be missing at the end.
    [[nodiscard]] const std::vector<int>& marks() const { return marks_; }

    // Throws std::logic_error where a link or a bookmark leads to no place.
    void check_places() const;

  private:
    struct Open {
        std::size_t part = 0;
        bool decoration = false;
    };
    std::size_t add_part(std::string_view type);
    [[nodiscard]] std::size_t last_body(std::size_t item, std::string_view type);

    std::vector<Part> parts_;
    std::vector<Open> open_;
    std::map<std::string, Place, std::less<>> places_;
    std::vector<Bookmark> bookmarks_;
    std::vector<int> marks_;
};

}  // namespace lode
