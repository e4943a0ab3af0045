// Judges a finished grid, whoever made it.
// Prints:
//     not certified
//     Mint stands once more, from row 4, column 4 left
//     Dill is missing
#include <iostream>

#include <letterlode/puzzle.hpp>

int main() {
    lode::Recipe recipe;  // of a recipe the words and their rules count here
    recipe.words.words = {{"Sage"}, {"Mint"}, {"Dill"}};

    const auto segmenter = lode::Segmenter::open(recipe.text);
    const auto grid = lode::read_grid(
        "M I N T\n"
        "S A G E\n"
        "A M I N\n"
        "T N I M\n",
        "herb-bed.txt", *segmenter);
    if (!grid) {
        std::cerr << grid.refusal().message << '\n';
        return 1;
    }

    const auto audit = lode::audit(*grid, recipe);
    std::cout << (audit->certified ? "certified" : "not certified") << '\n';
    for (const auto& word : audit->words)
        for (const auto& copy : word.stray)
            std::cout << word.shown << " stands once more, from row " << copy.first.row + 1 << ", column "
                      << copy.first.column + 1 << ' ' << lode::name(copy.direction) << '\n';
    for (const auto& word : audit->missing) std::cout << word << " is missing\n";
}
