#pragma once
// What is wrong with what is asked of a plan.

#include <optional>

#include <letterlode/plan.hpp>

namespace lode {

// What plan refuses whatever the pieces: sizes that are no numbers or out of bounds, an edge that leaves
// nothing.
[[nodiscard]] std::optional<Refusal> fault_in(const PlanOptions& options);

}  // namespace lode
