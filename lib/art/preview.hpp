#pragma once
// The picture of a finished piece on a plate of any outline.

#include <string>

#include <letterlode/art.hpp>

namespace lode {

// As preview_png, with the plate's edge as the viewer sees it, with its holes.
std::string plate_png(const Artwork& artwork, Path edge, int long_side_px);

}  // namespace lode
