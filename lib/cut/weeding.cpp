#include "cut/weeding.hpp"

#include <algorithm>

namespace lode {

std::vector<CutLine> weeding_lines(std::span<const Piece> pieces, double frame_mm) {
    struct Stretch {
        double from;
        double to;
    };
    std::vector<CutLine> lines;
    std::vector<Stretch> taken;
    Box frame{};
    for (const Piece& piece : pieces) {
        if (piece.path.empty()) continue;
        const Box box = bounds(piece.path);
        frame = taken.empty() ? box
                              : Box{std::min(frame.left, box.left), std::min(frame.top, box.top),
                                    std::max(frame.right, box.right), std::max(frame.bottom, box.bottom)};
        taken.push_back({box.top, box.bottom});
    }
    if (taken.empty()) return lines;
    frame = {frame.left - frame_mm, frame.top - frame_mm, frame.right + frame_mm, frame.bottom + frame_mm};
    const auto add = [&](Point from, Point to) { lines.push_back({from, to}); };
    add({frame.left, frame.top}, {frame.right, frame.top});
    add({frame.right, frame.top}, {frame.right, frame.bottom});
    add({frame.right, frame.bottom}, {frame.left, frame.bottom});
    add({frame.left, frame.bottom}, {frame.left, frame.top});

    constexpr double least_room = 1;  // mm between the pieces above and below
    std::sort(taken.begin(), taken.end(), [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
    double below = taken.front().to;
    for (const Stretch& next : taken) {
        if (next.from - below >= least_room) {
            const double y = (below + next.from) / 2;
            add({frame.left, y}, {frame.right, y});
        }
        below = std::max(below, next.to);
    }
    return lines;
}

}  // namespace lode
