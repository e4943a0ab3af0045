#include "art/text_block.hpp"

#include <algorithm>
#include <optional>

#include <unicode/ubidi.h>
#include <unicode/unistr.h>

#include <letterlode/art.hpp>

#include "art/missing_letters.hpp"

namespace lode {

namespace {

// In cap heights, by eye: lines of a heading, within the 135 to 170 percent that the 2010 ADA Standards ask
// of signs (703.5.9), and words in columns.
constexpr double line_pitch = 1.6;
constexpr double word_pitch = 1.75;
// Between the lowest ink of a line and the highest of the next, at the least.
constexpr double between_lines = 0.3;
constexpr double between_columns = 1.9;

Refusal no_text(const std::string& what, const std::string& fault) {
    Refusal refusal;
    refusal.message = what + ": " + fault;
    return refusal;
}

// One line, its baseline at 0 and its ink from x = 0 on.
struct Line {
    std::vector<SetLetter> letters;
    Box box{};
};

Outcome<Line> set_one(Typeface& typeface, const std::string& text, const std::string& place,
                      std::vector<MissingLetter>& missing) {
    auto set = typeface.set_line(text);
    if (!set) return set.refusal();
    for (std::string& lacking : set->missing) missing.push_back({std::move(lacking), place});
    Line line;
    if (set->letters.empty()) return line;
    Path all;
    for (const SetLetter& letter : set->letters)
        all.contours.insert(all.contours.end(), letter.path.contours.begin(), letter.path.contours.end());
    const Box box = bounds(all);
    const double unit = 1 / (typeface.cap_height() > 0 ? typeface.cap_height() : box.height());
    for (SetLetter& letter : set->letters)
        line.letters.push_back(
            {std::move(letter.text), transformed(letter.path, unit, {-box.left * unit, 0})});
    line.box = {0, box.top * unit, box.width() * unit, box.bottom * unit};
    return line;
}

bool runs_from_right(const std::string& text) {
    const auto direction = icu::UnicodeString::fromUTF8(text);
    return ubidi_getBaseDirection(direction.getBuffer(), direction.length()) == UBIDI_RTL;
}

void append(TextBlock& block, const Line& line, double x, double baseline) {
    for (const SetLetter& letter : line.letters)
        block.letters.push_back({letter.text, transformed(letter.path, 1, {x, baseline})});
}

// From baseline to baseline: as wide as it looks well, or as the ink of these lines needs.
double pitch_of(const std::vector<Line>& lines, double usual) {
    double above = 0, below = 0;
    for (const Line& line : lines) {
        above = std::max(above, -line.box.top);
        below = std::max(below, line.box.bottom);
    }
    return lines.size() < 2 ? usual : std::max(usual, above + below + between_lines);
}

// Where each word begins, and how wide all of it is.
struct Columns {
    std::size_t rows = 0;
    std::vector<double> left;
    double width = 0;
};

Columns in_columns(const std::vector<Line>& words, std::size_t columns) {
    Columns result;
    result.rows = (words.size() + columns - 1) / columns;
    for (std::size_t first = 0; first < words.size(); first += result.rows) {
        double widest = 0;
        for (std::size_t i = first; i < std::min(words.size(), first + result.rows); ++i)
            widest = std::max(widest, words[i].box.width());
        result.left.push_back(result.width);
        result.width += widest + between_columns;
    }
    result.width -= between_columns;
    return result;
}

}  // namespace

std::vector<std::string> lines_of(std::string_view text) {
    std::vector<std::string> lines;
    std::string line;
    for (const char c : std::string(text) + "\n") {
        if (c != '\n') {
            line += c == '\t' || c == '\r' ? ' ' : c;
            continue;
        }
        const std::size_t first = line.find_first_not_of(' ');
        if (first != std::string::npos)
            lines.push_back(line.substr(first, line.find_last_not_of(' ') - first + 1));
        line.clear();
    }
    return lines;
}

std::optional<std::string> in_two_lines(const std::string& text) {
    const std::vector<std::string> lines = lines_of(text);
    if (lines.size() != 1) return std::nullopt;
    std::string line = lines.front();
    const auto characters = [&](std::size_t from, std::size_t to) {
        return std::count_if(line.begin() + static_cast<std::ptrdiff_t>(from),
                             line.begin() + static_cast<std::ptrdiff_t>(to),
                             [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
    };
    std::optional<std::size_t> best;
    std::ptrdiff_t least = 0;
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (line[i] != ' ') continue;
        const std::ptrdiff_t longer = std::max(characters(0, i), characters(i + 1, line.size()));
        if (best && longer >= least) continue;
        best = i;
        least = longer;
    }
    if (!best) return std::nullopt;
    line[*best] = '\n';
    return line;
}

Outcome<TextBlock> set_lines(Typeface& typeface, const std::string& text, const std::string& what) {
    if (text.size() > max_heading_bytes)
        return no_text(what, "it is longer than " + std::to_string(max_heading_bytes) + " bytes");
    const auto normal = normalised(text);
    if (!normal) return no_text(what, "it is no valid UTF-8");
    const std::vector<std::string> lines = lines_of(*normal);
    if (lines.size() > max_heading_lines)
        return no_text(what, "it has more than " + std::to_string(max_heading_lines) + " lines");

    TextBlock block;
    std::vector<MissingLetter> missing;
    std::vector<Line> set;
    for (const std::string& line : lines) {
        const std::string number = "line " + std::to_string(&line - lines.data() + 1);
        if (std::any_of(line.begin(), line.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; }))
            return no_text(what, number + " holds a control character");
        auto one = set_one(typeface, line, what + ", " + number, missing);
        if (!one) return one.refusal();
        if (one->letters.empty()) continue;
        block.width = std::max(block.width, one->box.width());
        block.text += (block.text.empty() ? "" : "\n") + line;
        set.push_back(std::move(*one));
    }
    if (!missing.empty()) return lacks(typeface, missing);
    if (set.empty()) return block;
    double baseline = -set.front().box.top;
    const double pitch = pitch_of(set, line_pitch);
    for (const Line& line : set) {
        append(block, line, -line.box.width() / 2, baseline);
        block.height = baseline + std::max(0.0, line.box.bottom);
        baseline += pitch;
    }
    return block;
}

Outcome<TextBlock> set_columns(Typeface& typeface, const std::vector<std::string>& words, double most_width) {
    TextBlock block;
    std::vector<MissingLetter> missing;
    std::vector<Line> set;
    for (const std::string& word : words) {
        auto one = set_one(typeface, word, "the list, \"" + word + "\"", missing);
        if (!one) return one.refusal();
        if (one->letters.empty()) continue;
        set.push_back(std::move(*one));
        block.text += (block.text.empty() ? "" : "\n") + word;
    }
    if (!missing.empty()) return lacks(typeface, missing);
    if (set.empty()) return block;

    Columns best = in_columns(set, 1);
    for (std::size_t columns = 2; columns <= set.size(); ++columns) {
        const Columns more = in_columns(set, columns);
        if (more.width > most_width) break;
        best = more;
    }
    const double pitch = pitch_of(set, word_pitch);
    // In a right-to-left script the first column is the rightmost, and words begin at its right.
    const bool from_right = runs_from_right(words.front());
    double top = 0;
    for (std::size_t first = 0; first < set.size(); first += best.rows)
        top = std::min(top, set[first].box.top);
    for (std::size_t i = 0; i < set.size(); ++i) {
        const double baseline = static_cast<double>(i % best.rows) * pitch - top;
        const double from = best.left[i / best.rows] - best.width / 2;
        append(block, set[i], from_right ? -from - set[i].box.width() : from, baseline);
        block.height = std::max(block.height, baseline + std::max(0.0, set[i].box.bottom));
    }
    block.width = best.width;
    return block;
}

}  // namespace lode
