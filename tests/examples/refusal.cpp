// Handles a refusal: what was asked for cannot be, and the refusal says why and what would help.
// Prints:
//     The recipe has a fault.
//     vegetables.txt:1: 'Artichoke' has 9 letters, and a grid of 6x6 takes words of at most 6
//       in these directions and this shape.
//     word: Artichoke
//     way out: Take a larger grid, more directions or a shorter word; --grid auto finds a size.
#include <iostream>

#include <letterlode/puzzle.hpp>

int main() {
    lode::Recipe recipe;
    recipe.words = {"vegetables.txt", {{"Artichoke", 1}, {"Leek", 2}}};
    recipe.size = lode::Size{6, 6};

    const auto puzzle = lode::make(recipe);
    if (puzzle) return 1;
    const lode::Refusal& refusal = puzzle.refusal();
    switch (refusal.reason) {
        case lode::Refusal::Reason::impossible:
            std::cout << "There is no such puzzle.\n";
            break;
        case lode::Refusal::Reason::unfinished:
            std::cout << "More effort may find one.\n";
            break;
        case lode::Refusal::Reason::unusable:
            std::cout << "The recipe has a fault.\n";
            break;
    }
    std::cout << refusal.message << '\n';
    for (const auto& word : refusal.words) std::cout << "word: " << word << '\n';
    for (const auto& way_out : refusal.advice) std::cout << "way out: " << way_out << '\n';
}
