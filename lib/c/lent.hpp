#pragma once
// The core's handles in the hands of the art library, which sees of them what these functions give and no
// more: what a handle holds besides may change from one version of the core to the next. Exported for that
// library alone; no public header declares it.

#include <letterlode/letterlode.h>
#include <letterlode/export.hpp>
#include <letterlode/puzzle.hpp>

namespace lode::c {

[[nodiscard]] LODE_API const Recipe& recipe_in(const lode_recipe& handle) noexcept;
[[nodiscard]] LODE_API const Puzzle& puzzle_in(const lode_puzzle& handle) noexcept;

// Handles for a caller to free.
[[nodiscard]] LODE_API lode_recipe* new_handle(Recipe recipe);
[[nodiscard]] LODE_API lode_refusal* new_handle(Refusal refusal);
[[nodiscard]] LODE_API lode_rating* new_handle(Rating rating);

// What a caller does while work is under way; nothing for NULL. Lives as long as the handle does.
[[nodiscard]] LODE_API MakeControl control_of(const lode_control* control);

}  // namespace lode::c
