#pragma once
// From options to puzzles, and to the files that are written of them: make, and an order of a batch, go this
// way alike.

#include <optional>
#include <string>
#include <vector>

#include <letterlode/art.hpp>
#include <letterlode/cut.hpp>
#include <letterlode/files.hpp>
#include <letterlode/print.hpp>
#include <letterlode/puzzle.hpp>

#include "options.hpp"

namespace lode::cli {

// The recipe that --from or --recipe brings; nothing where neither is given. Refused as unusable: --keep
// without --from.
[[nodiscard]] Outcome<std::optional<Recipe>> recipe_from_files(const Values& values);

// Changes what the options of text, filler, grid and demands name.
[[nodiscard]] Outcome<Recipe> with_recipe_options(Recipe recipe, const Values& values);

// The artwork that goes with the puzzle.
struct ArtworkWanted {
    ArtworkOptions artwork;
    CutOptions cutting;
    bool fix = false;
};

// What is to be made of a recipe.
struct PuzzlesWanted {
    std::optional<ArtworkWanted> artwork;
    std::optional<Aim> aim;
    std::size_t count = 1;
    bool several = false;  // asked for as such, though it be one
};

// Refused as unusable: values that cannot be used, and options that would be passed over in silence.
[[nodiscard]] Outcome<PuzzlesWanted> puzzles_wanted(const Recipe& recipe, const Values& values);

// The recipe's own size, or that of its blank. Refused as recipe_on_blank is.
[[nodiscard]] Outcome<Recipe> recipe_for(Recipe recipe, const PuzzlesWanted& wanted,
                                         const MakeControl& control);

// One puzzle by its seed or nearest to an aim, or choices from there on, ranked. Says what should be known of
// them. Refused as make is.
[[nodiscard]] Outcome<std::vector<Puzzle>> make_puzzles(const CheckedRecipe& checked, const Recipe& recipe,
                                                        const PuzzlesWanted& wanted,
                                                        const MakeControl& control);

// What is written of one puzzle, with `folder` ("seed-7/", or nothing) before the files' names. `title` is
// that of its pages. Where the artwork was drawn, `held` is set to it.
[[nodiscard]] Outcome<std::vector<NamedFile>> files_of(const Puzzle& puzzle, const PuzzlesWanted& wanted,
                                                       const PrintOptions& pages, const std::string& folder,
                                                       const std::string& title,
                                                       std::optional<HeldArtwork>* held = nullptr);

// What is written of versions A, B and so on: a folder for each, and pages of them all.
[[nodiscard]] std::vector<NamedFile> files_of_versions(const std::vector<Puzzle>& versions,
                                                       const PrintOptions& pages, const std::string& title);

// The title of a puzzle's pages: its heading, on one line.
[[nodiscard]] std::string page_title(const Values& values);

}  // namespace lode::cli
