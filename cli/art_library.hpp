#pragma once
// The art library, opened by the first call that needs it: with all that draws behind it, it takes longer to
// load than a puzzle takes to make, and most calls draw and print nothing.

#include <stdexcept>

#include <letterlode/art.hpp>
#include <letterlode/cut.hpp>
#include <letterlode/drawing.hpp>
#include <letterlode/print.hpp>

namespace lode::cli {

// What this program calls of the art library, by the names that its headers give. What they only name
// (papers, bands, surfaces) is part of the program: see its CMakeLists.
struct ArtLibrary {
    decltype(&lode::read_blank) read_blank;
    decltype(&lode::read_length) read_length;
    decltype(&lode::read_area) read_area;
    decltype(&lode::read_distance) read_distance;

    decltype(&lode::recipe_on_blank) recipe_on_blank;
    decltype(&lode::draw) draw;
    decltype(&lode::letter_looks) letter_looks;
    decltype(&lode::letters_seen) letters_seen;
    decltype(&lode::artwork_drawing) artwork_drawing;
    decltype(&lode::to_svg) to_svg;

    decltype(&lode::draw_and_measure) draw_and_measure;
    decltype(&lode::draw_to_hold) draw_to_hold;
    decltype(&lode::finding_text) finding_text;
    decltype(&lode::ways_out) ways_out;
    decltype(&lode::plan_loads) plan_loads;
    decltype(&lode::cut_files) cut_files;
    std::string (*cut_json)(const HeldArtwork& held, const CutOptions& options);

    decltype(&lode::print_worksheets) print_worksheets;
    decltype(&lode::worksheet_text) worksheet_text;
    decltype(&lode::solve_page) solve_page;
    std::string (*pages_json)(const PrintedPages& pages, std::span<const Worksheet> worksheets);
};

// The installation lacks what this call needs.
struct MissingPart : std::runtime_error {
    using std::runtime_error::runtime_error;
};

// From any thread. Throws MissingPart.
[[nodiscard]] const ArtLibrary& art_library();

// The file that is opened, from the folder of the core's library, and the function in it that gives what stands
// above.
inline constexpr const char* artwork_module = "letterlode/artwork.so";
inline constexpr const char* artwork_module_entry = "letterlode_art_library";

}  // namespace lode::cli
