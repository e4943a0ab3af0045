#pragma once
// The letters of a grid as outlines in their cells.

#include <array>
#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <letterlode/outcome.hpp>
#include <letterlode/path.hpp>
#include <letterlode/puzzle.hpp>

#include "art/typeface.hpp"

namespace lode {

// A capital's share of its cell, by eye: large enough to be cut on panels of common size (a cell of 12 mm, a
// capital of 7), with room enough that rows, columns and diagonals read alike.
inline constexpr double cap_share = 0.60;

// Measured in cells, with 0 at the centre of the cell.
struct Lettering {
    std::vector<Path> letters;  // by letter number; empty where the grid does not use it
    double cap_height = 0;
    std::vector<double> caps;         // each letter's own, by letter number; 0 where the grid does not use it
    std::vector<std::string> shrunk;  // letters that would not fit their cells at the common height
};

// Each letter that stands in the grid, once.
[[nodiscard]] std::vector<std::string> letters_of(const LetteredGrid& grid);

// Typefaces for single letters, of the same units as the one that sets all others: a letter that is made
// smaller keeps its stroke only where it is drawn stronger.
using OwnTypefaces = std::map<Letter, std::unique_ptr<Typeface>>;

// Each letter stands in its cell by optical_middle, upright as the font has it: on one baseline. No letter
// comes nearer to a neighbour for it than `least_gap`, in cells, nor than the widest letter does. Refused as
// unusable: letters that the font lacks, named with the place where each first stands.
Outcome<Lettering> set_letters(Typeface& typeface, const LetteredGrid& grid, double least_gap = 0,
                               const OwnTypefaces& own = {});

// The same letters, all smaller or larger about the middles of their cells.
[[nodiscard]] Lettering scaled(Lettering lettering, double scale);

// Makes one letter smaller about the middle of its cell, and tells it.
void shrink(Lettering& lettering, Letter letter, const std::string& text, double scale);

[[nodiscard]] bool is_one_code_point(const std::string& text);

// Whether no two letters come nearer to each other than `least`, in cells: marks and all, and across closed
// cells too. Linear in the cells, and for each pair of letters and each way from one to the other once as
// long as their outlines take.
[[nodiscard]] bool keeps_apart(const Lettering& lettering, const Grid& grid, double least);

// How far a letter, without marks above and below it, reaches from the middle of its cell: all round, and
// across a line that runs in this direction through it.
struct Reach {
    double all_round = 0;
    std::array<double, 4> across{};  // to the right, down-right, down, down-left
    [[nodiscard]] double across_line(Direction direction) const;
};
[[nodiscard]] Reach reach_of(const Path& letter);

}  // namespace lode
