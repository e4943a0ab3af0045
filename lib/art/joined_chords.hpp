#pragma once
// The first half of arrangement.hpp: chords cut until any two meet in their ends at most.

#include <optional>
#include <vector>

#include "art/chords.hpp"

namespace lode {

// A corner on a chord, and the parameter of the chord's curve there.
struct Stop {
    LatticePoint at;
    double parameter = 0;
};
// A leaf of the chords with its corners in order, the ends included.
struct JoinedChord {
    const Chord* chord = nullptr;
    std::vector<Stop> stops;
};

// Nothing where it did not come to an end. The chords must outlive the result.
[[nodiscard]] std::optional<std::vector<JoinedChord>> joined(const Chords& chords);

[[nodiscard]] inline std::int64_t cross(LatticePoint origin, LatticePoint a, LatticePoint b) {
    return (a.x - origin.x) * (b.y - origin.y) - (a.y - origin.y) * (b.x - origin.x);
}

}  // namespace lode
