// A vegetable bed as a puzzle, in C++20: made, audited, rated and read cell by cell; then a grid with a
// fault, words for which there is no room, and a list that cannot be used. CMakeLists.txt builds it, or
//
// c++ -std=c++20 bed.cpp $(pkg-config --cflags --libs letterlode) -o bed
#include <cmath>
#include <iomanip>
#include <iostream>
#include <string_view>

#include <letterlode/letterlode.h>
#include <letterlode/puzzle.hpp>
#include <letterlode/version.hpp>

namespace {

constexpr std::string_view vegetables = "Parsnip\nSweet pea\nJalapeño\nLeek\n";

lode::Recipe recipe_of(std::string_view words, lode::Size size) {
    lode::Recipe recipe;
    recipe.words = lode::read_word_lines(words, "bed.txt").value();
    recipe.size = size;
    return recipe;
}

lode::Audit audit_of(std::string_view drawn, const lode::Recipe& recipe) {
    const auto segmenter = lode::Segmenter::open(recipe.text).value();
    return lode::audit(lode::read_grid(drawn, "grid.txt", segmenter).value(), recipe).value();
}

void print(const lode::Puzzle& puzzle) {
    const auto& [alphabet, grid] = puzzle.grid;
    const auto [rows, columns] = grid.size();
    for (int row = 0; row < rows; ++row)
        for (int column = 0; column < columns; ++column) {
            const auto letter = grid[{row, column}];
            std::cout << (letter == lode::closed_cell ? "." : alphabet.text(letter))
                      << (column + 1 < columns ? ' ' : '\n');
        }
    for (const auto& word : puzzle.words) {
        const auto& [first, direction] = word.placed;
        std::cout << word.shown << ": row " << first.row + 1 << ", column " << first.column + 1 << ", "
                  << name(direction) << '\n';
    }
}

void print(const lode::Audit& audit) {
    std::cout << (audit.certified ? "certified\n" : "not certified\n");
    for (const auto& word : audit.missing) std::cout << "missing: " << word << '\n';
}

void print(const lode::Difficulty& difficulty) {
    std::cout << name(difficulty.level) << ", " << std::lround(difficulty.fixations) << " fixations\n";
    for (const auto& part : difficulty.parts)
        std::cout << part.part << ": " << std::fixed << std::setprecision(2) << part.value << ' ' << part.unit
                  << '\n';
}

}  // namespace

int main() {
    // The library that is loaded may be newer than the headers that this was compiled with, and serves all
    // the same; one that would not has another SONAME, and the loader passes it over.
    std::cout << "letterlode " << lode::version() << '\n';
    if (lode::version() != LODE_VERSION) std::cerr << "compiled with " LODE_VERSION "\n";

    const auto puzzle = lode::make(recipe_of(vegetables, {.rows = 8, .columns = 10})).value();
    print(puzzle);
    print(lode::audit(puzzle).value());
    print(lode::rate(puzzle).value().difficulty);

    // In somebody's grid the L of Kale is an X.
    print(audit_of("LEEK\nOUOA\nSTSX\nIRUE\n", recipe_of("Leek\nKale\n", {.rows = 4, .columns = 4})));

    // There is no room: an Outcome holds the puzzle or a Refusal, and the latter is an answer too.
    if (const auto crammed = lode::make(recipe_of(vegetables, {.rows = 3, .columns = 8})); !crammed) {
        std::cout << "refused: " << crammed.refusal().message << '\n';
        for (const auto& advice : crammed.refusal().advice) std::cout << "advice: " << advice << '\n';
    }

    // What cannot be used is refused as well; then the Refusal knows the place as well as the words for it.
    const auto judge = lode::GridJudge::open(recipe_of("Leek\nKale 3+4\n", {.rows = 4, .columns = 4}));
    if (!judge) {
        const auto& fault = judge.refusal();
        std::cout << fault.source << ", line " << fault.line << ", \"" << fault.words.front()
                  << "\", character " << fault.position << ": " << fault.message << '\n';
    }
}
