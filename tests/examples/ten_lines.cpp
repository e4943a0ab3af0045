// Ten lines from words to a certified puzzle.
// Prints:
//     V F E N N E L
//     C S O R R E L
//     C H I V E S Y
//     B A Y L E A F
//     C T H L E P M
//     S T H Y M E W
//     F W M E Y U L
//     B F S S N L H
//
//     Fennel
//     Sorrel
//     Chives
//     Thyme
//     Bay leaf
//     Certified: each of the 5 words stands in the grid once and nowhere else,
//       and no avoided word stands in it.
#include <iostream>

#include <letterlode/puzzle.hpp>

int main() {
    lode::Recipe recipe;
    recipe.words.words = {{"Fennel"}, {"Sorrel"}, {"Chives"}, {"Thyme"}, {"Bay leaf"}};
    const auto puzzle = lode::make(recipe);
    if (!puzzle) {
        std::cerr << puzzle.refusal().message << '\n';
        return 1;
    }
    std::cout << lode::puzzle_text(*puzzle) << lode::verdict_text(puzzle->audit);
}
