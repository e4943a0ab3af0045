// Draws a puzzle on a blank and writes all that its maker needs: layers, loads, job sheet, guide and picture.
// Prints:
//     layer: bands
//     layer: letters
//     layer: heading
//     the film holds
//     begin with the job sheet in tool-shed
#include <iostream>

#include <letterlode/cut.hpp>

int main() {
    lode::Recipe recipe;
    recipe.words.words = {{"Spade"}, {"Trowel"}, {"Rake"}, {"Dibber"}};

    lode::ArtworkOptions options;
    options.blank = *lode::read_blank("203x254mm");
    options.surface = lode::Surface::first;  // the film lies on the front
    options.heading = "Wrenbarrow Tool Shed";
    const auto panel = lode::recipe_on_blank(recipe, options);  // a grid with the blank's proportions
    const auto puzzle = lode::make(*panel);

    const auto held = lode::draw_to_hold(*puzzle, options);
    for (const auto& layer : held->artwork.layers) std::cout << "layer: " << layer.name << '\n';
    std::cout << (held->measures.holds() ? "the film holds" : "too narrow for film") << '\n';

    lode::CutOptions cut;
    cut.plan = lode::PlanOptions{};
    cut.plan->bed = {305, 305};
    const auto files = lode::cut_files(*puzzle, *held, cut);
    if (!files) {
        std::cerr << files.refusal().message << '\n';
        return 1;
    }
    lode::Disk disk;
    const auto folder = lode::write_folder("tool-shed", *files, false, disk);  // whole, or not at all
    if (disk.exists(*folder + "/job-sheet.pdf"))
        std::cout << "begin with the job sheet in " << *folder << '\n';
}
