// The page itself stands in lib/print/solve as HTML, CSS and JavaScript; what is written here are its
// letters, its lists and its texts.
//
// Scripts and styles are named by their digests, so that nothing else would run even if it came through
// unescaped; the page has no style of its own in an attribute, and what depends on the puzzle is handed over
// as text and as data attributes.
//
// How a choice is verified: by its letters. A certified grid holds each listed word in its expected copies
// and nowhere else, so a line that spells a word is one of its places, and the page needs to know none of
// them beforehand. A digest of each place would hide nothing either: a grid has few lines, and all could be
// tried. Places stand in the file only where there is a key.

#include "print/solve_page.hpp"

#include <algorithm>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/print.hpp>

#include "print/html_text.hpp"
#include "print/solve_parts.hpp"

namespace lode {

namespace {

// Of our own, each seen on the one ground or the other.
constexpr std::array own_colours{
    Colour{0x0B, 0x7A, 0x5B}, Colour{0xB0, 0x12, 0x4E}, Colour{0x1F, 0x5F, 0xBF}, Colour{0x9A, 0x5B, 0x00},
    Colour{0x7A, 0x3F, 0xB0}, Colour{0x4D, 0x6B, 0x00}, Colour{0x7F, 0xD1, 0xB6}, Colour{0xFF, 0x8F, 0xB0},
    Colour{0x8F, 0xB8, 0xFF}, Colour{0xF0, 0xB4, 0x5A}, Colour{0xCD, 0xA2, 0xF5}, Colour{0xB7, 0xD3, 0x6A}};

std::vector<Colour> seen_among(Colour ground, std::span<const Colour> colours) {
    std::vector<Colour> seen;
    std::copy_if(colours.begin(), colours.end(), std::back_inserter(seen),
                 [&](Colour colour) { return contrast_ratio(colour, ground) >= least_contrast_of_marks; });
    return seen;
}

std::string colour_list(Colour ground, std::span<const Colour> wanted) {
    std::string list;
    for (const Colour colour : seen_on(ground, wanted)) list += (list.empty() ? "" : " ") + to_text(colour);
    return list;
}

// The language of the words; an empty one says that it is not known.
std::string language(const Puzzle& puzzle) {
    const std::string& locale = puzzle.recipe.text.locale;
    return " lang=\"" + (locale == "root" ? "" : html_text(locale)) + "\"";
}

// How a letter is written as the page compares it, one blank between two.
std::string spelled_out(const std::vector<std::string>& letters) {
    std::string text;
    for (const std::string& letter : letters) text += (text.empty() ? "" : " ") + html_text(letter);
    return text;
}

// Letters of two signs and of more are set smaller, so that they keep within their cells.
std::vector<std::string> openings_of_cells(const Alphabet& alphabet) {
    TextRules rules;
    rules.letters = LetterCase::keep;
    const auto segmenter = Segmenter::open(rules);
    std::vector<std::string> cells;
    for (std::size_t i = 0; i < alphabet.size(); ++i) {
        const std::string& letter = alphabet.text(static_cast<Letter>(i));
        const std::size_t signs = segmenter ? segmenter->clusters(letter).size() : 1;
        cells.push_back((signs > 2    ? "<td class=\"more\">"
                         : signs == 2 ? "<td class=\"two\">"
                                      : "<td>") +
                        html_text(letter));
    }
    return cells;
}

// A cell's end tag can be left out (HTML, 13.1.2.4), which makes large pages a third smaller; not a row's,
// since the line end after it would belong to the last cell.
std::string grid_markup(const LetteredGrid& puzzle) {
    const std::vector<std::string> cells = openings_of_cells(puzzle.alphabet);
    const auto [rows, columns] = puzzle.grid.size();
    std::string markup;
    for (int row = 0; row < rows; ++row) {
        markup += "<tr>";
        for (int column = 0; column < columns; ++column) {
            const Letter letter = puzzle.grid[{row, column}];
            markup += letter < cells.size() ? cells[letter] : "<td class=\"closed\">";
        }
        markup += "</tr>\n";
    }
    return markup;
}

std::string bdi(std::string_view text) {
    return "<bdi>" + html_text(text) + "</bdi>";
}

std::string word_items(const std::vector<PlacedWord>& words) {
    std::string items;
    for (const PlacedWord& word : words)
        items += "<li data-letters=\"" + spelled_out(word.letters) + "\">" + bdi(word.shown) +
                 " <span class=\"state\"></span></li>\n";
    return items;
}

std::string key_markup_of(const Puzzle& puzzle, const std::vector<PlacedWord>& words) {
    const auto number = [](int value) { return std::to_string(value); };
    std::string rows;
    for (const PlacedWord& word : words) {
        const Cell first = word.placed.first;
        const int steps = word.letters.empty() ? 0 : static_cast<int>(word.letters.size()) - 1;
        const Cell last = moved(first, word.placed.direction, steps);
        rows += "<tr data-ends=\"" + number(first.row) + ' ' + number(first.column) + ' ' + number(last.row) +
                ' ' + number(last.column) + "\"><th scope=\"row\"" + language(puzzle) + ">" +
                bdi(word.shown) + "</th><td>" + number(first.row + 1) + "</td><td>" +
                number(first.column + 1) + "</td><td>" + std::string(name(word.placed.direction)) +
                "</td></tr>\n";
    }
    const std::string& message = puzzle.recipe.message;
    return "<section id=\"key\" aria-labelledby=\"key-heading\" hidden>\n"
           "<h2 id=\"key-heading\">Key</h2>\n"
           "<p>Where each word has its first letter, and which way it runs. Rows are counted from the top, "
           "columns from the left.</p>\n"
           "<table translate=\"no\">\n<thead><tr><th scope=\"col\">Word</th><th scope=\"col\">Row</th>"
           "<th scope=\"col\">Column</th><th scope=\"col\">Direction</th></tr></thead>\n<tbody>\n" +
           rows + "</tbody>\n</table>\n" +
           (message.empty() ? ""
                            : "<p>The letters left over spell, row by row: <span translate=\"no\"" +
                                  language(puzzle) + ">" + bdi(message) + "</span></p>\n") +
           "</section>\n";
}

// By what the browser knows the puzzle again: FNV-1a of 64 bits (Fowler, Noll, Vo) over all that is shown of
// it, each text ended by a byte that none holds.
std::string puzzle_hash(const Puzzle& puzzle, const std::vector<PlacedWord>& words) {
    std::uint64_t hash = 0xCBF29CE484222325u;
    const auto take = [&](std::string_view text) {
        for (const char byte : text) hash = (hash ^ static_cast<unsigned char>(byte)) * 0x100000001B3u;
        hash = (hash ^ 0xFFu) * 0x100000001B3u;
    };
    const auto [rows, columns] = puzzle.grid.grid.size();
    take(std::to_string(rows) + 'x' + std::to_string(columns));
    for (const Letter letter : puzzle.grid.grid.letters())
        take(letter < puzzle.grid.alphabet.size() ? std::string_view(puzzle.grid.alphabet.text(letter)) : "");
    for (const PlacedWord& word : words)
        for (const std::string& letter : word.letters) take(letter);
    std::string text;
    for (int shift = 60; shift >= 0; shift -= 4) text += "0123456789abcdef"[hash >> shift & 15];
    return text;
}

}  // namespace

std::vector<Colour> seen_on(Colour ground, std::span<const Colour> wanted) {
    std::vector<Colour> seen = seen_among(ground, wanted);
    return seen.empty() ? seen_among(ground, own_colours) : seen;
}

std::string solve_page(const Worksheet& worksheet, const PrintOptions& options) {
    const SolveParts& parts = solve_parts();
    const Puzzle& puzzle = worksheet.puzzle;
    const std::vector<PlacedWord> words = listed(puzzle, options.order);
    const bool right_to_left = !words.empty() && is_right_to_left(words.front().shown);
    return filled_in(
        parts.page,
        {{"style-hash", std::string(parts.style_hash)},
         {"script-hash", std::string(parts.script_hash)},
         {"title", worksheet.title.empty() ? "Word grid" : html_text(worksheet.title)},
         {"style", std::string(parts.style)},
         {"hash", puzzle_hash(puzzle, words)},
         {"lang", language(puzzle)},
         {"version", worksheet.version.empty() ? "" : "<p>Version " + bdi(worksheet.version) + "</p>\n"},
         {"cells", grid_markup(puzzle.grid)},
         {"light", colour_list(solve_ground, options.colours)},
         {"dark", colour_list(solve_ground_dark, options.colours)},
         {"key-button", options.key ? "<button type=\"button\" id=\"show-key\" aria-pressed=\"false\" "
                                      "aria-controls=\"key\">Show the key</button>\n"
                                    : ""},
         {"list-dir", right_to_left ? " dir=\"rtl\"" : ""},
         {"words", word_items(words)},
         {"key", options.key ? key_markup_of(puzzle, words) : ""},
         {"script", std::string(parts.script)}});
}

}  // namespace lode
