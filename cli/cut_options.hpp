#pragma once
// The options of what is cut from what, and of the pages beside it: make and cut share them.

#include <boost/program_options/options_description.hpp>
#include <letterlode/cut.hpp>
#include <letterlode/outcome.hpp>

#include "options.hpp"

namespace lode::cli {

// From --bed to --paper.
void add_cut_options(po::options_description& options);

// Refused as unusable: a size, a colour, a speed or a paper that is none; options of loads without a bed.
[[nodiscard]] Outcome<CutOptions> cut_options(const Values& values);

// Refused as unusable: options of a folder that is not asked for.
[[nodiscard]] std::optional<Refusal> cutting_without_folder(const Values& values);

// Draws the artwork, mended where --fix asks for it; says notes, changes, findings and ways out.
// An interrupt ends it; a terminal is told how far it is.
[[nodiscard]] Outcome<HeldArtwork> drawn(const Puzzle& puzzle, const ArtworkOptions& options, bool fix);

// The loads, where a bed is given; likewise. Refused as unusable: film of a colour that is not cut.
[[nodiscard]] Outcome<std::optional<CutPlan>> planned_loads(const HeldArtwork& held,
                                                            const CutOptions& options);

// The files of a folder, as cut_files gives them; likewise.
[[nodiscard]] Outcome<std::vector<NamedFile>> files_to_cut(const Puzzle& puzzle, const HeldArtwork& held,
                                                           const CutOptions& options);

}  // namespace lode::cli
