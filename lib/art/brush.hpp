#pragma once
// Bands that look painted: one stroke of a broad flat brush from a word's first letter to its last. Pure
// geometry, in mm or in any unit that all lengths share.

#include <cstddef>
#include <cstdint>

#include <letterlode/path.hpp>

namespace lode {

// One outline that holds every point no further than least_radius from the straight line first-last, and none
// that is further than radius. Its edges waver, its start is nearly whole and its end frayed, by the seed: no
// two seeds draw the same, one seed draws the same on every machine. Of wide room, where least_radius is
// under 0.55 of radius, only the outer part is used. No bristle and no notch between bristles is narrower
// than least_feature, but where the two radii leave no room for notches at all. Some 40 to 120 curves,
// growing with the length up to a word of some 20 radii, and from there on no more. Throws
// std::invalid_argument unless radius > least_radius > 0 and least_feature > 0.
[[nodiscard]] Path brush_stroke(Point first, Point last, double radius, double least_radius,
                                std::uint64_t seed, double least_feature = 1);

// Seeds for the words of a recipe: neighbours have nothing in common.
[[nodiscard]] std::uint64_t seed_of(std::uint64_t recipe_seed, std::size_t word);

}  // namespace lode
