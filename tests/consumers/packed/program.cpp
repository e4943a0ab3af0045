// A user of both libraries: makes a puzzle and prints its worksheet, in bytes.
#include <iostream>

#include <letterlode/print.hpp>
#include <letterlode/puzzle.hpp>

int main() {
    lode::Recipe recipe;
    const auto words = lode::read_word_lines("Thyme\nBasil\nChervil\n", "the herb bed");
    if (!words) return 1;
    recipe.words = *words;
    const auto checked = lode::CheckedRecipe::open(recipe);
    if (!checked) return 2;
    const auto puzzle = checked->make(recipe.seed, {});
    if (!puzzle || !puzzle->audit.certified) return 3;
    const lode::Worksheet worksheet{*puzzle, "Herbs"};
    const auto pages = lode::print_worksheets({&worksheet, 1}, {});
    if (!pages || !pages->pdf.starts_with("%PDF-")) return 4;
    std::cout << pages->pdf.size() << " bytes\n";
}
