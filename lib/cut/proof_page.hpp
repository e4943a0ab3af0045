#pragma once
// The artwork as a page to look at before anything is cut.

#include <string>

#include <letterlode/art.hpp>
#include <letterlode/puzzle.hpp>

namespace lode {

// One HTML page that needs nothing besides itself and asks no network for anything: films switched on and
// off, the blank from either side, where the words are, rulers, and the drawing printed at true size.
// Whatever the words and the heading hold is shown as text. The puzzle is the one that the artwork was drawn
// from.
std::string proof_html(const Artwork& artwork, const Puzzle& puzzle);

}  // namespace lode
