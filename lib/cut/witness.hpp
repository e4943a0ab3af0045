#pragma once
// A small letter in the waste of a load. It reads right only on the side from which the finished piece is
// seen, so a maker sees at once whether a load was mirrored as it should be, or once too often.

#include <optional>
#include <span>

#include <letterlode/cut.hpp>

namespace lode {

// Finds room for it in one of the load's films, clear of what is cut; makes a film longer where there is none
// and the bed allows it. Nothing where it does not. `cut` holds the load's pieces as they lie in it.
[[nodiscard]] std::optional<CutPlan::Witness> placed_witness(Load& load, std::span<const Path> cut,
                                                             const Bed& bed, Surface surface);

}  // namespace lode
