// Makes many puzzles from one recipe, which is checked once.
// Prints:
//     8 made
//     5 to choose from; the calmest is certified
#include <iostream>
#include <thread>
#include <vector>

#include <letterlode/puzzle.hpp>

int main() {
    lode::Recipe recipe;
    recipe.words.words = {{"Spade"}, {"Trowel"}, {"Rake"}, {"Watering can"}, {"Dibber"}};
    const auto checked = lode::CheckedRecipe::open(recipe);
    if (!checked) {
        std::cerr << checked.refusal().message << '\n';
        return 1;
    }

    // A checked recipe is shared freely. Each puzzle is made again by its seed alone, on any machine.
    std::vector<std::string> grids(8);
    {
        std::vector<std::jthread> threads;
        for (unsigned thread = 0; thread < 2; ++thread)
            threads.emplace_back([&, thread] {
                for (std::size_t seed = thread; seed < grids.size(); seed += 2)
                    if (const auto puzzle = checked->make(seed))
                        grids[seed] = lode::grid_text(puzzle->grid.grid, puzzle->grid.alphabet);
            });
    }
    std::size_t made = 0;
    for (const auto& grid : grids)
        if (!grid.empty()) ++made;
    std::cout << made << " made\n";

    // Or puzzles that differ to choose from, the calmest to read first.
    lode::MakeControl control;
    control.threads = 2;
    const auto choices = lode::make_choices(*checked, 1, 5, control);
    const auto ranked = lode::rank_puzzles(*choices);
    const lode::Puzzle& calmest = (*choices)[ranked->front().puzzle];
    std::cout << choices->size() << " to choose from; the calmest is "
              << (calmest.audit.certified ? "certified" : "not certified") << '\n';
}
