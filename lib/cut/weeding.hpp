#pragma once
// Cuts that part waste from waste, so that it comes off in strips and not in one sheet that clings to
// everything.

#include <span>
#include <vector>

#include <letterlode/drawing.hpp>

namespace lode {

// A frame about the pieces, so far from them, and a cut across it wherever no piece stands, between rows of
// letters, say: half way between the pieces above and below, and nowhere nearer to them than half a
// millimetre.
[[nodiscard]] std::vector<CutLine> weeding_lines(std::span<const Piece> pieces, double frame_mm);

}  // namespace lode
