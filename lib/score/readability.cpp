// How easily the letters of a grid are read, each part by a published ground or by judgement that says so.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <letterlode/score.hpp>

#include "text/fixed_decimals.hpp"

namespace lode {
namespace {

constexpr double inch = 25.4;
constexpr double foot = 12 * inch;
constexpr const char* ada = "2010 ADA Standards for Accessible Design, ";

// What the standard gives as a share of the height of the I, from `least` to `most` percent.
RatingPart share_of_height(const std::string& what, double length, double height, double least, double most,
                           const std::string& paragraph) {
    const double percent = 100 * length / height;
    const std::string range = "From " + fixed_decimals(least, 1) + " to " + fixed_decimals(most, 1) +
                              " percent of the height of the I";
    const std::string verdict = percent < least  ? ": this is less."
                                : percent > most ? ": this is more."
                                                 : ".";
    return {what,           percent,         "percent of height", percent > most ? most : least,
            percent > most, ada + paragraph, range + verdict};
}

void add_sizes(const LettersSeen& seen, std::vector<RatingPart>& parts) {
    if (seen.cap_height <= 0) return;
    if (seen.viewing > 0) {
        const double angle = angle_as_seen(seen.cap_height, seen.viewing);
        parts.push_back(
            {"letter height as seen", angle, "arcmin", least_angle, false,
             "ISO 9241-3 (1992), kept in ISO 9241-303",
             angle < least_angle
                 ? "Too small to be read from there: at that distance letters of " +
                       fixed_decimals(
                           2 * seen.viewing * std::tan(least_angle / 2 * std::numbers::pi / 10'800), 1) +
                       " mm are needed."
             : angle < preferred_angle ? "Readable; 20 to 22 are preferred."
                                       : "Read with ease."});
        if (const auto least = least_height_on_signs(seen.baseline, seen.viewing))
            parts.push_back(
                {"letter height", seen.cap_height, "mm", *least, false, std::string(ada) + "table 703.5.5",
                 "What a public sign needs, with its letters " + fixed_decimals(seen.baseline / 1000, 1) +
                     " m above the floor" +
                     (seen.cap_height < *least ? ": this is less, and a panel at home may do with it."
                                               : ".")});
    } else {
        parts.push_back(
            {"letter height", seen.cap_height, "mm", std::nullopt, false, "definition",
             "Legible from " +
                 fixed_decimals(
                     seen.cap_height / (2000 * std::tan(least_angle / 2 * std::numbers::pi / 10'800)), 1) +
                 " m at the most, by ISO 9241-3 (1992): 16 minutes of arc."});
    }
    if (seen.stroke > 0)
        parts.push_back(share_of_height("stroke", seen.stroke, seen.cap_height, 10, 30, "703.5.7"));
    if (seen.letter_gap > 0)
        parts.push_back(
            share_of_height("gap between letters", seen.letter_gap, seen.cap_height, 10, 35, "703.5.8"));
    if (seen.line_pitch > 0)
        parts.push_back(
            share_of_height("line spacing", seen.line_pitch, seen.cap_height, 135, 170, "703.5.9"));
    if (seen.o_width > 0)
        parts.push_back(share_of_height("width of the O", seen.o_width, seen.cap_height, 55, 110, "703.5.4"));
}

void add_colours(const LettersSeen& seen, std::vector<RatingPart>& parts) {
    if (!seen.letters) return;
    // 18 point are 6.35 mm of type, and some 4.4 mm of capitals.
    const double least = seen.cap_height >= 4.4 ? least_contrast_of_large_text : least_contrast;
    const auto add = [&](const char* on, Colour ground) {
        parts.push_back({std::string("contrast of letters on ") + on, contrast_ratio(*seen.letters, ground),
                         "to 1", least, false, "WCAG 2.2, success criterion 1.4.3",
                         to_text(*seen.letters) + " on " + to_text(ground) + "."});
    };
    if (seen.blank) add("the blank", *seen.blank);
    if (!seen.bands) return;
    add("the bands", *seen.bands);
    if (!seen.blank) return;
    // The worst of all ways to see.
    const auto difference = [&](Vision vision) {
        return colour_difference(lab_of(as_seen(*seen.bands, vision)), lab_of(as_seen(*seen.blank, vision)));
    };
    const Vision worst = *std::min_element(all_visions.begin(), all_visions.end(),
                                           [&](Vision a, Vision b) { return difference(a) < difference(b); });
    parts.push_back({"difference of bands and blank", difference(worst), "CIEDE2000", 10.0, false,
                     "Sharma, Wu, Dalal 2005; Machado, Oliveira, Fernandes 2009; the threshold is judgement",
                     "As seen with " + std::string(name(worst)) + " vision, the hardest of four."});
}

struct Run {
    int length = 0;
    Letter letter = empty_cell;
};

// The longest run of one letter in any line.
Run longest_run_of_one(const Grid& grid, std::size_t letters) {
    Run longest;
    std::vector<int> runs(grid.size().cells());
    for (const Direction direction :
         {Direction::right, Direction::down, Direction::down_right, Direction::up_right}) {
        const bool upward = step(direction).row < 0;
        for (int at = 0; at < grid.size().rows; ++at)
            for (int column = 0; column < grid.size().columns; ++column) {
                const Cell cell{upward ? grid.size().rows - 1 - at : at, column};
                const Letter letter = grid[cell];
                int& run = runs[grid.index(cell)];
                run = 0;
                if (letter >= letters) continue;
                const Cell behind = moved(cell, direction, -1);
                run = 1 + (grid.inside(behind) && grid[behind] == letter ? runs[grid.index(behind)] : 0);
                if (run > longest.length) longest = {run, letter};
            }
    }
    return longest;
}

void add_neighbours(const LetteredGrid& lettered, const LetterLooks& looks, std::vector<RatingPart>& parts) {
    const Grid& grid = lettered.grid;
    const std::size_t known = looks.ink.size();
    if (known == 0 || looks.likeness.size() != known * known) return;
    std::int64_t pairs = 0;
    std::int64_t alike_pairs = 0;
    std::vector<std::int64_t> met(known * known);
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column)
            for (const Direction direction :
                 {Direction::right, Direction::down, Direction::down_right, Direction::up_right}) {
                const Cell other = moved({row, column}, direction, 1);
                if (!grid.inside(other)) continue;
                const Letter a = grid[{row, column}], b = grid[other];
                if (a >= lettered.alphabet.size() || b >= lettered.alphabet.size()) continue;
                ++pairs;
                if (a == b || a >= known || b >= known || looks.likeness[a * known + b] < alike) continue;
                ++alike_pairs;
                ++met[std::min(a, b) * known + std::max(a, b)];
            }
    std::string note = "Neighbours that are easily taken for each other, as " + looks.font + " draws them";
    if (alike_pairs > 0) {
        const auto most = static_cast<std::size_t>(std::max_element(met.begin(), met.end()) - met.begin());
        note += "; most often " + lettered.alphabet.text(static_cast<Letter>(most / known)) + " and " +
                lettered.alphabet.text(static_cast<Letter>(most % known));
    }
    parts.push_back({"look-alike neighbours",
                     pairs == 0 ? 0 : 100.0 * static_cast<double>(alike_pairs) / static_cast<double>(pairs),
                     "percent of neighbours", std::nullopt, false,
                     "overlap of outlines; the bound is judgement", note + "."});
}

// The spread of the ink of blocks of three by three cells around their mean.
void add_evenness(const LetteredGrid& lettered, const LetterLooks& looks, std::vector<RatingPart>& parts) {
    const Grid& grid = lettered.grid;
    double sum = 0, squares = 0;
    std::int64_t blocks = 0;
    for (int row = 0; row + 3 <= grid.size().rows; ++row)
        for (int column = 0; column + 3 <= grid.size().columns; ++column) {
            double ink = 0;
            bool is_whole = true;
            for (int at = 0; at < 9 && is_whole; ++at) {
                const Letter letter = grid[{row + at / 3, column + at % 3}];
                is_whole = letter < looks.ink.size() && looks.ink[letter] >= 0;
                if (is_whole) ink += looks.ink[letter];
            }
            if (!is_whole) continue;
            ++blocks;
            sum += ink;
            squares += ink * ink;
        }
    if (blocks == 0 || sum <= 0) return;
    const double mean = sum / static_cast<double>(blocks);
    const double spread = std::sqrt(std::max(0.0, squares / static_cast<double>(blocks) - mean * mean));
    parts.push_back({"evenness", 100 * spread / mean, "percent of mean ink", std::nullopt, false, "judgement",
                     "How far the grey of blocks of nine letters varies, as " + looks.font +
                         " draws them: less is calmer."});
}

}  // namespace

double angle_as_seen(double height_mm, double distance_mm) {
    return 2 * std::atan(height_mm / (2 * distance_mm)) * 10'800 / std::numbers::pi;
}

std::optional<double> least_height_on_signs(double baseline_mm, double distance_mm) {
    struct Line {
        double up_to;   // baseline
        double near;    // distance
        double height;  // up to there
    };
    constexpr std::array lines{Line{70 * inch, 72 * inch, 0.625 * inch},
                               Line{120 * inch, 180 * inch, 2 * inch}, Line{HUGE_VAL, 21 * foot, 3 * inch}};
    // Lengths that were converted from inches may have lost their last digit.
    constexpr double slack = 1e-6;
    if (baseline_mm < 40 * inch - slack) return std::nullopt;
    const Line& line = *std::find_if(lines.begin(), std::prev(lines.end()),
                                     [&](const Line& one) { return baseline_mm <= one.up_to + slack; });
    return line.height + inch / 8 * std::max(0.0, distance_mm - line.near) / foot;
}

std::vector<RatingPart> rate_readability(const LetteredGrid& grid, const LetterLooks& looks,
                                         const LettersSeen& seen) {
    std::vector<RatingPart> parts;
    add_sizes(seen, parts);
    add_colours(seen, parts);
    const Run run = longest_run_of_one(grid.grid, grid.alphabet.size());
    if (run.length > 0)
        parts.push_back({"longest run of one letter", static_cast<double>(run.length), "letters",
                         std::nullopt, false, "definition",
                         "Of " + grid.alphabet.text(run.letter) +
                             ", in any line: the eye loses its place in long ones."});
    add_neighbours(grid, looks, parts);
    add_evenness(grid, looks, parts);
    return parts;
}

}  // namespace lode
