// Calls whose result must not be dropped, a line each: misuse.py holds the compiler's complaints against the
// marked lines. What must not compile at all, and can be asked for in the language itself, stands below.
#include <memory>
#include <type_traits>

#include <letterlode/cut.hpp>
#include <letterlode/print.hpp>
#include <letterlode/version.hpp>

namespace {

using namespace lode;

void drop_outcomes(const Recipe& recipe, const Puzzle& puzzle, const CheckedRecipe& checked,
                   const LetteredGrid& grid, const Segmenter& segmenter, const ArtworkOptions& options,
                   const HeldArtwork& held, Disk& disk) {
    make(recipe);                              // dropped
    checked.make();                            // dropped
    CheckedRecipe::open(recipe);               // dropped
    make_choices(checked, 1, 2);               // dropped
    make_versions(checked, 1, 2);              // dropped
    make_aimed(recipe, Aim{});                 // dropped
    audit(puzzle);                             // dropped
    audit(grid, recipe);                       // dropped
    rate(puzzle);                              // dropped
    puzzle_from_json("", "");                  // dropped
    read_grid("", "", segmenter);              // dropped
    Segmenter::open(TextRules{});              // dropped
    read_file("words.txt");                    // dropped
    write_folder("sign", {}, false, disk);     // dropped
    draw(puzzle, options);                     // dropped
    draw_to_hold(puzzle, options);             // dropped
    cut_files(puzzle, held);                   // dropped
    print_worksheets({}, PrintOptions{});      // dropped
    write_file("words.txt", "Basil\n", disk);  // nothing to drop: it throws
}

void drop_values(const Puzzle& puzzle, const Audit& found, Segmenter& segmenter,
                 const Outcome<Puzzle>& outcome, Grid& grid, const Mask& mask, Alphabet& alphabet) {
    to_json(puzzle);           // dropped
    verdict_text(found);       // dropped
    segmenter.spell("Basil");  // dropped
    outcome.refusal();         // dropped
    grid.size();               // dropped
    grid[Cell{}];              // dropped
    mask.open_count();         // dropped
    alphabet.find("B");        // dropped
    version();                 // dropped
    alphabet.add("B");         // adding is what it is for
}

// An outcome is asked before it is taken for what it may hold.
static_assert(!std::is_convertible_v<Outcome<int>, bool> && !std::is_convertible_v<Outcome<int>, int>);
// What is dear to build is moved, and never copied without being asked.
static_assert(!std::is_copy_constructible_v<Matcher> && !std::is_copy_constructible_v<Judge> &&
              !std::is_copy_constructible_v<CheckedRecipe> && !std::is_copy_constructible_v<Segmenter>);
static_assert(std::is_nothrow_move_constructible_v<Matcher> && std::is_nothrow_move_constructible_v<Judge> &&
              std::is_nothrow_move_constructible_v<CheckedRecipe> &&
              std::is_nothrow_move_constructible_v<Segmenter>);
// Names are no numbers.
static_assert(!std::is_convertible_v<int, Direction> && !std::is_convertible_v<Shape, int>);

}  // namespace
