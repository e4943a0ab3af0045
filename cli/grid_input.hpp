#pragma once
// A finished grid with its words, as check, rate and print take it.

#include <vector>

#include <letterlode/puzzle.hpp>

#include "options.hpp"

namespace lode::cli {

// A grid with what it is to be judged by.
struct GridInput {
    LetteredGrid grid;
    Recipe recipe;
    std::vector<PlacedWord> placed;  // where that is known
    bool is_puzzle = false;          // a puzzle in JSON, not a grid that is drawn
};

// --words
void add_words_option(po::options_description& options);

// Reads the verb's file: a puzzle in JSON, which brings its words, its placements and its rules, or a grid as
// text with --words FILE, or with --words - and the list under it. Options win over a puzzle.
[[nodiscard]] Outcome<GridInput> read_grid_input(const Values& values);
// The same of another file, whose text is read already.
[[nodiscard]] Outcome<GridInput> read_grid_input(const std::string& text, const std::string& name,
                                                 const Values& values);

// What the help of a verb says of its file.
[[nodiscard]] const char* grid_input_help();

}  // namespace lode::cli
