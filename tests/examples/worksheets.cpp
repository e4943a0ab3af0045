// Prints worksheets for a class: neighbours have different puzzles that are alike in difficulty.
// Prints:
//     6 pages
#include <iostream>
#include <vector>

#include <letterlode/files.hpp>
#include <letterlode/print.hpp>

int main() {
    lode::Recipe recipe;
    recipe.words.words = {{"Basil"}, {"Thyme"}, {"Sage"}, {"Mint"}, {"Parsley"}};
    const auto checked = lode::CheckedRecipe::open(recipe);
    const auto versions = lode::make_versions(*checked, 1, 3);
    if (!versions) {
        std::cerr << versions.refusal().message << '\n';
        return 1;
    }

    std::vector<lode::Worksheet> worksheets;
    for (const auto& puzzle : versions->puzzles)
        worksheets.push_back(
            {puzzle, "Herb bed", std::string(1, static_cast<char>('A' + worksheets.size()))});

    lode::PrintOptions options;
    options.name_line = "Name";
    options.key_marks = lode::KeyMarks::lines;
    const auto printed = lode::print_worksheets(worksheets, options);
    if (!printed) {
        std::cerr << printed.refusal().message << '\n';
        return 1;
    }
    lode::Disk disk;
    lode::write_file("herb-bed.pdf", printed->pdf, disk);
    std::cout << printed->pages << " pages\n";
}
