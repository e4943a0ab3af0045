#pragma once
// What Clipper keeps to itself.

#include <new>

namespace lode {

// Clipper says no more than that it failed. With outlines that it took, that is for want of memory; what it
// leaves then looks like a result and is none.
inline void need_done(bool executed) {
    if (!executed) throw std::bad_alloc();
}

}  // namespace lode
