// A worksheet in plain text, line by line as it is heard or embossed.

#include <unicode/uchar.h>
#include <unicode/unistr.h>

#include <algorithm>

#include <letterlode/print.hpp>

#include "puzzle/place_text.hpp"
#include "text/direction.hpp"
#include "text/display_width.hpp"

namespace lode {

namespace {

constexpr std::size_t braille_width = 40;

// A line as a terminal and an embosser may have it: valid UTF-8 without control characters.
std::string as_line(std::string_view text) {
    auto line =
        icu::UnicodeString::fromUTF8(icu::StringPiece(text.data(), static_cast<std::int32_t>(text.size())));
    for (std::int32_t i = 0; i < line.length(); ++i)
        if (u_iscntrl(line.charAt(i))) line.setCharAt(i, u' ');
    std::string clean;
    return line.toUTF8String(clean);
}

std::string heading_of(const Worksheet& worksheet) {
    std::string heading = as_line(worksheet.title);
    if (!worksheet.version.empty())
        heading += (heading.empty() ? "" : ", ") + std::string("version ") + worksheet.version;
    return heading;
}

std::string count_of(std::size_t count, const std::string& one) {
    return std::to_string(count) + " " + one + (count == 1 ? "" : "s");
}

// Rows with their numbers in front; a blank between letters where a line of braille has room for it, or where
// letters have several characters; columns are as wide as the widest.
std::string numbered_rows(const LetteredGrid& grid) {
    const Size size = grid.grid.size();
    const std::size_t digits = std::to_string(size.rows).size();
    std::size_t widest = 1;
    for (const Letter letter : grid.grid.letters())
        if (letter < grid.alphabet.size())
            widest = std::max(widest, display_width(grid.alphabet.text(letter)));
    const bool spaced = widest > 1 || digits + 2 * static_cast<std::size_t>(size.columns) <= braille_width;
    std::string text;
    for (int row = 0; row < size.rows; ++row) {
        std::string line;
        for (int column = 0; column < size.columns; ++column) {
            const Letter letter = grid.grid[{row, column}];
            if (spaced || column == 0) line += ' ';
            const std::string shown = letter < grid.alphabet.size() ? grid.alphabet.text(letter) : ".";
            line += column + 1 < size.columns ? padded(shown, widest) : shown;
        }
        const std::string number = std::to_string(row + 1);
        text += in_columns(std::string(digits - number.size(), ' ') + number + line) + "\n";
    }
    return text;
}

}  // namespace

std::string worksheet_text(const Worksheet& worksheet, const PrintOptions& options) {
    const Puzzle& puzzle = worksheet.puzzle;
    const Size size = puzzle.grid.grid.size();
    const std::string heading = heading_of(worksheet);
    const std::vector<PlacedWord> words = listed(puzzle, options.order);
    std::string text;
    for (const std::string& label : {as_line(options.name_line), as_line(options.date_line)})
        if (!label.empty())
            text += label + " " +
                    std::string(braille_width - std::min(display_width(label), braille_width - 10) - 1, '_') +
                    "\n";
    if (!text.empty()) text += "\n";
    if (!heading.empty()) text += heading + "\n\n";
    text += count_of(static_cast<std::size_t>(size.rows), "row") + ", " +
            count_of(static_cast<std::size_t>(size.columns), "column") + ", " +
            count_of(words.size(), "word") + ".\n\n";
    text += numbered_rows(puzzle.grid) + "\n";
    for (const PlacedWord& word : words) text += isolated(word.shown) + "\n";
    if (!options.key) return text;
    text += "\f" + (heading.empty() ? std::string() : heading + ". ") + "Answer key\n\n";
    for (const PlacedWord& word : words)
        text += from_the_left(isolated(word.shown) + ": " + place_text(word.placed.first) + ", " +
                              std::string(name(word.placed.direction))) +
                "\n";
    if (!puzzle.recipe.message.empty())
        text += "\n" +
                from_the_left("The other cells spell, row by row: " + isolated(puzzle.recipe.message)) + "\n";
    return text;
}

}  // namespace lode
