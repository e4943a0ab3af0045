#pragma once
// A caller's hold on work, as the core takes it.

#include <letterlode/letterlode.h>
#include <letterlode/puzzle.hpp>

namespace lode::c {

// Of NULL: none. The control must outlive what is made of it.
[[nodiscard]] MakeControl make_control(const lode_control* control);
[[nodiscard]] SearchControl search_control(const lode_control* control);

}  // namespace lode::c
