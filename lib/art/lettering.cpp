#include "art/lettering.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <tuple>

#include <letterlode/art.hpp>

#include "art/combine.hpp"
#include "art/cubic.hpp"
#include "art/missing_letters.hpp"
#include "art/optical_middle.hpp"

namespace lode {

namespace {

// Shares of a cell, by eye: what no letter goes beyond.
constexpr double most_width = 0.84;
constexpr double most_height = 0.90;
// Where the widest plain letter (a W) does not fit, all letters shrink with it, but no further than this.
constexpr double most_common_shrinking = 0.7;
// Letters share a baseline unless their tails or marks leave this lane about the middle of the row: marks may
// rise into the air between two rows, which is free there, since all letters of a row stand alike in their
// cells.
constexpr double lane_above = 0.57;
constexpr double lane_below = 0.44;

Path joined(const std::vector<SetLetter>& letters) {
    Path path;
    for (const SetLetter& letter : letters)
        path.contours.insert(path.contours.end(), letter.path.contours.begin(), letter.path.contours.end());
    return path;
}

double median(std::vector<double> values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>((values.size() - 1) / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

std::string place_of(const Grid& grid, Letter letter) {
    const auto& letters = grid.letters();
    const auto at =
        static_cast<std::size_t>(std::find(letters.begin(), letters.end(), letter) - letters.begin());
    const auto columns = static_cast<std::size_t>(grid.size().columns);
    return "row " + std::to_string(at / columns + 1) + ", column " + std::to_string(at % columns + 1);
}

// Where a letter of this box is set from side to side: its optical middle over the cell's, but no further out
// than `most` on either side where its box would have room within.
double shift_across(const Path& path, const Box& box, double scale, double most) {
    const double shift = -scale * optical_middle(path);
    const double spare = most - scale * box.width() / 2;
    const double centred = -scale * box.centre().x;
    return std::clamp(shift, centred - std::max(0.0, spare), centred + std::max(0.0, spare));
}

// A letter of the grid as the font draws it, in font units.
struct Drawn {
    Letter letter;
    std::string text;
    Path path;
    Box box;
};

Outcome<std::vector<Drawn>> draw_each(Typeface& typeface, const OwnTypefaces& own, const LetteredGrid& grid) {
    std::vector<bool> used(grid.alphabet.size());
    for (const Letter letter : grid.grid.letters())
        if (letter < used.size()) used[letter] = true;

    std::vector<Drawn> drawn;
    std::vector<MissingLetter> missing;
    for (std::size_t i = 0; i < used.size(); ++i) {
        if (!used[i]) continue;
        const auto letter = static_cast<Letter>(i);
        const std::string& text = grid.alphabet.text(letter);
        const auto owned = own.find(letter);
        const auto line = (owned == own.end() ? typeface : *owned->second).set_line(text);
        if (!line) return line.refusal();
        Path path = joined(line->letters);
        if (!line->missing.empty() || path.empty()) {
            missing.push_back({text, place_of(grid.grid, letter)});
            continue;
        }
        const Box box = bounds(path);
        drawn.push_back({letter, text, std::move(path), box});
    }
    if (!missing.empty()) return lacks(typeface, missing);
    return drawn;
}

// Cells a font unit, the same for all letters that fit their cells with it.
double common_scale(const std::vector<Drawn>& drawn, double cap_height) {
    const double nominal = cap_share / cap_height;
    double scale = nominal;
    for (const Drawn& one : drawn)
        if (is_one_code_point(one.text))
            scale = std::min({scale, most_width / one.box.width(), most_height / one.box.height()});
    return std::max(scale, most_common_shrinking * nominal);
}

}  // namespace

bool is_one_code_point(const std::string& text) {
    return std::count_if(text.begin(), text.end(),
                         [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }) == 1;
}

std::vector<std::string> letters_of(const LetteredGrid& grid) {
    std::vector<bool> used(grid.alphabet.size());
    for (const Letter letter : grid.grid.letters())
        if (letter < used.size()) used[letter] = true;
    std::vector<std::string> letters;
    for (std::size_t i = 0; i < used.size(); ++i)
        if (used[i]) letters.push_back(grid.alphabet.text(static_cast<Letter>(i)));
    return letters;
}

Outcome<Lettering> set_letters(Typeface& typeface, const LetteredGrid& grid, double least_gap,
                               const OwnTypefaces& own) {
    const auto drawn = draw_each(typeface, own, grid);
    if (!drawn) return drawn.refusal();

    double cap_height = typeface.cap_height();
    std::vector<double> tops;
    std::vector<double> bottoms;
    double tallest = 0;
    for (const Drawn& one : *drawn) {
        tops.push_back(one.box.top);
        bottoms.push_back(one.box.bottom);
        tallest = std::max(tallest, one.box.height());
    }
    if (!(cap_height > 0)) cap_height = tallest;

    Lettering lettering;
    lettering.letters.resize(grid.alphabet.size());
    lettering.caps.resize(grid.alphabet.size());
    if (drawn->empty()) return lettering;
    const double scale = common_scale(*drawn, cap_height);
    lettering.cap_height = scale * cap_height;
    // Half way up the common run of letters; capitals and small letters, or a script without either, all have
    // one.
    const double middle = (median(tops) + median(bottoms)) / 2;
    const double farthest_out = std::min(most_width / 2, (1 - least_gap) / 2);

    for (const Drawn& one : *drawn) {
        const double fitting =
            std::min({scale, most_width / one.box.width(), most_height / one.box.height()});
        if (fitting < scale) lettering.shrunk.push_back(one.text);
        double shift = -fitting * middle;
        const double above = -lane_above - (fitting * one.box.top + shift);
        const double below = fitting * one.box.bottom + shift - lane_below;
        if (fitting * one.box.height() >= lane_above + lane_below)
            shift = -fitting * one.box.centre().y;
        else if (above > 0)
            shift += above;
        else if (below > 0)
            shift -= below;
        lettering.caps[one.letter] = fitting * cap_height;
        lettering.letters[one.letter] =
            transformed(one.path, fitting, {shift_across(one.path, one.box, fitting, farthest_out), shift});
    }
    return lettering;
}

Lettering scaled(Lettering lettering, double scale) {
    for (Path& letter : lettering.letters)
        if (!letter.empty()) letter = transformed(letter, scale, {});
    for (double& cap : lettering.caps) cap *= scale;
    lettering.cap_height *= scale;
    return lettering;
}

void shrink(Lettering& lettering, Letter letter, const std::string& text, double scale) {
    lettering.letters[letter] = transformed(lettering.letters[letter], scale, {});
    lettering.caps[letter] *= scale;
    if (std::find(lettering.shrunk.begin(), lettering.shrunk.end(), text) == lettering.shrunk.end())
        lettering.shrunk.push_back(text);
}

bool keeps_apart(const Lettering& lettering, const Grid& grid, double least) {
    // Two letters are nearer than that where both, grown by half of it, overlap.
    std::vector<Path> grown_letters(lettering.letters.size());
    std::vector<Box> boxes(lettering.letters.size());
    double farthest = 0;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        if (lettering.letters[i].empty()) continue;
        grown_letters[i] = grown(lettering.letters[i], least / 2);
        const Box box = boxes[i] = bounds(grown_letters[i]);
        farthest = std::max({farthest, -box.left, box.right, -box.top, box.bottom});
    }
    const int cells = static_cast<int>(2 * farthest);
    std::set<std::tuple<Letter, Letter, int, int>> looked_at;
    const auto clear = [&](Letter one, Letter other, int down, int right) {
        const Point by{static_cast<double>(right), static_cast<double>(down)};
        const Box &a = boxes[one], &b = boxes[other];
        if (b.left + by.x >= a.right || b.right + by.x <= a.left || b.top + by.y >= a.bottom ||
            b.bottom + by.y <= a.top || !looked_at.insert({one, other, down, right}).second)
            return true;
        return shared(grown_letters[one], transformed(grown_letters[other], 1, by)).empty();
    };
    for (int row = 0; row < grid.size().rows; ++row)
        for (int column = 0; column < grid.size().columns; ++column) {
            const Cell cell{row, column};
            if (grid[cell] == closed_cell) continue;
            for (int down = 0; down <= cells; ++down)
                for (int right = down == 0 ? 1 : -cells; right <= cells; ++right) {
                    const Cell other{row + down, column + right};
                    if (grid.inside(other) && grid[other] != closed_cell &&
                        !clear(grid[cell], grid[other], down, right))
                        return false;
                }
        }
    return true;
}

double Reach::across_line(Direction direction) const {
    const Cell by = step(direction);
    if (by.row == 0) return across[0];
    if (by.column == 0) return across[2];
    return across[by.row == by.column ? 1 : 3];
}

Reach reach_of(const Path& letter) {
    Reach reach;
    if (letter.empty()) return reach;
    // Marks stand apart, above or below, and may stand out.
    const auto body =
        std::max_element(letter.contours.begin(), letter.contours.end(),
                         [](const Contour& a, const Contour& b) { return signed_area(a) < signed_area(b); });
    const Box box = bounds({{*body}});
    const auto take = [&](Point p) {
        const double half = std::sqrt(0.5);
        reach.all_round = std::max(reach.all_round, length(p));
        reach.across = {
            std::max(reach.across[0], std::abs(p.y)), std::max(reach.across[1], half * std::abs(p.y - p.x)),
            std::max(reach.across[2], std::abs(p.x)), std::max(reach.across[3], half * std::abs(p.x + p.y))};
    };
    for (const Contour& contour : letter.contours) {
        const double middle = bounds({{contour}}).centre().y;
        if (middle < box.top || middle > box.bottom) continue;
        each_piece(contour, [&](const Cubic& piece) {
            constexpr int looks = 8;
            for (int i = 1; i <= (piece.straight ? 1 : looks); ++i)
                take(piece.straight ? piece.p3 : piece.at(static_cast<double>(i) / looks));
        });
    }
    return reach;
}

}  // namespace lode
