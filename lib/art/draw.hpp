#pragma once
// What is wrong with what is asked of a drawing.

#include <optional>

#include <letterlode/art.hpp>

namespace lode {

// What draw refuses whatever the puzzle: options that were not given, lengths out of bounds or none at all.
[[nodiscard]] std::optional<Refusal> fault_in(const ArtworkOptions& options);

}  // namespace lode
