#pragma once
// Puzzles for paper and screen: worksheets with their answer keys as PDF, the same as plain text, and a page
// to solve a puzzle on in a browser. The same call gives the same bytes.
//
//     const auto puzzle = make(recipe);
//     const std::array sheets{Worksheet{*puzzle, "Herb bed"}};
//     const auto pages = print_worksheets(sheets, {});
//     if (pages) write_file("herb-bed.pdf", pages->pdf, disk);

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/colour.hpp>
#include <letterlode/export.hpp>
#include <letterlode/outcome.hpp>
#include <letterlode/paper.hpp>
#include <letterlode/puzzle.hpp>

namespace lode {

/// In which order a worksheet lists its words: as their language sorts them, as they were given, or the
/// shortest first.
enum class ListOrder : std::uint8_t { alphabetical, given, length };
[[nodiscard]] LODE_API std::string_view name(ListOrder order);
[[nodiscard]] LODE_API std::optional<ListOrder> list_order_named(std::string_view name);

/// Lines between the cells of a grid.
enum class GridLines : std::uint8_t { none, light, full };
[[nodiscard]] LODE_API std::string_view name(GridLines lines);
[[nodiscard]] LODE_API std::optional<GridLines> grid_lines_named(std::string_view name);

/// How an answer key marks the words: by a ring around each, by a line through its letters, or by all other
/// letters being grey.
enum class KeyMarks : std::uint8_t { rings, lines, greyed };
[[nodiscard]] LODE_API std::string_view name(KeyMarks marks);
[[nodiscard]] LODE_API std::optional<KeyMarks> key_marks_named(std::string_view name);

/// A puzzle as it is printed.
struct Worksheet {
    Puzzle puzzle;             ///< to be solved
    std::string title;         ///< above the grid; may be empty
    std::string version = {};  ///< "A"; empty where there is one only
};

/// How worksheets are printed. Type is in points, 72 to the inch; a letter's size is that of its font.
struct PrintOptions {
    Paper page = Paper::a4;   ///< the sheet
    bool landscape = false;   ///< lying on its long side
    double margin_mm = 12.7;  ///< half an inch: more than any printer leaves white (common practice)
    std::string font;         ///< family; empty: DejaVu Sans
    ListOrder order = ListOrder::alphabetical;  ///< of the words below the grid
    GridLines grid_lines = GridLines::none;     ///< between cells
    std::string name_line;                      ///< "Name": this text and a line to write on; empty: none
    std::string date_line;                      ///< likewise: "Date"
    bool large_print = false;  ///< letters and list of large_print_pt or more, where the page allows it
    bool key = true;           ///< an answer key for each worksheet, after all of them
    KeyMarks key_marks = KeyMarks::rings;  ///< of words in the key
    std::vector<Colour> colours;           ///< of the key's marks, in turn; none: greys
    std::string contents;                  ///< the title of a page of contents in front; empty: no such page
    std::optional<std::int64_t> date;      ///< of the document, in seconds since 1970
};
/// The least that letters of a grid are printed in. Judgement: what newspapers set their text in.
inline constexpr double least_letter_pt = 8;
inline constexpr double least_list_pt = 8;  ///< likewise, of a list
/// UKAAF G003: clear print is 12 pt at the least; large print 16 pt at the least, 18 at best.
inline constexpr double clear_print_pt = 12;
inline constexpr double large_print_pt = 18;              ///< of UKAAF G003, the best
inline constexpr std::size_t most_worksheets = 1'000;     ///< of one document
inline constexpr std::size_t most_heading_bytes = 2'000;  ///< of a title, a label
inline constexpr double least_print_margin_mm = 4;        ///< what printers reach
inline constexpr double most_print_margin_mm = 50;        ///< leaves half of a sheet

/// A document, and what its reader will find.
struct PrintedPages {
    std::string pdf;                 ///< the file's bytes
    int pages = 0;                   ///< keys and contents among them
    double letter_pt = 0;            ///< of the grids, the least of all worksheets
    double list_pt = 0;              ///< of the lists, the least
    bool is_large_enough = true;     ///< false: large print was asked for and is not reached
    std::vector<std::string> notes;  ///< plain sentences: what came out otherwise than might be expected
};

/// Worksheets, each on its page, then their keys. Where the list leaves too little room for the grid it has a
/// page of its own, which is told. Refused as unusable: no worksheet or more than most_worksheets; a grid
/// whose letters would be smaller than least_letter_pt, naming what fits; a margin beyond its bounds; a title
/// or a label of more than most_heading_bytes; a font that is not there.
[[nodiscard]] LODE_API Outcome<PrintedPages> print_worksheets(std::span<const Worksheet> worksheets,
                                                              const PrintOptions& options);

/// What was printed, as JSON described by the schema in data/schema: pages, sizes, notes, and of each
/// worksheet its title, its version, its seed and its grid's size.
[[nodiscard]] LODE_API std::string to_json(const PrintedPages& pages, std::span<const Worksheet> worksheets);

/// A worksheet as plain text, for a screen reader or a braille embosser: its title, the grid row by row, the
/// words, and the key after a form feed (U+000C). Lines have at most 40 characters where words allow it, as
/// pages of braille are wide (common practice). Of the options order, key, name_line and date_line count.
[[nodiscard]] LODE_API std::string worksheet_text(const Worksheet& worksheet, const PrintOptions& options);

/// The puzzle as a page of HTML to be solved by mouse, touch or keyboard; whole in one file, and nothing is
/// loaded. Of the options order, key and colours count; without a key there is no button that shows it.
[[nodiscard]] LODE_API std::string solve_page(const Worksheet& worksheet, const PrintOptions& options);

/// The listed words in an order; words of one length, or that sort alike, as they were given.
[[nodiscard]] LODE_API std::vector<PlacedWord> listed(const Puzzle& puzzle, ListOrder order);

/// Colours for the key's marks that go together: they differ in lightness too, for those who see few hues,
/// and each has a contrast of 3 and more with paper.
inline constexpr std::array<Colour, 6> key_colours{{{0x1b, 0x6c, 0xa8},
                                                    {0xb4, 0x3c, 0x1f},
                                                    {0x2e, 0x7d, 0x4f},
                                                    {0x7a, 0x3e, 0x9d},
                                                    {0x9a, 0x6a, 0x00},
                                                    {0x3f, 0x4a, 0x5a}}};

}  // namespace lode
