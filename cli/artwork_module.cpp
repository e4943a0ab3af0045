// A file of its own that links the art library: art_library() opens it.

#include "art_library.hpp"

extern "C" __attribute__((visibility("default"))) const lode::cli::ArtLibrary* letterlode_art_library();

const lode::cli::ArtLibrary* letterlode_art_library() {
    static constexpr lode::cli::ArtLibrary library{
        .read_blank = lode::read_blank,
        .read_length = lode::read_length,
        .read_area = lode::read_area,
        .read_distance = lode::read_distance,
        .recipe_on_blank = lode::recipe_on_blank,
        .draw = lode::draw,
        .letter_looks = lode::letter_looks,
        .letters_seen = lode::letters_seen,
        .artwork_drawing = lode::artwork_drawing,
        .to_svg = lode::to_svg,
        .draw_and_measure = lode::draw_and_measure,
        .draw_to_hold = lode::draw_to_hold,
        .finding_text = lode::finding_text,
        .ways_out = lode::ways_out,
        .plan_loads = lode::plan_loads,
        .cut_files = lode::cut_files,
        .cut_json = lode::to_json,
        .print_worksheets = lode::print_worksheets,
        .worksheet_text = lode::worksheet_text,
        .solve_page = lode::solve_page,
        .pages_json = lode::to_json,
    };
    return &library;
}
