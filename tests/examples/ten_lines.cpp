// Ten lines from words to a certified puzzle.
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
